import { fromAscii, isBraille, parseCells, parseDots, type Cells } from "../braille/cell";
import type { Result } from "../result";

/** Could be ASCII braille too, but makes no sense as such; a date that a sheet made of `1-2` is refused so. */
const DIGITS_AND_HYPHENS = /^[\d-]+$/;

/**
 * The cells of braille in whichever notation it is written: Unicode braille, then dot numbers (`125-15`, `0` for a
 * blank), then North American ASCII braille.
 */
export const parseAnyCells = (text: string): Result<Cells> => {
  if (isBraille(text)) return parseCells(text);
  return DIGITS_AND_HYPHENS.test(text) ? parseDots(text) : fromAscii(text);
};
