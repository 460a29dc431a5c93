import { BLANK_CELL } from "./cell";
import type { Transcription } from "./transcription";

/**
 * The print of each line of laid-out braille: the letters whose first cell stands on the line. A word that is broken
 * between two lines stands whole with the line where it begins, as far as its contractions cannot be parted.
 *
 * @param transcription - the text whose cells were laid out
 * @param lines - all its cells in order; blanks may have been added, dropped or moved to another line
 * @returns one text a line, "" for a line without a letter's beginning
 */
export const pairPrint = ({ print, cells, spans }: Transcription, lines: readonly string[]): string[] => {
  const texts: string[] = [];
  let span = 0;
  let next = 0;
  for (const [index, line] of lines.entries()) {
    for (let left = countDotted(line); left > 0; next++) {
      if (isDotted(cells.charAt(next))) left--;
    }
    const from = spans[span]?.printStart ?? print.length;
    const isLast = index === lines.length - 1;
    while (span < spans.length && (isLast || (spans[span]?.cellStart ?? 0) < next)) span++;
    const to = spans[span]?.printStart ?? print.length;
    texts.push(print.slice(from, to).replace(/\s+/g, " ").trim());
  }
  return texts;
};

const isDotted = (cell: string): boolean => cell !== BLANK_CELL && cell !== " " && cell !== "\n";

const countDotted = (line: string): number => [...line].filter(isDotted).length;
