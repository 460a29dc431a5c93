import { incompleteBeta } from "./incomplete-beta";
import { logBeta } from "./log-beta";
import { normalQuantile } from "./normal";

/** The share of Student's t further from 0 than ±t, and the share within, each without loss of digits. */
const twoSided = (t: number, freedom: number): { readonly outside: number; readonly within: number } => {
  const square = t * t;
  // Infinite squares are as far out as can be.
  if (square === Infinity) return { outside: 0, within: 1 };
  const far = square / (freedom + square);
  const near = freedom / (freedom + square);
  return {
    outside: incompleteBeta(near, freedom / 2, 0.5, far),
    within: incompleteBeta(far, 0.5, freedom / 2, near),
  };
};

/**
 * The share of Student's t distribution at or below t.
 *
 * Source: Abramowitz & Stegun 1964, 26.7.1 with 26.5.27 (from memory).
 *
 * @param freedom - degrees of freedom, above 0
 */
export const studentShare = (t: number, freedom: number): number => {
  const { outside, within } = twoSided(t, freedom);
  return t < 0 ? outside / 2 : 0.5 + within / 2;
};

const density = (t: number, freedom: number): number =>
  Math.exp(
    -logBeta(0.5, freedom / 2) -
      0.5 * Math.log(freedom) -
      ((freedom + 1) / 2) * Math.log1p((t * t) / freedom),
  );

/**
 * The value of Student's t that a given share of the distribution lies at or below.
 *
 * Newton's method on ln(share) over ln(t): both tails and centre are nearly straight there.
 * Checked against `@stdlib/stats-base-dists-t-quantile` to 1e-10.
 *
 * @param share - above 0 and below 1
 * @param freedom - degrees of freedom, above 0
 * @throws {RangeError} outside these
 */
export const studentQuantile = (share: number, freedom: number): number => {
  if (!(share > 0 && share < 1)) throw new RangeError(`A share must be above 0 and below 1, not ${share}.`);
  if (!(freedom > 0)) throw new RangeError(`Degrees of freedom must be above 0, not ${freedom}.`);
  if (share === 0.5) return 0;
  const outside = 2 * Math.min(share, 1 - share);
  // 2 share − 1 keeps its digits near the middle, where `outside` would lose them.
  const within = Math.abs(2 * share - 1);
  const inner = within < 0.5;
  let logT = Math.log(Math.abs(normalQuantile(share)));
  for (let step = 0; step < 200; step++) {
    const t = Math.exp(logT);
    const reached = twoSided(t, freedom);
    const slope = 2 * density(t, freedom) * t;
    const change = inner
      ? (Math.log(reached.within / within) * reached.within) / slope
      : (-Math.log(reached.outside / outside) * reached.outside) / slope;
    logT -= Math.max(-2, Math.min(2, change));
    if (Math.abs(change) < 1e-15) break;
  }
  return share < 0.5 ? -Math.exp(logT) : Math.exp(logT);
};
