import { success, type Result } from "../result";
import { refuseOneDay, refuseTooFew, type LineFault } from "./least-squares";
import { median } from "./median";

/** A line through the middles of the two halves of a series. */
export interface SplitMiddle {
  readonly slope: number;
  /** shifted so that as many points lie above the line as below */
  readonly intercept: number;
  /** of the line through the two middles, before it is shifted */
  readonly interceptBefore: number;
  /** median x and median y of either half */
  readonly middles: readonly [readonly [number, number], readonly [number, number]];
}

/**
 * The split-middle line: the series is cut in half in order of x (the middle point of an odd number takes no part in
 * the middles), the line goes through the median x and median y of both halves, and is then shifted by the median of
 * all residuals.
 *
 * Source: White 1972, in Kazdin 1982, Single-Case Research Designs (both from memory).
 *
 * @param xs - one value a point, any order
 * @param ys - one value a point, as many as `xs`
 * @returns the line, or `too-few-points` (under 4: two a half) / `one-day` (both middles above each other)
 * @throws {RangeError} where the lengths differ
 */
export const fitSplitMiddle = (
  xs: readonly number[],
  ys: readonly number[],
): Result<SplitMiddle, LineFault> => {
  if (xs.length !== ys.length) throw new RangeError(`${xs.length} x but ${ys.length} y.`);
  if (xs.length < LEAST_POINTS) return refuseTooFew(LEAST_POINTS);
  const points = xs.map((x, i) => [x, ys[i] ?? NaN] as const).sort(([a], [b]) => a - b);
  const half = Math.floor(points.length / 2);
  const before = middleOf(points.slice(0, half));
  const after = middleOf(points.slice(-half));
  if (after[0] === before[0]) return refuseOneDay();
  const slope = (after[1] - before[1]) / (after[0] - before[0]);
  const intercept = median(points.map(([x, y]) => y - slope * x));
  return success({
    slope,
    intercept,
    interceptBefore: before[1] - slope * before[0],
    middles: [before, after],
  });
};

const LEAST_POINTS = 4;

const middleOf = (points: readonly (readonly [number, number])[]): readonly [number, number] => [
  median(points.map(([x]) => x)),
  median(points.map(([, y]) => y)),
];
