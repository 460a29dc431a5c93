import { measureAgreement, type RankAgreement } from "./kendall";
import { measureOverlap } from "./overlap";
import { median } from "./median";
import { fitMedianSlope } from "./theil-sen";

/**
 * The variants of Tau for scores before and after, by what they divide by. "Tau-U" has been published with at least
 * three of these: always name the variant.
 */
export const TAU_VARIANTS = {
  "A vs. B": "pairs of a score before and a score after (m·n)",
  "A vs. B less trend in A": "m·n",
  "A vs. B less trend in A, over both kinds of pairs": "m·n and the pairs within A",
  "A vs. B with trend in B": "m·n and the pairs within B",
  "A vs. B with trend in B less trend in A": "all pairs",
} as const;
export type TauVariant = keyof typeof TAU_VARIANTS;

/** One variant, as the fraction it is. */
export interface Tau {
  readonly variant: TauVariant;
  /** Kendall's S: better less worse pairs, with trends as the variant says */
  readonly s: number;
  readonly denominator: number;
  /** `s / denominator`; "A vs. B less trend in A" can leave −1 to 1 */
  readonly value: number;
}

/**
 * All variants of Tau, from the same three counts of pairs; better counts up.
 *
 * Source: Parker, Vannest, Davis & Sauber 2011, Behavior Therapy 42(2):284–299; the second as in the R package
 * SingleCaseES.
 *
 * @param before - one or more, oldest first
 * @param after - one or more, oldest first
 */
export const computeTaus = (
  before: readonly number[],
  after: readonly number[],
  lowerIsBetter = false,
): readonly Tau[] => {
  const { better, worse, pairs } = measureOverlap(before, after, lowerIsBetter);
  const between = better - worse;
  const a = trendWithin(before, lowerIsBetter);
  const b = trendWithin(after, lowerIsBetter);
  const tau = (variant: TauVariant, s: number, denominator: number): Tau => ({
    variant,
    s,
    denominator,
    value: s / denominator,
  });
  return [
    tau("A vs. B", between, pairs),
    tau("A vs. B less trend in A", between - a.s, pairs),
    tau("A vs. B less trend in A, over both kinds of pairs", between - a.s, pairs + a.pairs),
    tau("A vs. B with trend in B", between + b.s, pairs + b.pairs),
    tau("A vs. B with trend in B less trend in A", between + b.s - a.s, pairs + a.pairs + b.pairs),
  ];
};

const trendWithin = (scores: readonly number[], lowerIsBetter: boolean): RankAgreement => {
  const agreement = measureAgreement([...scores.keys()], scores);
  return lowerIsBetter ? { ...agreement, s: 0 - agreement.s } : agreement;
};

/** Before and after once the trend of the scores before is taken out of all. */
export interface CorrectedTau {
  /** Theil–Sen slope of the scores before, a score */
  readonly slope: number;
  /** median of `score − slope · place`, places counted from 1 */
  readonly intercept: number;
  /** Kendall's τb of phase and score before the correction, and after; absent where nothing varies */
  readonly uncorrected?: number;
  readonly corrected?: number;
  /** `2 NAP − 1` of the corrected scores */
  readonly nonOverlap: number;
}

/**
 * Baseline-corrected Tau: the Theil–Sen trend of the scores before is taken out of all scores, then phase and score
 * are correlated. Signs as the scores go: better counts up only in `nonOverlap`.
 *
 * Source: Tarlow 2017, Behavior Modification 41(4):427–467.
 *
 * @param before - two or more, oldest first; places in the series stand for dates
 * @param after - one or more, oldest first
 * @returns undefined with fewer
 */
export const computeCorrectedTau = (
  before: readonly number[],
  after: readonly number[],
  lowerIsBetter = false,
): CorrectedTau | undefined => {
  const scores = [...before, ...after];
  const line = fitMedianSlope(
    before.map((_, i) => i + 1),
    before,
  );
  if (!line.ok || after.length === 0) return undefined;
  const { slope } = line.value;
  const phases = scores.map((_, i) => (i < before.length ? 0 : 1));
  const levelled = scores.map((score, i) => roundOff(score - slope * (i + 1)));
  const uncorrected = measureAgreement(phases, scores).tauB;
  const corrected = measureAgreement(phases, levelled).tauB;
  const { nap } = measureOverlap(
    levelled.slice(0, before.length),
    levelled.slice(before.length),
    lowerIsBetter,
  );
  return {
    slope,
    intercept: median(before.map((score, i) => score - slope * (i + 1))),
    ...(uncorrected !== undefined && { uncorrected }),
    ...(corrected !== undefined && { corrected }),
    nonOverlap: 2 * nap - 1,
  };
};

/** Scores that a straight trend makes equal differ in their last digits only, and would not count as tied. */
const roundOff = (value: number): number => Math.round(value * 1e9) / 1e9;
