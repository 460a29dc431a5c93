import { logBeta } from "./log-beta";

const TINY = 1e-300;
const MOST_TERMS = 20_000;

/**
 * The regularised incomplete beta function I_x(a, b): the share of a beta distribution below x.
 *
 * Source: the continued fraction of Abramowitz & Stegun 1964, 26.5.8 (from memory), evaluated by the modified
 * method of Lentz 1976, Applied Optics 15(3) (from memory).
 *
 * @param x - from 0 to 1
 * @param a - above 0
 * @param b - above 0
 * @param complement - 1 − x, where it is known more exactly than by subtraction
 * @throws {RangeError} outside these
 */
export const incompleteBeta = (x: number, a: number, b: number, complement = 1 - x): number => {
  if (!(x >= 0 && x <= 1)) throw new RangeError(`x must be from 0 to 1, not ${x}.`);
  if (!(a > 0 && b > 0)) throw new RangeError(`a and b must be above 0, not ${a} and ${b}.`);
  if (x === 0) return 0;
  if (complement === 0) return 1;
  // The fraction converges fast only on this side of the mean.
  if (x > (a + 1) / (a + b + 2)) return 1 - lowerShare(complement, b, a, x);
  return lowerShare(x, a, b, complement);
};

const lowerShare = (x: number, a: number, b: number, complement: number): number =>
  Math.exp(a * logOf(x, complement) + b * logOf(complement, x) - logBeta(a, b)) / (a * betaFraction(x, a, b));

/** ln x, from its complement where x is so near 1 that its own digits are lost. */
const logOf = (x: number, complement: number): number => (x > 0.5 ? Math.log1p(-complement) : Math.log(x));

/** The fraction 1 + d₁/(1 + d₂/(1 + …)). */
const betaFraction = (x: number, a: number, b: number): number => {
  let value = 1;
  let upper = 1;
  let lower = 0;
  for (let term = 1; term < MOST_TERMS; term++) {
    const m = Math.floor(term / 2);
    const step =
      term % 2 === 0
        ? (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
        : (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    lower = 1 / (1 + step * lower || TINY);
    upper = 1 + step / upper || TINY;
    value *= upper * lower;
    if (Math.abs(upper * lower - 1) < 1e-16) break;
  }
  return value;
};
