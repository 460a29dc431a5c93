import { success, type Result } from "../result";
import { refuseOneDay, refuseTooFew, type LineFault } from "./least-squares";
import { median } from "./median";
import { normalQuantile } from "./normal";
import { selectRank } from "./order-statistic";

/** A straight line by the median of the slopes between all pairs of points. */
export interface MedianSlope {
  readonly points: number;
  readonly slope: number;
  /** median y − slope · median x: the one of two conventions that SciPy also uses */
  readonly intercept: number;
  /** absent under 6 points, and where ties leave too few slopes to reach the confidence */
  readonly interval?: { readonly low: number; readonly high: number };
}

/** Points below which no interval is given. */
export const LEAST_POINTS_FOR_INTERVAL = 6;

/**
 * The Theil–Sen slope with Kendall's interval: the median of the slopes of all pairs with different x; limits are
 * the slopes ranked `(N − C)/2` and `(N + C)/2 + 1`, rounded outward, `C = z √(n(n−1)(2n+5)/18)` less the ties in x.
 *
 * Source: Sen 1968, Journal of the American Statistical Association 63:1379–1389 (the correction for ties from memory).
 *
 * @param xs - one value a point
 * @param ys - one value a point, as many as `xs`
 * @param confidence - between 0 and 1
 * @returns the slope, or `too-few-points` (under 2) / `one-day` (all x alike)
 * @throws {RangeError} where the lengths differ
 */
export const fitMedianSlope = (
  xs: readonly number[],
  ys: readonly number[],
  confidence = 0.95,
): Result<MedianSlope, LineFault> => {
  if (xs.length !== ys.length) throw new RangeError(`${xs.length} x but ${ys.length} y.`);
  const points = xs.length;
  if (points < 2) return refuseTooFew();
  const slopes = pairSlopes(xs, ys);
  if (slopes.length === 0) return refuseOneDay();
  // Selecting a rank leaves smaller slopes before it and larger ones after: the other ranks lie in their parts.
  const middle = Math.floor((slopes.length - 1) / 2);
  const lower = selectRank(slopes, middle) ?? NaN;
  const upper = slopes.length % 2 === 1 ? lower : leastFrom(slopes, middle + 1);
  const slope = (lower + upper) / 2;
  const line = { points, slope, intercept: median(ys) - slope * median(xs) };
  if (points < LEAST_POINTS_FOR_INTERVAL) return success(line);
  const reach = normalQuantile((1 + confidence) / 2) * Math.sqrt(kendallVariance(xs));
  // Ranks count from 1.
  const low = selectRank(slopes.subarray(0, middle + 1), Math.floor((slopes.length - reach) / 2) - 1);
  const high = selectRank(slopes.subarray(middle), Math.ceil((slopes.length + reach) / 2) - middle);
  return success(low === undefined || high === undefined ? line : { ...line, interval: { low, high } });
};

const leastFrom = (slopes: Float64Array, from: number): number => {
  let least = Infinity;
  for (let i = from; i < slopes.length; i++) least = Math.min(least, slopes[i] ?? NaN);
  return least;
};

const pairSlopes = (xs: readonly number[], ys: readonly number[]): Float64Array => {
  const slopes = new Float64Array((xs.length * (xs.length - 1)) / 2);
  let found = 0;
  for (let i = 0; i < xs.length; i++) {
    for (let j = i + 1; j < xs.length; j++) {
      const run = (xs[j] ?? NaN) - (xs[i] ?? NaN);
      if (run !== 0) slopes[found++] = ((ys[j] ?? NaN) - (ys[i] ?? NaN)) / run;
    }
  }
  return slopes.subarray(0, found);
};

/** Variance of Kendall's S with ties in x: `(n(n−1)(2n+5) − Σ u(u−1)(2u+5)) / 18`. */
const kendallVariance = (xs: readonly number[]): number => {
  const counts = new Map<number, number>();
  for (const x of xs) counts.set(x, (counts.get(x) ?? 0) + 1);
  const term = (n: number): number => n * (n - 1) * (2 * n + 5);
  let ties = 0;
  for (const count of counts.values()) ties += term(count);
  return (term(xs.length) - ties) / 18;
};
