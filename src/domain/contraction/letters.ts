import { cellOf } from "../braille/cell";

/** The dots of each letter of the alphabet, in the order of the alphabet. Source: UEB 2013, section 4.1. */
const LETTER_DOTS =
  "1 12 14 145 15 124 1245 125 24 245 13 123 134 1345 135 1234 12345 1235 234 2345 136 1236 2456 1346 13456 1356".split(
    " ",
  );

/** The dot numbers of a small letter a–z, such as `125` for h; undefined for anything else. */
export const letterDots = (letter: string): string | undefined =>
  letter.length === 1 ? LETTER_DOTS[letter.charCodeAt(0) - 97] : undefined;

/** Unicode braille of dot numbers, cells joined by `-`: `45-136` gives ⠘⠥. */
export const cellsOfDots = (dots: string): string =>
  dots
    .split("-")
    .map((cell) => cellOf([...cell].map(Number)))
    .join("");

const LETTER_CELLS = new Map(
  LETTER_DOTS.map((dots, index) => [String.fromCharCode(97 + index), cellsOfDots(dots)]),
);

/** The cell of a small letter a–z; undefined for anything else. */
export const letterCell = (letter: string): string | undefined => LETTER_CELLS.get(letter);
