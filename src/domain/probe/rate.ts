import { refusal, success, type Fault, type Result } from "../result";
import type { PerMinute, Seconds } from "../units";

/** Why there is no rate. */
export interface RateFault extends Fault {
  readonly code: "no-time" | "clock-time" | "negative-count" | "more-errors-than-words";
}

/**
 * Words read correctly per minute: `60 (words − errors) / seconds`. A probe finished early is prorated by the same
 * formula.
 *
 * Source: Deno 1985, Exceptional Children 52(3) (from memory).
 *
 * @param words - words attempted, 0 or more
 * @param errors - words misread, at most `words`
 * @param seconds - time taken, 1 or more: less is a clock time, which a spreadsheet stores as part of a day
 * @returns the rate, or `no-time` / `clock-time` / `negative-count` / `more-errors-than-words`
 */
export const computeRate = (
  words: number,
  errors: number,
  seconds: Seconds,
): Result<PerMinute, RateFault> => {
  const counts = checkCounts(words, errors);
  if (!counts.ok) return counts;
  if (seconds <= 0) return refusal("no-time", "Give the time taken in seconds, more than 0.");
  if (seconds < 1) {
    return refusal(
      "clock-time",
      "Give seconds: a clock time such as 1:30 is stored as part of a day. For such a cell use 86400 times it if it " +
        "was typed as hours, minutes and seconds (0:01:30), or 1440 times it if 1:30 was typed for minutes and seconds.",
    );
  }
  return success(((60 * (words - errors)) / seconds) as PerMinute);
};

/** Why two counts do not go together. */
export interface CountFault extends Fault {
  readonly code: "negative-count" | "more-errors-than-words";
}

/**
 * Whether a number of errors can belong to a number of words.
 *
 * @returns nothing, or `negative-count` / `more-errors-than-words`
 */
export const checkCounts = (words: number, errors: number): Result<undefined, CountFault> => {
  if (words < 0 || errors < 0) {
    return refusal("negative-count", "Words and errors are counts: give 0 or more of each.");
  }
  if (errors > words) {
    return refusal(
      "more-errors-than-words",
      `There cannot be more errors (${errors}) than words attempted (${words}): check both.`,
    );
  }
  return success(undefined);
};
