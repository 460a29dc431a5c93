import { BRAILLE_SIZES, CELL_HEIGHT, widthOfCells } from "../domain/braille/dimensions";
import { wrapCells } from "../domain/braille/page";
import type { TactileElement } from "./tactile-check";
import type { Spot } from "./tactile-shape";

/** Print as braille; the engine stands behind it. */
export type ToCells = (print: string) => string;

/** Braille that has its lines, but no place yet. Millimetres. */
export interface LabelBlock {
  readonly print: string;
  readonly lines: readonly string[];
  readonly width: number;
  readonly height: number;
}

/** How many cells go side by side in a width. */
export const cellsWithin = (width: number): number =>
  Math.max(0, Math.floor((width - widthOfCells(1)) / BRAILLE_SIZES.cellToCell + 1 + 1e-9));

/** Height of so many lines of braille, from the top of the first to the bottom of the last. */
export const heightOfLines = (lines: number): number =>
  lines === 0 ? 0 : (lines - 1) * BRAILLE_SIZES.lineToLine + CELL_HEIGHT;

/** Braille in lines of at most a width. */
export const layOutLabel = (print: string, toCells: ToCells, width: number): LabelBlock => {
  const wrapped = wrapCells(toCells(print), Math.max(1, cellsWithin(width)));
  const lines = wrapped.ok ? wrapped.value : [];
  return {
    print,
    lines,
    width: Math.max(0, ...lines.map((line) => widthOfCells([...line].length))),
    height: heightOfLines(lines.length),
  };
};

/** Braille at its place, as an element. @param at - its upper left corner */
export const placeLabel = (
  { print, lines, width, height }: LabelBlock,
  at: Spot,
  what: string,
): TactileElement => ({
  name: `${what} “${print}”`,
  group: `label ${what} ${print} ${at.x.toFixed(1)}`,
  shapes: [{ kind: "block", left: at.x, top: at.y, right: at.x + width, bottom: at.y + height }],
  label: { print, lines, at },
});
