import { success, type Result } from "../result";
import { fitLine, valueAt } from "../statistics/least-squares";
import { median } from "../statistics/median";
import { studentQuantile } from "../statistics/student-t";
import type { Day } from "../units";
import { aimOn, checkAim, isLowerBetter, type AimEnds, type AimFault } from "./aim";
import { medianByDay, type DailyValue } from "./phases";

export type Verdict = "too few points" | "below aim" | "unclear" | "on aim" | "above aim" | "goal met";

/** What of the rule can be set. */
export interface VerdictSettings {
  /** of the interval of the fitted value; 0.9 by default */
  readonly confidence: number;
  /** largest half-width that still says `on aim`, as a share of the larger of |goal| and |start|: our choice, no source */
  readonly widest: number;
}

export const DEFAULT_VERDICT_SETTINGS: VerdictSettings = { confidence: 0.9, widest: 0.1 };

/** Days with a probe below which nothing is said. */
export const LEAST_DAYS = 6;
/** Days whose median is held against the goal. */
export const GOAL_DAYS = 3;
const RUN_LENGTH = 4;

/** The trend's value on the last probe day against the aim line on that day. */
export interface Comparison {
  readonly day: Day;
  readonly fitted: number;
  readonly low: number;
  readonly high: number;
  readonly aim: number;
  /** the half-width of the interval may be at most this for `on aim` */
  readonly widestHalf: number;
}

/** A verdict with what it rests on. */
export interface Judgement {
  readonly verdict: Verdict;
  /** days with a probe that took part */
  readonly days: number;
  readonly lowerIsBetter: boolean;
  /** median of the last three days; absent with too few points */
  readonly recent?: number;
  /** absent with too few points */
  readonly comparison?: Comparison;
  /** the last four days lie all on this side of the aim line: a prompt to look again, never a verdict */
  readonly run?: "worse" | "better";
}

/**
 * Whether a pupil is on the way to the goal. One value a day from the start on, the median of that day's. Fewer than
 * six days: `too few points`. Median of the last three days at the goal: `goal met`. Otherwise the least-squares value
 * on the last probe day with its interval (t, n − 2) against the aim line on that day: wholly worse `below aim`, wholly
 * better `above aim`, else `on aim` if the half-width is small enough, else `unclear`.
 *
 * Source: this project's rule (page on probes and progress); simulated in the tests.
 *
 * @param values - any order, several a day allowed; those before the start take no part; the caller leaves out those
 *   before a phase change
 * @returns the judgement, or `goal-not-after-start`
 */
export const judgeProgress = (
  values: readonly DailyValue[],
  ends: AimEnds,
  settings: VerdictSettings = DEFAULT_VERDICT_SETTINGS,
): Result<Judgement, AimFault> => {
  const checked = checkAim(ends);
  if (!checked.ok) return checked;
  const daily = medianByDay(values.filter(({ day }) => day >= ends.startDay));
  const lowerIsBetter = isLowerBetter(ends);
  const run = findRun(daily, ends);
  const base = { days: daily.length, lowerIsBetter, ...(run && { run }) };
  if (daily.length < LEAST_DAYS) return success({ ...base, verdict: "too few points" });
  const recent = median(daily.slice(-GOAL_DAYS).map(({ value }) => value));
  const comparison = compareWithAim(daily, ends, settings);
  const goalMet = lowerIsBetter ? recent <= ends.goalScore : recent >= ends.goalScore;
  const verdict = goalMet ? "goal met" : verdictOf(comparison, lowerIsBetter);
  return success({ ...base, verdict, recent, comparison });
};

const compareWithAim = (
  daily: readonly DailyValue[],
  ends: AimEnds,
  settings: VerdictSettings,
): Comparison => {
  const fit = fitLine(
    daily.map(({ day }) => day),
    daily.map(({ value }) => value),
  );
  const day = daily.at(-1)?.day;
  if (!fit.ok || day === undefined) throw new RangeError("Six different days always have a line.");
  const { value: fitted, error = 0 } = valueAt(fit.value, day);
  const reach = studentQuantile((1 + settings.confidence) / 2, daily.length - 2) * error;
  return {
    day,
    fitted,
    low: fitted - reach,
    high: fitted + reach,
    aim: aimOn(ends, day) ?? ends.startScore,
    widestHalf: widestHalfOf(ends, settings),
  };
};

/** The largest half-width that still says `on aim`, in the unit of the scores. */
export const widestHalfOf = (ends: AimEnds, settings: VerdictSettings): number =>
  settings.widest * Math.max(Math.abs(ends.goalScore), Math.abs(ends.startScore));

const verdictOf = ({ low, high, aim, widestHalf }: Comparison, lowerIsBetter: boolean): Verdict => {
  // Scores exactly on a line leave an interval of rounding errors only.
  const rounding = 1e-9 * Math.max(Math.abs(aim), Math.abs(low), Math.abs(high));
  if (high < aim - rounding) return lowerIsBetter ? "above aim" : "below aim";
  if (low > aim + rounding) return lowerIsBetter ? "below aim" : "above aim";
  return (high - low) / 2 <= widestHalf + rounding ? "on aim" : "unclear";
};

/** The side of the aim line on which the last four days lie, if they all lie on one. */
const findRun = (daily: readonly DailyValue[], ends: AimEnds): Judgement["run"] => {
  const last = daily.slice(-RUN_LENGTH);
  if (last.length < RUN_LENGTH) return undefined;
  const sides = last.map(({ day, value }) => Math.sign(value - (aimOn(ends, day) ?? value)));
  const side = sides[0];
  if (side === undefined || side === 0 || sides.some((other) => other !== side)) return undefined;
  return side < 0 === isLowerBetter(ends) ? "better" : "worse";
};
