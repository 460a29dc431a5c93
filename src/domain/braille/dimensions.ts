import { dotsOf } from "./cell";

/**
 * Sizes of braille on paper in millimetres, from centre to centre but for the diameter of a dot's base.
 *
 * Source: National Library Service Specification 800, section 3.2, as quoted by the Braille Authority of North America.
 */
export const BRAILLE_SIZES = { dotBase: 1.44, dotToDot: 2.34, cellToCell: 6.2, lineToLine: 10 } as const;

/** From the top of a line's dots to their bottom, in millimetres: three dots, and half a base above and below. */
export const CELL_HEIGHT = 2 * BRAILLE_SIZES.dotToDot + BRAILLE_SIZES.dotBase;

/** From the left edge of a line's first dot to the right edge of the last, in millimetres; 0 for no cells. */
export const widthOfCells = (cells: number): number =>
  cells === 0 ? 0 : (cells - 1) * BRAILLE_SIZES.cellToCell + BRAILLE_SIZES.dotToDot + BRAILLE_SIZES.dotBase;

/** The centre of one dot. */
export interface DotPlace {
  readonly x: number;
  readonly y: number;
}

/**
 * Where the dots of a line of cells are: their centres in millimetres from the centre of dot 1 of the first cell, x to
 * the right, y downwards, in the order of cells and dot numbers.
 *
 * @param cells - six-dot Unicode braille
 * @throws {RangeError} where a character is no braille pattern, or a cell has dot 7 or 8, for which the source has no place
 */
export const placeDots = (cells: string): DotPlace[] =>
  [...cells].flatMap((cell, index) => dotsOf(cell).map((dot) => placeDot(index, dot)));

/** The six places of a cell, whether or not it has the dots. */
export const placesOfCell = (index: number): DotPlace[] =>
  [1, 2, 3, 4, 5, 6].map((dot) => placeDot(index, dot));

const placeDot = (index: number, dot: number): DotPlace => {
  if (dot > 6) throw new RangeError(`dot ${dot} has no place: only six-dot cells are laid out`);
  return {
    x: index * BRAILLE_SIZES.cellToCell + (dot > 3 ? BRAILLE_SIZES.dotToDot : 0),
    y: ((dot - 1) % 3) * BRAILLE_SIZES.dotToDot,
  };
};
