import { BLANK_CELL } from "../braille/cell";
import type { ExpectedCells } from "../probe/expected-cells";
import type { WritingScore } from "../probe/writing";
import type { Day } from "../units";
import type { DirectEvidence } from "./knowledge-evidence";

/**
 * What a piece of writing tells of its signs, each directly: right where all of its cells stand there. Letters that a
 * contraction wrongly used took the place of tell nothing, nor do the words after the last cell written.
 *
 * @param score - of the same cells
 * @returns one entry a sign expected, in order
 */
export const weighWriting = (
  { cells, pieces }: ExpectedCells,
  score: WritingScore,
  day: Day,
): readonly DirectEvidence[] => {
  const isWrong = new Uint8Array(cells.length);
  const isSilent = new Uint8Array(cells.length);
  let reached = 0;
  for (const { position, expected, written, kind } of score.aligned) {
    if (written !== "" && expected !== "") reached = position - 1 + expected.length;
    if (kind === undefined || expected === "") continue;
    const marks = kind === "contraction wrongly used" ? isSilent : isWrong;
    marks.fill(1, position - 1, position - 1 + expected.length);
  }
  const blank = cells.indexOf(BLANK_CELL, reached);
  const attempted = reached === 0 ? 0 : blank < 0 ? cells.length : blank;
  return pieces.flatMap(({ sign, cellStart, cellEnd }) => {
    if (cellStart >= attempted || isSilent.subarray(cellStart, cellEnd).includes(1)) return [];
    const correct = isWrong.subarray(cellStart, cellEnd).includes(1) ? 0 : 1;
    return [{ day, sign: sign.name, correct, opportunities: 1 }];
  });
};
