import type { LineFit } from "./least-squares";
import type { Interval } from "./proportion-interval";
import { studentQuantile } from "./student-t";

/** Where a fitted line meets a level. */
export interface Meeting extends Interval {
  readonly x: number;
}

/**
 * Where a fitted line meets a level, with Fieller's interval: every x at which the level lies within the interval of
 * the fitted value. With `c = b² − t² s²/Sxx` its ends are
 * `mean x + (b (level − mean y) ± t s √(c/n + (level − mean y)²/Sxx)) / c`.
 *
 * Source: Fieller 1954, Journal of the Royal Statistical Society B 16:175–185 (from memory).
 *
 * @param fit - of three points or more, or the interval cannot be said
 * @param level - in units of y
 * @param confidence - between 0 and 1
 * @returns undefined where the interval of the slope includes 0 (the interval would have no end), or where two points
 *   leave no error to judge by
 */
export const findMeeting = (fit: LineFit, level: number, confidence = 0.95): Meeting | undefined => {
  const { points, slope, scatter, meanX, meanY, spreadX } = fit;
  if (scatter === undefined) return undefined;
  const reach = studentQuantile((1 + confidence) / 2, points - 2) * scatter;
  const steepness = slope * slope - (reach * reach) / spreadX;
  if (!(steepness > 0)) return undefined;
  const rise = level - meanY;
  const centre = meanX + (slope * rise) / steepness;
  const half = (reach * Math.sqrt(steepness / points + (rise * rise) / spreadX)) / steepness;
  return { x: meanX + rise / slope, low: centre - half, high: centre + half };
};
