import { BLANK_CELL, cellOf } from "../../../src/domain/braille/cell";
import type { Transcription } from "../../../src/domain/braille/transcription";
import { letterCell } from "../../../src/domain/contraction/letters";
import {
  makeHandout,
  USUAL_HANDOUT,
  type Handout,
  type HandoutOptions,
} from "../../../src/domain/drill/handout";
import type { HandoutEntry } from "../../../src/domain/drill/handout-draft";
import { success, type Result } from "../../../src/domain/result";

/** A code for tests: a cell a letter in either case, blanks as they are, all other characters ⠿. */
export const spellOut = (text: string): Result<Transcription> => {
  const cells = [...text].map((character) =>
    character === " " ? BLANK_CELL : (letterCell(character.toLowerCase()) ?? cellOf([1, 2, 3, 4, 5, 6])),
  );
  let place = 0;
  const spans = [...text].map((character, cell) => {
    const printStart = place;
    place += character.length;
    return { printStart, printEnd: place, cellStart: cell, cellEnd: cell + 1 };
  });
  return success({ print: text, cells: cells.join(""), spans });
};

/** A handout in the spelled-out code. */
export const handoutOf = (
  entries: readonly HandoutEntry[],
  options: Partial<HandoutOptions> = {},
  { title = "Heron", date = "" } = {},
): Handout => {
  const made = makeHandout({ title, date, entries }, { ...USUAL_HANDOUT, ...options }, spellOut);
  if (!made.ok) throw new Error(made.fault.message);
  return made.value;
};

/** Words, each an entry. */
export const wordsOf = (...words: readonly string[]): HandoutEntry[] =>
  words.map((text) => ({ kind: "word", text }));
