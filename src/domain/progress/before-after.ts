import { refusal, success, type Fault, type Result } from "../result";
import {
  computeLogRatio,
  percentOfRatio,
  type PercentChange,
  type RatioFault,
} from "../statistics/log-response-ratio";
import { median } from "../statistics/median";
import { shareBeyondBest } from "../statistics/non-overlapping-data";
import { intervalOfNap, measureOverlap } from "../statistics/overlap";
import type { Interval } from "../statistics/proportion-interval";
import { computeTaus, type Tau } from "../statistics/tau";
import type { PhaseStretch } from "./phases";

/** The scores of one side in short. */
export interface ScoreSummary {
  /** how many scores */
  readonly count: number;
  readonly median: number;
  readonly lowest: number;
  readonly highest: number;
}

/** Non-overlap of all pairs with its 95 % interval. */
export interface Nap extends Interval {
  readonly nap: number;
}

/** Scores before and after a change of teaching. It says what came after, never what the change did. */
export interface BeforeAfter {
  readonly before: ScoreSummary;
  readonly after: ScoreSummary;
  readonly nap: Nap;
  /** of the mean, by the log response ratio; a fault where there is none (zeros, one score) */
  readonly change: Result<PercentChange, RatioFault>;
}

/** What is given only where it is asked for. */
export interface FurtherComparison {
  /** each variant with its denominator: never print one without its name */
  readonly taus: readonly Tau[];
  /** share of scores after beyond the best before */
  readonly pnd: number;
}

/** Why there is no comparison. */
export interface ComparisonFault extends Fault {
  readonly code: "too-few-points";
}

/**
 * Non-overlap of all pairs with its interval.
 *
 * Source: Parker & Vannest 2009, Behavior Therapy 40(4):357–367; interval Newcombe 2006, method 5.
 *
 * @param before - one score a probe or a day, one or more
 * @param after - likewise
 * @returns 0 to 1 (0.5 is chance), or `too-few-points` where one side has no score
 */
export const computeNap = (
  before: readonly number[],
  after: readonly number[],
  lowerIsBetter = false,
): Result<Nap, ComparisonFault> => {
  if (before.length === 0 || after.length === 0) {
    return refusal(
      "too-few-points",
      "Before and after need at least one score each: fill in both ranges with numbers.",
    );
  }
  const { nap } = measureOverlap(before, after, lowerIsBetter);
  return success({ nap, ...intervalOfNap(nap, before.length, after.length) });
};

/**
 * The scores before and after a change: medians, ranges, NAP and the change of the mean in percent.
 *
 * Source: Parker & Vannest 2009; Pustejovsky 2018 (see the statistics).
 *
 * @param before - one score a probe or a day, one or more, oldest first
 * @param after - likewise
 */
export const compareScores = (
  before: readonly number[],
  after: readonly number[],
  lowerIsBetter = false,
): Result<BeforeAfter, ComparisonFault> => {
  const nap = computeNap(before, after, lowerIsBetter);
  if (!nap.ok) return nap;
  return success({
    before: summariseScores(before),
    after: summariseScores(after),
    nap: nap.value,
    change: computeChange(before, after),
  });
};

/** The change of the mean in percent with its 95 % interval, or the fault that stands in its way. */
export const computeChange = (
  before: readonly number[],
  after: readonly number[],
): Result<PercentChange, RatioFault> => {
  const ratio = computeLogRatio(before, after);
  return ratio.ok ? success(percentOfRatio(ratio.value)) : ratio;
};

/**
 * The variants of Tau and PND, for those who ask for them.
 *
 * @param before - one or more, oldest first
 * @param after - one or more, oldest first
 * @throws {RangeError} where one of them is empty
 */
export const compareFurther = (
  before: readonly number[],
  after: readonly number[],
  lowerIsBetter = false,
): FurtherComparison => ({
  taus: computeTaus(before, after, lowerIsBetter),
  pnd: shareBeyondBest(before, after, lowerIsBetter),
});

/** Two neighbouring stretches of a series and what came of it. */
export interface PhaseComparison extends BeforeAfter {
  readonly beforeName: string;
  readonly afterName: string;
}

/**
 * Each phase of the teacher's phase column against the one before it, on the daily medians of unsupported probes. A
 * phase without such a day is left out, and the next is compared with the last that has one.
 *
 * @param stretches - oldest first
 */
export const comparePhases = (
  stretches: readonly PhaseStretch[],
  lowerIsBetter = false,
): readonly PhaseComparison[] => {
  const told = stretches.filter(({ daily }) => daily.length > 0);
  return told.flatMap((after, i) => {
    const before = told[i - 1];
    if (before === undefined) return [];
    const compared = compareScores(scoresOf(before), scoresOf(after), lowerIsBetter);
    return compared.ok ? [{ beforeName: before.name, afterName: after.name, ...compared.value }] : [];
  });
};

const scoresOf = ({ daily }: PhaseStretch): readonly number[] => daily.map(({ value }) => value);

const summariseScores = (scores: readonly number[]): ScoreSummary => ({
  count: scores.length,
  median: median(scores),
  lowest: scores.reduce((least, score) => Math.min(least, score), Infinity),
  highest: scores.reduce((most, score) => Math.max(most, score), -Infinity),
});
