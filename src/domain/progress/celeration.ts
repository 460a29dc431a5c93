import { refusal, success, type Fault, type Result } from "../result";
import { fitLine, type LineFault } from "../statistics/least-squares";

/** How fast a rate multiplies. */
export interface Celeration {
  /** ×1.25 a week is 1.25; below 1 it falls */
  readonly perWeek: number;
  /** weeks until the rate is doubled (or halved, if it falls); absent where it does not change */
  readonly doublingWeeks?: number;
  readonly points: number;
}

/** Why there is no factor. */
export interface CelerationFault extends Fault {
  readonly code: LineFault["code"] | "not-above-zero";
}

const DAYS_A_WEEK = 7;

/**
 * The factor by which a rate grows a week: `10^(weekly slope of log10 rate)` by least squares through all points; ×2
 * is from 10 to 20 in seven days.
 *
 * Source: Pennypacker, Koenig & Lindsley 1972, Handbook of the Standard Behavior Chart (from memory).
 *
 * @param days - one value a point, any order
 * @param rates - one value a point, as many as `days`, each above 0
 * @returns the factor, or `too-few-points` (under 2) / `one-day` / `not-above-zero` (has no logarithm)
 * @throws {RangeError} where the lengths differ
 */
export const computeCeleration = (
  days: readonly number[],
  rates: readonly number[],
): Result<Celeration, CelerationFault> => {
  if (rates.some((rate) => !(rate > 0))) {
    return refusal(
      "not-above-zero",
      "A factor a week needs rates above 0, because 0 has no logarithm: leave those days out, or use TREND.",
    );
  }
  const fit = fitLine(
    days,
    rates.map((rate) => Math.log10(rate)),
  );
  if (!fit.ok) return fit;
  const weekly = DAYS_A_WEEK * fit.value.slope;
  return success({
    perWeek: 10 ** weekly,
    points: days.length,
    ...(weekly !== 0 && { doublingWeeks: Math.log10(2) / Math.abs(weekly) }),
  });
};
