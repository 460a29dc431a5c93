import { BLANK_CELL, parseCells } from "../braille/cell";
import type { Piece } from "../contraction/alignment";
import { parseAnyCells } from "../contraction/cell-notation";
import type { Transcribe } from "../contraction/passage";
import type { Sign } from "../contraction/sign";
import { readPieces } from "../contraction/usage";
import { success, type Result } from "../result";

/** The cells that a pupil is to write, and the signs that they stand for where these are known. */
export interface ExpectedCells {
  /** Unicode braille without line breaks */
  readonly cells: string;
  /** in order of their cells; none where the text is given in braille or its code is not Unified English Braille */
  readonly pieces: readonly Piece[];
}

/**
 * The cells of a dictated or copied text: white space of any kind is one blank between words.
 *
 * @param print - the text
 * @param transcribe - into the pupil's code; what it throws passes through
 * @param signsKnown - whether that code is Unified English Braille, so that its signs can be told
 */
export const expectText = (print: string, transcribe: Transcribe, signsKnown: boolean): ExpectedCells => {
  const transcription = transcribe(print.trim().replace(/\s+/gu, " "));
  return { cells: transcription.cells, pieces: signsKnown ? readPieces(transcription) : [] };
};

/**
 * The cells of items that are signs, from the inventory and the letter table: ⠂ ⠡ ⠬ for `ea`, `ch`, `ing`, which
 * translating would spell out. No blanks between the cells; in print the items stand apart.
 */
export const expectSigns = (signs: readonly Sign[]): ExpectedCells => {
  const pieces: Piece[] = [];
  let [cells, print] = ["", 0];
  for (const sign of signs) {
    const length = "prints" in sign ? (sign.prints[0]?.length ?? 0) : sign.print.length;
    pieces.push({
      sign,
      printStart: print,
      printEnd: print + length,
      cellStart: cells.length,
      cellEnd: cells.length + sign.cells.length,
    });
    // A gap: items beside each other make up no word.
    print += length + 1;
    cells += sign.cells;
  }
  return { cells, pieces };
};

/**
 * The cells of a text that is given in Unicode braille. Which signs they stand for is not told.
 *
 * @returns the cells, or `not-a-cell`
 */
export const expectBraille = (braille: string): Result<ExpectedCells> => {
  const cells = parseCells(braille);
  return cells.ok ? success({ cells: tidyCells(cells.value), pieces: [] }) : cells;
};

/**
 * What a pupil wrote, in whichever notation it was noted: Unicode braille, dot numbers, or ASCII braille. A line break
 * with the blanks about it is one blank; blanks at both ends are dropped.
 *
 * @returns Unicode braille without line breaks, or `not-a-cell` / `not-dots` / `not-ascii-braille`
 */
export const parseWritten = (text: string): Result<string> => {
  const cells = parseAnyCells(text);
  return cells.ok ? success(tidyCells(cells.value)) : cells;
};

/** Cells without their blanks, as lines of signs are compared. */
export const dropBlanks = (cells: string): string => cells.replaceAll(BLANK_CELL, "");

const tidyCells = (cells: string): string =>
  cells
    .split("\n")
    .map((line) => line.replace(/^\u2800+|\u2800+$/g, ""))
    .filter((line) => line !== "")
    .join(BLANK_CELL);
