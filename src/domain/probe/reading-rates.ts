import { success, type Result } from "../result";
import type { PerMinute, Seconds } from "../units";
import { computeRate, type RateFault } from "./rate";

/** A reading as it counts for rates: how much was read, how much of it correctly, how long it took. */
export interface TimedReading {
  /** words attempted */
  readonly words: number;
  /** of these read correctly */
  readonly correct: number;
  /** of the text attempted in print, blanks between words included */
  readonly characters: number;
  /** of the text attempted in the pupil's code, blanks between words included */
  readonly cells: number;
  readonly seconds: Seconds;
}

/** How fast was read, each counting what was read correctly. */
export interface ReadingRates {
  readonly words: PerMinute;
  readonly characters: PerMinute;
  readonly cells: PerMinute;
}

/**
 * Words, characters and cells read correctly a minute: the rate in words times the mean characters and the mean cells
 * of a word of the text attempted. Cells a minute let contracted and uncontracted reading be compared.
 *
 * Source: words after Deno 1985 (from memory); characters as the unit of reading rates: Legge, Madison & Mansfield 1999;
 * cells: common practice, no source.
 *
 * @returns the rates, all 0 where nothing was attempted, or the fault of {@link computeRate}
 */
export const computeReadingRates = (reading: TimedReading): Result<ReadingRates, RateFault> => {
  const { words, correct, characters, cells, seconds } = reading;
  const rate = computeRate(words, words - correct, seconds);
  if (!rate.ok) return rate;
  const ofEach = (total: number): PerMinute => (words === 0 ? 0 : (rate.value * total) / words) as PerMinute;
  return success({ words: rate.value, characters: ofEach(characters), cells: ofEach(cells) });
};
