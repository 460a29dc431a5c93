import { refusal, success, type Result } from "../result";
import { median } from "../statistics/median";
import type { PerMinute, Seconds } from "../units";
import { computeRate } from "./rate";

/** Words and errors of one passage of a sitting. */
export interface PassageResult {
  readonly words: number;
  /** at most `words` */
  readonly errors: number;
  readonly seconds: Seconds;
}

/** What a sitting counts as: one value a day. */
export interface SittingResult {
  /** median of the passages' rates */
  readonly rate: PerMinute;
  /** median of their errors, taken separately */
  readonly errors: number;
  readonly passages: number;
}

/**
 * A sitting of several passages, usually three: the median of the rates, and of the errors separately.
 *
 * Source: common practice of timed reading, no source.
 *
 * @param passages - one entry a passage, at least one
 * @returns the medians, or `no-passages`, or the fault of the first passage that has no rate
 */
export const summariseSitting = (passages: readonly PassageResult[]): Result<SittingResult> => {
  if (passages.length === 0)
    return refusal("no-passages", "Give the words, errors and seconds of a passage.");
  const rates: number[] = [];
  for (const { words, errors, seconds } of passages) {
    const rate = computeRate(words, errors, seconds);
    if (!rate.ok) return rate;
    rates.push(rate.value);
  }
  return success({
    rate: median(rates) as PerMinute,
    errors: median(passages.map(({ errors }) => errors)),
    passages: passages.length,
  });
};
