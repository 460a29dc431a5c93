import type { Interval } from "./proportion-interval";
import { normalQuantile } from "./normal";

/** Every score after compared with every score before. */
export interface Overlap {
  /** pairs that changed for the better, for the worse, and not at all */
  readonly better: number;
  readonly worse: number;
  readonly ties: number;
  /** scores before × scores after: all pairs */
  readonly pairs: number;
  /** non-overlap of all pairs: `(better + ½ ties) / pairs`, 0 to 1; 0.5 is chance */
  readonly nap: number;
}

/**
 * Non-overlap of all pairs (NAP): the share of pairs of a score before and a score after in which the later is better,
 * ties counted half.
 *
 * Source: Parker & Vannest 2009, Behavior Therapy 40(4):357–367.
 *
 * @param before - one or more
 * @param after - one or more
 * @throws {RangeError} where one of them is empty
 */
export const measureOverlap = (
  before: readonly number[],
  after: readonly number[],
  lowerIsBetter = false,
): Overlap => {
  if (before.length === 0 || after.length === 0) throw new RangeError("Overlap needs scores on both sides.");
  const sorted = Float64Array.from(before).sort();
  const pairs = before.length * after.length;
  let [above, ties] = [0, 0];
  for (const score of after) {
    const under = countBelow(sorted, score, false);
    above += under;
    ties += countBelow(sorted, score, true) - under;
  }
  const below = pairs - above - ties;
  const [better, worse] = lowerIsBetter ? [below, above] : [above, below];
  return { better, worse, ties, pairs, nap: (better + ties / 2) / pairs };
};

/** How many of the sorted values are below a limit, or at most at it. */
const countBelow = (sorted: Float64Array, limit: number, included: boolean): number => {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    const value = sorted[middle] ?? NaN;
    if (value < limit || (included && value === limit)) low = middle + 1;
    else high = middle;
  }
  return low;
};

/**
 * An interval for NAP: the roots x of
 * `mn (NAP − x)² (2 − x)(1 + x) = z² x (1 − x)(2 + h + (1 + 2h) x (1 − x))`, `h = (m + n)/2 − 1`. At NAP 1 (or 0),
 * where x = 1 (or 0) is a root that says nothing, the other one is the limit on that side.
 *
 * Source: Newcombe 2006, Statistics in Medicine 25:559–573, method 5 (from memory); the interior root is this
 * project's choice: the R package SingleCaseES 0.7.4 gives [1, 1] there.
 *
 * @param before - how many scores before (m)
 * @param after - how many scores after (n)
 */
export const intervalOfNap = (nap: number, before: number, after: number, confidence = 0.95): Interval => {
  const square = normalQuantile((1 + confidence) / 2) ** 2;
  const h = (before + after) / 2 - 1;
  // Both sides divided by the distance from the end that is a root itself, so that only the wanted root is left.
  const excess = (x: number): number => {
    const variance = square * (2 + h + (1 + 2 * h) * x * (1 - x));
    const weight = before * after * (2 - x) * (1 + x);
    if (nap === 1) return weight * (1 - x) - variance * x;
    if (nap === 0) return weight * x - variance * (1 - x);
    return weight * (nap - x) ** 2 - variance * x * (1 - x);
  };
  return {
    low: nap === 0 ? 0 : findRoot(excess, nap, 0),
    high: nap === 1 ? 1 : findRoot(excess, nap, 1),
  };
};

/** Where a function changes from below 0 to above 0, by bisection to the last digit. */
const findRoot = (excess: (x: number) => number, below: number, above: number): number => {
  let [inner, outer] = [below, above];
  for (let step = 0; step < 200; step++) {
    const middle = (inner + outer) / 2;
    if (middle === inner || middle === outer) break;
    if (excess(middle) < 0) inner = middle;
    else outer = middle;
  }
  return (inner + outer) / 2;
};

/**
 * The standard error of NAP by its unbiased variance; at NAP 0 or 1 that of a NAP half a pair away from it.
 *
 * Source: Sen 1967 and Mee 1990 as in the R package SingleCaseES 0.7.4 (from memory, checked against its answers).
 *
 * @param before - two or more
 * @param after - two or more
 * @returns undefined with fewer
 */
export const errorOfNap = (
  before: readonly number[],
  after: readonly number[],
  lowerIsBetter = false,
): number | undefined => {
  const [m, n] = [before.length, after.length];
  if (m < 2 || n < 2) return undefined;
  const { nap, better, pairs } = measureOverlap(before, after, lowerIsBetter);
  const freedom = (m - 1) * (n - 1);
  if (nap === 0 || nap === 1) {
    const near = 1 / (2 * pairs);
    return Math.sqrt((near * (1 - near)) / freedom);
  }
  const sumOfSquares = (scores: readonly number[], others: readonly number[], lower: boolean): number =>
    scores.reduce((sum, score) => sum + (measureOverlap(others, [score], lower).nap * others.length) ** 2, 0);
  const rows = sumOfSquares(before, after, !lowerIsBetter) / pairs;
  const columns = sumOfSquares(after, before, lowerIsBetter) / pairs;
  return Math.sqrt(Math.max(0, rows + columns - better / pairs - (m + n - 1) * nap * nap) / freedom);
};
