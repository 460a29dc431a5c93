import { incompleteBeta } from "./incomplete-beta";
import { logBeta } from "./log-beta";

/**
 * The value that a given share of a beta distribution lies at or below: the inverse of the incomplete beta function.
 *
 * Bisection on the logit of x, which keeps its digits near 0 and near 1, hastened by Newton's steps while they stay
 * inside the bracket. Checked against SciPy to 1e-10.
 *
 * @param share - above 0 and below 1
 * @param a - above 0
 * @param b - above 0
 * @throws {RangeError} outside these
 */
export const betaQuantile = (share: number, a: number, b: number): number => {
  if (!(share > 0 && share < 1)) throw new RangeError(`A share must be above 0 and below 1, not ${share}.`);
  if (!(a > 0 && b > 0 && a < Infinity && b < Infinity))
    throw new RangeError(`a and b must be above 0, not ${a} and ${b}.`);
  let [low, high] = [-FARTHEST, FARTHEST];
  let logit = Math.max(low, Math.min(high, Math.log(a / b)));
  for (let step = 0; step < MOST_STEPS; step++) {
    const { x, complement } = fromLogit(logit);
    // The smaller of the two shares has digits to compare; 1 − share would lose them.
    const above = incompleteBeta(x, a, b, complement) - share;
    if (above === 0) break;
    if (above > 0) high = logit;
    else low = logit;
    // dI/dlogit = x^a (1 − x)^b / B(a, b)
    const slope = Math.exp(a * logOf(x, complement) + b * logOf(complement, x) - logBeta(a, b));
    const newton = logit - above / slope;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    const moved = Math.abs(next - logit);
    logit = next;
    if (moved <= 1e-15 * Math.max(1, Math.abs(logit))) break;
  }
  return fromLogit(logit).x;
};

/** Logits beyond this are 0 or 1 in double precision. */
const FARTHEST = 745;
const MOST_STEPS = 400;

const fromLogit = (logit: number): { readonly x: number; readonly complement: number } => {
  const small = Math.exp(-Math.abs(logit));
  const near = 1 / (1 + small);
  const far = small / (1 + small);
  return logit < 0 ? { x: far, complement: near } : { x: near, complement: far };
};

/** ln x, from its complement where x is so near 1 that its own digits are lost. */
const logOf = (x: number, complement: number): number => (x > 0.5 ? Math.log1p(-complement) : Math.log(x));
