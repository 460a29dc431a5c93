import { refusal, success, type Fault, type Result } from "../result";
import { normalQuantile } from "./normal";
import type { Interval } from "./proportion-interval";

/** The logarithm of the mean after over the mean before. */
export interface LogRatio {
  /** ln(mean after / mean before) */
  readonly raw: number;
  /** less its bias in small samples */
  readonly corrected: number;
  /** standard error; 0 where scores do not vary */
  readonly error: number;
}

/** Why there is no ratio. */
export interface RatioFault extends Fault {
  readonly code: "too-few-points" | "negative-score" | "zero-mean";
}

/**
 * The log response ratio with bias correction:
 * `ln(M_B / M_A) + S_B²/(2 n_B M_B²) − S_A²/(2 n_A M_A²)`, error `√(S_A²/(n_A M_A²) + S_B²/(n_B M_B²))`.
 *
 * Source: Pustejovsky 2018, Journal of School Psychology 68:99–112 (from memory), as in the R package SingleCaseES.
 *
 * @param before - two or more, none below 0, mean above 0
 * @param after - likewise
 * @returns the ratio, or `too-few-points` / `negative-score` / `zero-mean`
 */
export const computeLogRatio = (
  before: readonly number[],
  after: readonly number[],
): Result<LogRatio, RatioFault> => {
  if (before.length < 2 || after.length < 2) {
    return refusal(
      "too-few-points",
      "A percentage change needs at least two scores before and two after: add more.",
    );
  }
  if ([before, after].some((scores) => scores.some((score) => score < 0))) {
    return refusal(
      "negative-score",
      "A percentage change needs scores of 0 or more: one of these is below 0.",
    );
  }
  const a = describe(before);
  const b = describe(after);
  if (!(a.mean > 0 && b.mean > 0)) {
    return refusal(
      "zero-mean",
      "All scores of one side are 0, and nothing can be a percentage of 0: compare them by NAP.",
    );
  }
  const raw = Math.log(b.mean / a.mean);
  return success({
    raw,
    corrected: raw + b.share / 2 - a.share / 2,
    error: Math.sqrt(a.share + b.share),
  });
};

/** Mean, and `S² / (n M²)`: the squared error of the mean as a share of it. */
const describe = (scores: readonly number[]): { readonly mean: number; readonly share: number } => {
  const { mean, variance } = spreadOf(scores);
  return { mean, share: variance / (scores.length * mean * mean) };
};

/**
 * Mean and variance (divided by n − 1).
 *
 * @param scores - two or more
 */
export const spreadOf = (scores: readonly number[]): { readonly mean: number; readonly variance: number } => {
  const mean = scores.reduce((sum, score) => sum + score, 0) / scores.length;
  const squares = scores.reduce((sum, score) => sum + (score - mean) ** 2, 0);
  return { mean, variance: squares / (scores.length - 1) };
};

/** A change in percent of the level before. */
export interface PercentChange {
  readonly percent: number;
  /** 95 %; absent where no score varies, which leaves nothing to judge it by */
  readonly interval?: Interval;
}

/**
 * The change of the mean in percent: `100 (exp(corrected log ratio) − 1)`, its interval from the normal distribution.
 *
 * Source: Pustejovsky 2018, Journal of School Psychology 68:99–112 (from memory).
 */
export const percentOfRatio = ({ corrected, error }: LogRatio, confidence = 0.95): PercentChange => {
  const percent = 100 * Math.expm1(corrected);
  if (error === 0) return { percent };
  const reach = normalQuantile((1 + confidence) / 2) * error;
  return {
    percent,
    interval: { low: 100 * Math.expm1(corrected - reach), high: 100 * Math.expm1(corrected + reach) },
  };
};
