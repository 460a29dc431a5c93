import { BLANK_CELL, cellOf, dotsOf } from "../braille/cell";

/** What can have happened between the cells expected and those written; what happened, not why. */
export const CELL_ERROR_KINDS = [
  "missed dot",
  "added dot",
  "reversal",
  "one row lower",
  "one row higher",
  "inversion",
  "one cell for another",
  "cell left out",
  "cell added",
  "contraction not used",
  "contraction wrongly used",
  "indicator missing",
] as const;
export type CellErrorKind = (typeof CELL_ERROR_KINDS)[number];

/** How one cell came to be another. */
export type CellChange = Extract<
  CellErrorKind,
  | "missed dot"
  | "added dot"
  | "reversal"
  | "one row lower"
  | "one row higher"
  | "inversion"
  | "one cell for another"
>;

/** Where each dot 1 to 8 goes; the place of a dot that cannot go there is undefined. */
type Movement = Readonly<Record<number, number>>;
const MIRROR: Movement = { 1: 4, 2: 5, 3: 6, 4: 1, 5: 2, 6: 3, 7: 8, 8: 7 };
const UPSIDE_DOWN: Movement = { 1: 3, 2: 2, 3: 1, 4: 6, 5: 5, 6: 4 };
const LOWER: Movement = { 1: 2, 2: 3, 4: 5, 5: 6 };
const HIGHER: Movement = { 2: 1, 3: 2, 5: 4, 6: 5 };

/** A cell with its dots moved; undefined where a dot has no place to go. */
const moveDots = (cell: string, movement: Movement): string | undefined => {
  const moved = dotsOf(cell).map((dot) => movement[dot]);
  return moved.every((dot) => dot !== undefined) ? cellOf(moved) : undefined;
};

/** The dots of a cell as bits, dot 1 the lowest: braille patterns begin at U+2800. */
const bitsOf = (cell: string): number => cell.charCodeAt(0) & 0xff;

/** How many dots stand in both of two cells, and in at least one. */
export const compareDots = (
  one: string,
  other: string,
): { readonly both: number; readonly either: number } => ({
  both: countBits(bitsOf(one) & bitsOf(other)),
  either: countBits(bitsOf(one) | bitsOf(other)),
});

const BIT_COUNTS = Uint8Array.from(
  { length: 256 },
  (_, bits) => dotsOf(String.fromCharCode(0x2800 + bits)).length,
);

/** How many dots a pattern has. */
export const countBits = (bits: number): number => BIT_COUNTS[bits] ?? 0;

/** How many dots differ between two cells: those in one of them only. */
export const countDifferentDots = (one: string, other: string): number =>
  countBits(bitsOf(one) ^ bitsOf(other));

/** The dots of cells as bits of one number each, dot 1 the lowest. */
export const patternsOf = (cells: string): Uint8Array => Uint8Array.from(cells, bitsOf);

/** How many dots a cell has. */
export const countDots = (cell: string): number => countBits(bitsOf(cell));

/**
 * What happened between a cell and another one written in its place:
 *
 * - missed dot: one dot or more left out, none added (c written a); added dot: the other way round
 * - reversal: the mirror image (d f, e i, h j, r w)
 * - one row lower, one row higher: the same shape there (b as dots 23; dots 26 as e)
 * - inversion: upside down (m u, n z, p v)
 * - one cell for another: anything else, a blank for a cell and a cell for a blank among it
 *
 * Where two fit, the first of this list is named: ⠡ and ⠌ are a reversal before an inversion, b as dots 23 is one row
 * lower before an inversion.
 *
 * Source: terms of the trade (common practice, no source). One row higher is added here as the way back.
 *
 * @param expected - one braille pattern
 * @param written - another one
 * @throws {RangeError} where they are the same
 */
export const nameCellChange = (expected: string, written: string): CellChange => {
  if (expected === written) throw new RangeError(`"${expected}" is the same cell`);
  if (expected === BLANK_CELL || written === BLANK_CELL) return "one cell for another";
  const shared = bitsOf(expected) & bitsOf(written);
  if (shared === bitsOf(written)) return "missed dot";
  if (shared === bitsOf(expected)) return "added dot";
  if (moveDots(expected, MIRROR) === written) return "reversal";
  if (moveDots(expected, LOWER) === written) return "one row lower";
  if (moveDots(expected, HIGHER) === written) return "one row higher";
  if (moveDots(expected, UPSIDE_DOWN) === written) return "inversion";
  return "one cell for another";
};
