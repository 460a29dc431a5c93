import { success, type Result } from "../result";
import { refuseOneDay, refuseTooFew, type LineFault } from "./least-squares";
import { median } from "./median";

/**
 * A straight line by repeated medians: of every point the median slope to all others, and of these the median. Half
 * of the points may be far out without drawing the line along.
 *
 * Source: Siegel 1982, Biometrika 69(1):242–244 (from memory); intercept: the median of `y − slope · x`, as in SciPy.
 *
 * @param xs - one value a point
 * @param ys - one value a point, as many as `xs`
 * @returns the line, or `too-few-points` (under 2) / `one-day` (all x alike)
 * @throws {RangeError} where the lengths differ
 */
export const fitRepeatedMedians = (
  xs: readonly number[],
  ys: readonly number[],
): Result<{ readonly slope: number; readonly intercept: number }, LineFault> => {
  if (xs.length !== ys.length) throw new RangeError(`${xs.length} x but ${ys.length} y.`);
  if (xs.length < 2) return refuseTooFew();
  const slopes = xs.flatMap((x, i) => {
    const own = xs.flatMap((other, j) =>
      other === x ? [] : [((ys[j] ?? NaN) - (ys[i] ?? NaN)) / (other - x)],
    );
    return own.length === 0 ? [] : [median(own)];
  });
  if (slopes.length === 0) return refuseOneDay();
  const slope = median(slopes);
  return success({ slope, intercept: median(xs.map((x, i) => (ys[i] ?? NaN) - slope * x)) });
};
