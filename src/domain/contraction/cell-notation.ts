import { fromAscii, isBraille, parseCells, parseDots, type Cells } from "../braille/cell";
import type { Result } from "../result";

/** Six-dot cells with their dots in order: `125-15`, `0` for a blank. */
const DOT_NUMBERS = /^(?:0|(?=\d)1?2?3?4?5?6?)(?:-(?:0|(?=\d)1?2?3?4?5?6?))*$/;

/**
 * The cells of braille in whichever notation it is written: Unicode braille, then dot numbers of six-dot cells
 * (`125-15`, which could also be ASCII braille but never makes sense as such), then North American ASCII braille.
 */
export const parseAnyCells = (text: string): Result<Cells> => {
  if (isBraille(text)) return parseCells(text);
  return DOT_NUMBERS.test(text) ? parseDots(text) : fromAscii(text);
};
