import { refusal, success, type Fault, type Result } from "../result";

/** A straight line fitted by least squares, with what its errors need. `n − 2` degrees of freedom. */
export interface LineFit {
  readonly points: number;
  /** units of y for one unit of x */
  readonly slope: number;
  readonly intercept: number;
  /** standard error; absent for two points, where nothing is left over to judge it by */
  readonly slopeError?: number;
  readonly interceptError?: number;
  /** residual standard deviation, `√(Σ residual² / (n − 2))` */
  readonly scatter?: number;
  readonly meanX: number;
  readonly meanY: number;
  /** `Σ (x − mean x)²` */
  readonly spreadX: number;
}

/** Why no line could be fitted. */
export interface LineFault extends Fault {
  readonly code: "too-few-points" | "one-day";
}

/** Refusal where there are fewer points than a line needs. */
export const refuseTooFew = (least: 2 | 4 | 6 = 2): Result<never, LineFault> =>
  refusal(
    "too-few-points",
    `${least === 6 ? "An interval" : "A trend"} needs at least ${{ 2: "two", 4: "four", 6: "six" }[least]} points: add more dates with scores.`,
  );

/** Refusal where all x are the same. */
export const refuseOneDay = (): Result<never, LineFault> =>
  refusal("one-day", "A trend needs at least two different dates: all of these are on one day.");

/**
 * The straight line with the least sum of squared vertical distances, with standard errors.
 *
 * Source: NIST/SEMATECH e-Handbook, "Linear least squares regression" (from memory).
 *
 * @param xs - one value a point
 * @param ys - one value a point, as many as `xs`
 * @returns the fit, or `too-few-points` (under 2) / `one-day` (all x alike)
 * @throws {RangeError} where the lengths differ
 */
export const fitLine = (xs: readonly number[], ys: readonly number[]): Result<LineFit, LineFault> => {
  if (xs.length !== ys.length) throw new RangeError(`${xs.length} x but ${ys.length} y.`);
  const points = xs.length;
  if (points < 2) return refuseTooFew();
  const meanX = mean(xs);
  const meanY = mean(ys);
  let spreadX = 0;
  let product = 0;
  xs.forEach((x, i) => {
    spreadX += (x - meanX) ** 2;
    product += (x - meanX) * ((ys[i] ?? NaN) - meanY);
  });
  if (spreadX === 0) return refuseOneDay();
  const slope = product / spreadX;
  const fit = { points, slope, intercept: meanY - slope * meanX, meanX, meanY, spreadX };
  if (points === 2) return success(fit);
  let squares = 0;
  xs.forEach((x, i) => (squares += ((ys[i] ?? NaN) - meanY - slope * (x - meanX)) ** 2));
  const scatter = Math.sqrt(squares / (points - 2));
  return success({
    ...fit,
    scatter,
    slopeError: scatter / Math.sqrt(spreadX),
    interceptError: scatter * Math.sqrt(1 / points + meanX ** 2 / spreadX),
  });
};

/**
 * The fitted value at x with the standard error of that fitted value (not of a new point).
 *
 * Source: NIST/SEMATECH e-Handbook, "Confidence interval for the regression function" (from memory).
 */
export const valueAt = (fit: LineFit, x: number): { readonly value: number; readonly error?: number } => {
  const value = fit.meanY + fit.slope * (x - fit.meanX);
  if (fit.scatter === undefined) return { value };
  return { value, error: fit.scatter * Math.sqrt(1 / fit.points + (x - fit.meanX) ** 2 / fit.spreadX) };
};

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
