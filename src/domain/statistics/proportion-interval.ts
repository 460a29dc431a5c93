import { betaQuantile } from "./beta-quantile";
import { normalQuantile } from "./normal";

export const PROPORTION_METHODS = ["jeffreys", "clopper-pearson", "wilson"] as const;
export type ProportionMethod = (typeof PROPORTION_METHODS)[number];

/** Limits of an interval; `low` is at most `high`. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/**
 * An interval for the share behind a count of successes.
 *
 * - `jeffreys`, the one this project shows: quantiles of Beta(k + ½, n − k + ½), from 0 where none and to 1 where all
 *   succeeded; 0 to 1 where nothing was tried
 * - `clopper-pearson`: never too narrow, usually too wide
 * - `wilson`: from the normal score
 *
 * Source: Brown, Cai & DasGupta 2001, Statistical Science 16(2):101–133 (from memory).
 *
 * @param successes - 0 or more, at most `trials`
 * @param trials - 0 or more
 * @param confidence - between 0 and 1; 0.95 unless given
 * @throws {RangeError} outside these
 */
export const intervalOfProportion = (
  successes: number,
  trials: number,
  confidence = 0.95,
  method: ProportionMethod = "jeffreys",
): Interval => {
  if (!(successes >= 0 && successes <= trials))
    throw new RangeError(`There cannot be ${successes} successes in ${trials} trials.`);
  if (trials === 0) return { low: 0, high: 1 };
  const failures = trials - successes;
  const tail = (1 - confidence) / 2;
  if (method === "wilson") return wilsonInterval(successes / trials, trials, normalQuantile(1 - tail));
  const [gained, kept] = method === "jeffreys" ? [0.5, 0.5] : [0, 1];
  return {
    low: successes === 0 ? 0 : betaQuantile(tail, successes + gained, failures + kept),
    high: failures === 0 ? 1 : betaQuantile(1 - tail, successes + kept, failures + gained),
  };
};

const wilsonInterval = (share: number, trials: number, z: number): Interval => {
  const square = (z * z) / trials;
  const centre = (share + square / 2) / (1 + square);
  const half = (z / (1 + square)) * Math.sqrt((share * (1 - share)) / trials + square / (4 * trials));
  return { low: Math.max(0, centre - half), high: Math.min(1, centre + half) };
};
