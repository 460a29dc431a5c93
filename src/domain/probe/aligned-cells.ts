import type { Piece } from "../contraction/alignment";
import type { Sign } from "../contraction/sign";
import type { AlignmentStep } from "./alignment";
import { nameCellChange, type CellErrorKind } from "./cell-error-kind";
import type { ContractionRewrite } from "./contraction-rewrites";
import type { ExpectedCells } from "./expected-cells";

/** Cells expected beside the cells written for them: one each where they are paired. */
export interface AlignedCells {
  /** place of the first cell expected, from 1; for cells added, of the one that they follow (0 before the first) */
  readonly position: number;
  /** "" for a cell added; several for an indicator left out and for a contraction used or not used */
  readonly expected: string;
  /** "" for a cell left out */
  readonly written: string;
  /** undefined where the cell is right */
  readonly kind: CellErrorKind | undefined;
  /** the sign that the cell expected belongs to, or the contraction wrongly used; undefined where it is not known */
  readonly sign: Sign | undefined;
}

/**
 * The cells side by side, step by step of their alignment.
 *
 * @param steps - of `expected.cells` against `written`, swaps none among them
 * @param rewrites - those that the steps name
 */
export const listAligned = (
  { cells, pieces }: ExpectedCells,
  written: string,
  steps: readonly AlignmentStep[],
  rewrites: readonly ContractionRewrite[],
): readonly AlignedCells[] => {
  const pieceAt = new Array<Piece | undefined>(cells.length);
  for (const piece of pieces) pieceAt.fill(piece, piece.cellStart, piece.cellEnd);
  const aligned: AlignedCells[] = [];
  let position = 0;
  let missingIn: Piece | undefined;
  for (const step of steps) {
    const wasMissingIn = missingIn;
    missingIn = undefined;
    switch (step.kind) {
      case "same":
      case "replaced": {
        position = step.first + 1;
        const [one, other] = [cells.charAt(step.first), written.charAt(step.second)];
        const kind = step.kind === "same" ? undefined : nameCellChange(one, other);
        aligned.push({ position, expected: one, written: other, kind, sign: pieceAt[step.first]?.sign });
        break;
      }
      case "missing": {
        const piece = pieceAt[step.first];
        const isIndicator = piece?.sign.kind === "indicator";
        const before = aligned.at(-1);
        position = step.first + 1;
        const expected = cells.charAt(step.first);
        // An indicator of several cells is left out once.
        if (isIndicator && piece === wasMissingIn && before !== undefined)
          aligned[aligned.length - 1] = { ...before, expected: before.expected + expected };
        else {
          const kind = isIndicator ? "indicator missing" : "cell left out";
          aligned.push({ position, expected, written: "", kind, sign: piece?.sign });
        }
        if (isIndicator) missingIn = piece;
        break;
      }
      case "extra": {
        const other = written.charAt(step.second);
        aligned.push({ position, expected: "", written: other, kind: "cell added", sign: undefined });
        break;
      }
      case "rewritten": {
        const rewrite = rewrites[step.rewrite];
        const [from, to] = step.first;
        const sign = rewrite?.contraction;
        const [run, other] = [cells.slice(from, to), written.slice(...step.second)];
        aligned.push({ position: from + 1, expected: run, written: other, kind: rewrite?.kind, sign });
        position = to;
        break;
      }
      case "swapped":
        throw new RangeError("cells are never swapped");
    }
  }
  return aligned;
};
