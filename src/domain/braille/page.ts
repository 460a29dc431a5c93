import { refusal, success, type Result } from "../result";
import { BLANK_CELL } from "./cell";

/** The usual length of a line, in cells: common practice, no source; there is no official standard for files. */
export const USUAL_LINE = 40;

/**
 * Braille laid out in lines: words are moved whole to the next line, a word longer than a line is broken where
 * the line ends, and the blank at which a line is broken is dropped. Blanks that lead a line of the text (an
 * indent) are kept as far as they leave room; an empty line stays one.
 *
 * @param cells - Unicode braille; line breaks begin a new line
 * @param most - cells a line at most, a whole number from 1
 * @returns lines without trailing blanks, never longer than `most`; none for ""; or `not-a-line-length`
 */
export const wrapCells = (
  cells: string,
  most: number = USUAL_LINE,
): Result<readonly string[], { readonly code: "not-a-line-length"; readonly message: string }> => {
  if (!Number.isInteger(most) || most < 1) {
    return refusal(
      "not-a-line-length",
      `A line cannot have ${most} cells. Write a whole number from 1, such as 40.`,
    );
  }
  if (cells === "") return success([]);
  return success(cells.split("\n").flatMap((line) => wrapLine(line, most)));
};

const wrapLine = (line: string, most: number): string[] => {
  const lines: string[] = [];
  let current = "";
  for (const [word, leading] of splitWords(line)) {
    // An indent that leaves no room would push every word past the end of its line.
    const gap =
      current === "" && lines.length === 0
        ? BLANK_CELL.repeat(Math.min(leading, most - 1))
        : BLANK_CELL.repeat(leading);
    if (current.length + gap.length + word.length <= most) {
      current += gap + word;
      continue;
    }
    let rest = word;
    if (current !== "") lines.push(current);
    else if (gap.length + word.length > most && lines.length === 0) rest = gap + word;
    while (rest.length > most) {
      lines.push(rest.slice(0, most));
      rest = rest.slice(most);
    }
    current = rest;
  }
  lines.push(current);
  return lines;
};

/** Words of a line, each with the number of blanks before it; trailing blanks are dropped. */
const splitWords = (line: string): [word: string, leading: number][] =>
  [...line.matchAll(/([\u2800 ]*)([^\u2800 ]+)/g)].map((match) => [match[2] ?? "", match[1]?.length ?? 0]);
