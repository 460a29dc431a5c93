import { alignSequences, EDIT, type AlignmentStep } from "./alignment";
import { listAligned, type AlignedCells } from "./aligned-cells";
import { compareDots, countBits, countDots, patternsOf } from "./cell-error-kind";
import { listRewrites, type ContractionRewrite } from "./contraction-rewrites";
import type { ExpectedCells } from "./expected-cells";

/** Writing scored. `cells = right + changed + leftOut`; cells written `= right + changed + added`. */
export interface WritingScore {
  /** cells expected, blanks between words among them */
  readonly cells: number;
  readonly right: number;
  /** another cell stands in its place */
  readonly changed: number;
  readonly leftOut: number;
  readonly added: number;
  /** dots that stand in both of two paired cells */
  readonly dotsShared: number;
  /** dots that stand in at least one of them; those of a cell left out or added are all counted */
  readonly dotsUnion: number;
  /** all cells in order, right ones too, blanks among them */
  readonly aligned: readonly AlignedCells[];
}

/** More than all dots that can differ in a text of some thousand cells. */
const UNPAIRED = 2 ** 14;

/**
 * Scores writing: the cells expected against the cells written, by alignment.
 *
 * Of all alignments the one of fewest edits, where an edit changes, leaves out or adds a cell, or spells out or uses a
 * contraction; of these the one that pairs more cells; of these the one in which fewer dots differ. Two cells written in
 * the other order are two cells changed, as each word of a swapped pair of words is an error.
 *
 * A contraction spelled out (or wrongly used) is one error; its cells are counted by aligning them with those written
 * for it: `the` as t-h-e is one cell changed and two added.
 *
 * Source: Wagner & Fischer 1974, Journal of the ACM 21(1), with runs rewritten as one edit.
 *
 * @param expected - from {@link expectText}, {@link expectSigns} or {@link expectBraille}
 * @param written - Unicode braille without line breaks, as {@link parseWritten} gives it
 */
export const scoreWriting = (expected: ExpectedCells, written: string): WritingScore => {
  const rewrites = listRewrites(expected).filter(isFoundIn(written));
  const steps = alignCells(expected.cells, written, rewrites);
  const tally = new Tally();
  for (const step of steps) {
    if (step.kind !== "rewritten") tally.add(step, expected.cells, written);
    else {
      const [run, other] = [expected.cells.slice(...step.first), written.slice(...step.second)];
      for (const inner of alignCells(run, other, [])) tally.add(inner, run, other);
    }
  }
  return {
    ...tally.counts(),
    cells: expected.cells.length,
    aligned: listAligned(expected, written, steps, rewrites),
  };
};

/** Whether a rewrite's cells stand anywhere in the writing; most do not, and only those that do widen the search. */
const isFoundIn = (written: string): ((rewrite: ContractionRewrite) => boolean) => {
  const known = new Map<string, boolean>();
  return ({ keys }) => {
    const cells = keys.join("");
    const found = known.get(cells) ?? written.includes(cells);
    known.set(cells, found);
    return found;
  };
};

/** Scores of several texts or items as one; positions run on. One score or more. */
export const poolWriting = (scores: readonly WritingScore[]): WritingScore => {
  const sum = (of: (score: WritingScore) => number): number =>
    scores.reduce((total, score) => total + of(score), 0);
  let before = 0;
  const aligned = scores.flatMap((score) => {
    const offset = before;
    before += score.cells;
    return score.aligned.map((pair) => ({ ...pair, position: pair.position + offset }));
  });
  return {
    cells: sum(({ cells }) => cells),
    right: sum(({ right }) => right),
    changed: sum(({ changed }) => changed),
    leftOut: sum(({ leftOut }) => leftOut),
    added: sum(({ added }) => added),
    dotsShared: sum(({ dotsShared }) => dotsShared),
    dotsUnion: sum(({ dotsUnion }) => dotsUnion),
    aligned,
  };
};

/**
 * The share of cells expected that are right: `right / cells`; cells added do not lower it. Undefined where no cell was
 * expected.
 */
export const cellAccuracy = ({ right, cells }: WritingScore): number | undefined =>
  cells === 0 ? undefined : right / cells;

/**
 * The share of dots that are right: 1 − |XOR| / |union|, both summed over all pairs of cells, a cell left out or added
 * paired with no dots; so dots added lower it too. Undefined where there are no dots at all.
 */
export const dotAccuracy = ({ dotsShared, dotsUnion }: WritingScore): number | undefined =>
  dotsUnion === 0 ? undefined : dotsShared / dotsUnion;

const alignCells = (
  expected: string,
  written: string,
  rewrites: readonly ContractionRewrite[],
): readonly AlignmentStep[] => {
  const [one, other] = [patternsOf(expected), patternsOf(written)];
  const { steps } = alignSequences([...expected], [...written], {
    swaps: false,
    rewrites,
    replace: (i, j) => EDIT + countBits((one[i] ?? 0) ^ (other[j] ?? 0)),
    missing: (i) => EDIT + UNPAIRED + countBits(one[i] ?? 0),
    extra: (j) => EDIT + UNPAIRED + countBits(other[j] ?? 0),
  });
  return steps;
};

/** Counts cells and dots step by step. */
class Tally {
  #right = 0;
  #changed = 0;
  #leftOut = 0;
  #added = 0;
  #dotsShared = 0;
  #dotsUnion = 0;

  add(step: AlignmentStep, expected: string, written: string): void {
    switch (step.kind) {
      case "same":
      case "replaced": {
        if (step.kind === "same") this.#right += 1;
        else this.#changed += 1;
        const { both, either } = compareDots(expected.charAt(step.first), written.charAt(step.second));
        this.#dotsShared += both;
        this.#dotsUnion += either;
        break;
      }
      case "missing":
        this.#leftOut += 1;
        this.#dotsUnion += countDots(expected.charAt(step.first));
        break;
      case "extra":
        this.#added += 1;
        this.#dotsUnion += countDots(written.charAt(step.second));
        break;
      case "swapped":
      case "rewritten":
        throw new RangeError("cells are counted one by one");
    }
  }

  counts(): Pick<WritingScore, "right" | "changed" | "leftOut" | "added" | "dotsShared" | "dotsUnion"> {
    return {
      right: this.#right,
      changed: this.#changed,
      leftOut: this.#leftOut,
      added: this.#added,
      dotsShared: this.#dotsShared,
      dotsUnion: this.#dotsUnion,
    };
  }
}
