import { refusal, success, type Fault, type Result } from "../result";
import { findMeeting, type Meeting } from "../statistics/fieller";
import { fitLine, valueAt } from "../statistics/least-squares";
import { median } from "../statistics/median";
import type { Day } from "../units";
import { medianByDay, type DailyValue } from "./phases";
import { GOAL_DAYS, LEAST_DAYS } from "./verdict";

/** When a trend, if it goes on, reaches a goal. Serial numbers with a part of a day; whole days are for the sheet's format. */
export interface Projection {
  readonly day: Day;
  /** 95 %; the earliest can be before the last probe */
  readonly earliest: Day;
  readonly latest: Day;
  /** days with a probe that took part */
  readonly days: number;
}

/** Why no date can be given. */
export interface ProjectionFault extends Fault {
  readonly code: "too-few-points" | "level-trend" | "away-from-goal" | "goal-passed" | "too-far-ahead";
}

/** 31 December 9999, the last day that a sheet can show. */
const LAST_DAY = 2_958_465;

/**
 * The day on which the least-squares line through the daily medians meets a goal, with Fieller's 95 % interval. The
 * line is taken to go on as it did and the days as independent of each other.
 *
 * Source: Fieller 1954, Journal of the Royal Statistical Society B 16:175–185 (from memory); the refusals are this
 * project's choice.
 *
 * @param values - any order, several a day allowed
 * @param goal - in the unit of the values
 * @returns the day, or `too-few-points` (under 6 days) / `level-trend` (the slope's interval includes 0) /
 *   `goal-passed` (by the line, or by the median of the last three days) / `away-from-goal` / `too-far-ahead`
 */
export const projectGoal = (
  values: readonly DailyValue[],
  goal: number,
): Result<Projection, ProjectionFault> => {
  const daily = medianByDay(values);
  const days = daily.map(({ day }) => day);
  const scores = daily.map(({ value }) => value);
  const fit = fitLine(days, scores);
  const [first, last] = [days[0], days.at(-1)];
  if (daily.length < LEAST_DAYS || !fit.ok || first === undefined || last === undefined) return TOO_FEW;
  const meeting = findMeeting(fit.value, goal);
  const steps = Math.abs(fit.value.slope) * (last - first);
  // Equal scores can leave a slope of rounding errors only.
  const rounding = 1e-9 * scores.reduce((most, score) => Math.max(most, Math.abs(score)), 0);
  if (meeting === undefined || steps <= rounding) return LEVEL;
  const rising = fit.value.slope > 0;
  const reaches = (score: number): boolean => (rising ? score >= goal : score <= goal);
  if (reaches(valueAt(fit.value, first).value)) return AWAY;
  if (reaches(valueAt(fit.value, last).value) || reaches(median(scores.slice(-GOAL_DAYS)))) return PASSED;
  return meeting.high > LAST_DAY ? TOO_FAR : success(asProjection(meeting, daily.length));
};

const asProjection = ({ x, low, high }: Meeting, days: number): Projection => ({
  day: x as Day,
  earliest: low as Day,
  latest: high as Day,
  days,
});

const TOO_FEW = refusal(
  "too-few-points",
  `A date needs scores on at least ${LEAST_DAYS} different days: add more dates with scores.`,
);
const LEVEL = refusal(
  "level-trend",
  "The trend may as well be level, so no date can be given: add more dates with scores.",
);
const AWAY = refusal(
  "away-from-goal",
  "The trend goes away from this goal: check the goal, or look at the trend first.",
);
const PASSED = refusal("goal-passed", "The goal is reached already: set a new one.");
const TOO_FAR = refusal(
  "too-far-ahead",
  "The trend is too uncertain to give a latest date: add more dates with scores.",
);
