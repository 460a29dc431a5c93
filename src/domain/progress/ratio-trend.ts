import { fitLine, valueAt } from "../statistics/least-squares";
import { studentQuantile } from "../statistics/student-t";
import type { Day } from "../units";
import type { DailyValue } from "./phases";
import type { Line, Trajectory, TrendBand } from "./trajectory";
import { DEFAULT_VERDICT_SETTINGS, LEAST_DAYS } from "./verdict";

/** A trend by factors: straight on a ratio scale. Line and band are in the unit of the measure. */
export interface RatioTrend extends Pick<TrendBand, "line" | "band" | "projection" | "points"> {
  /** a week: 2 doubles, 1 is level, 0.5 halves; with its 95 % interval */
  readonly factor: number;
  readonly low: number;
  readonly high: number;
}

const DAYS_A_WEEK = 7;
const CONFIDENCE = 0.95;
const BAND_STEPS = 16;

/** Daily medians that the trend of a trajectory rests on: of its last phase, from the goal's start on. */
export const judgedDays = ({ phases, goal }: Trajectory): readonly DailyValue[] => {
  const daily = phases.at(-1)?.daily ?? [];
  return goal === undefined ? daily : daily.filter(({ day }) => day >= goal.startDay);
};

/**
 * The trend of the judged days by least squares on the logarithms of their values. Days at 0 take no part: 0 has no
 * logarithm.
 *
 * Source: celeration, 10^(weekly slope of log10 of the rate) (page on probes and progress).
 *
 * @returns undefined with fewer than six days above 0
 */
export const fitRatioTrend = (trajectory: Trajectory): RatioTrend | undefined => {
  const judged = judgedDays(trajectory).filter(({ value }) => value > 0);
  const days = judged.map(({ day }) => day);
  const [fromDay, toDay] = [days[0], days.at(-1)];
  if (judged.length < LEAST_DAYS || fromDay === undefined || toDay === undefined) return undefined;
  const fitted = fitLine(
    days,
    judged.map(({ value }) => Math.log10(value)),
  );
  if (!fitted.ok) return undefined;
  const fit = fitted.value;
  const factorOf = (slope: number): number => 10 ** (DAYS_A_WEEK * slope);
  const reach = studentQuantile((1 + CONFIDENCE) / 2, fit.points - 2) * (fit.slopeError ?? 0);
  const at = (day: number): number => 10 ** valueAt(fit, day).value;
  const line = (from: Day, to: Day): Line => ({
    fromDay: from,
    fromValue: at(from),
    toDay: to,
    toValue: at(to),
  });
  const widths = studentQuantile((1 + DEFAULT_VERDICT_SETTINGS.confidence) / 2, fit.points - 2);
  const band = Array.from({ length: BAND_STEPS + 1 }, (_, step) => {
    const day = (fromDay + ((toDay - fromDay) * step) / BAND_STEPS) as Day;
    const { value, error = 0 } = valueAt(fit, day);
    return { day, low: 10 ** (value - widths * error), high: 10 ** (value + widths * error) };
  });
  const goalDay = trajectory.aimLine?.toDay;
  return {
    line: line(fromDay, toDay),
    factor: factorOf(fit.slope),
    low: factorOf(fit.slope - reach),
    high: factorOf(fit.slope + reach),
    points: judged.length,
    band,
    ...(goalDay !== undefined && goalDay > toDay && { projection: line(toDay, goalDay) }),
  };
};
