import { success, type Result } from "../result";
import { fitLine, type LineFault } from "../statistics/least-squares";
import { studentQuantile } from "../statistics/student-t";
import { fitMedianSlope, LEAST_POINTS_FOR_INTERVAL } from "../statistics/theil-sen";

export const TREND_METHODS = ["theil-sen", "least-squares"] as const;
export type TrendMethod = (typeof TREND_METHODS)[number];

/** How fast scores change. The interval holds 95 % and is absent where there are too few points for one. */
export interface Trend {
  /** change a week: 7 times the daily slope */
  readonly perWeek: number;
  readonly interval?: { readonly low: number; readonly high: number };
  readonly points: number;
}

const DAYS_A_WEEK = 7;
const CONFIDENCE = 0.95;

/**
 * The change a week through all points, with its 95 % interval from six points on. The interval takes the points as
 * independent of each other; with fewer than about 20 that cannot be checked.
 *
 * Source: Sen 1968 (theil-sen); NIST/SEMATECH e-Handbook (least-squares, from memory).
 *
 * @param days - one value a point, any order
 * @param scores - one value a point, as many as `days`
 * @returns the trend, or `too-few-points` (under 2) / `one-day`
 * @throws {RangeError} where the lengths differ
 */
export const computeTrend = (
  days: readonly number[],
  scores: readonly number[],
  method: TrendMethod = "theil-sen",
): Result<Trend, LineFault> => {
  const points = days.length;
  if (method === "theil-sen") {
    const fit = fitMedianSlope(days, scores, CONFIDENCE);
    if (!fit.ok) return fit;
    const { slope, interval } = fit.value;
    return success({ perWeek: DAYS_A_WEEK * slope, points, ...(interval && { interval: weekly(interval) }) });
  }
  const fit = fitLine(days, scores);
  if (!fit.ok) return fit;
  const { slope, slopeError } = fit.value;
  if (slopeError === undefined || points < LEAST_POINTS_FOR_INTERVAL) {
    return success({ perWeek: DAYS_A_WEEK * slope, points });
  }
  const reach = studentQuantile((1 + CONFIDENCE) / 2, points - 2) * slopeError;
  const interval = weekly({ low: slope - reach, high: slope + reach });
  return success({ perWeek: DAYS_A_WEEK * slope, points, interval });
};

const weekly = ({
  low,
  high,
}: {
  readonly low: number;
  readonly high: number;
}): NonNullable<Trend["interval"]> => ({
  low: DAYS_A_WEEK * low,
  high: DAYS_A_WEEK * high,
});
