import { refusal, success, type Fault, type Result } from "../result";
import type { Share } from "../units";
import { checkCounts } from "./rate";

/** Why there is no accuracy. */
export interface AccuracyFault extends Fault {
  readonly code:
    | "no-words"
    | "no-opportunities"
    | "negative-count"
    | "more-errors-than-words"
    | "more-correct-than-opportunities";
}

/**
 * The share of attempted words that were right: `(words − errors) / words`, from 0 to 1.
 *
 * Source: common practice, no source.
 *
 * @param words - words attempted, more than 0
 * @param errors - words misread, at most `words`
 * @returns the share, or `no-words` / `negative-count` / `more-errors-than-words`
 */
export const computeAccuracy = (words: number, errors: number): Result<Share, AccuracyFault> => {
  const counts = checkCounts(words, errors);
  if (!counts.ok) return counts;
  if (words === 0) return refusal("no-words", "No words were attempted, so there is no accuracy to give.");
  return success(((words - errors) / words) as Share);
};

/**
 * The share of opportunities that were answered right, from 0 to 1.
 *
 * Source: common practice, no source.
 *
 * @param correct - 0 or more, at most `opportunities`
 * @param opportunities - more than 0
 * @returns the share, or `no-opportunities` / `negative-count` / `more-correct-than-opportunities`
 */
export const computeShare = (correct: number, opportunities: number): Result<Share, AccuracyFault> => {
  if (correct < 0 || opportunities < 0) {
    return refusal("negative-count", "Correct answers and opportunities are counts: give 0 or more of each.");
  }
  if (correct > opportunities) {
    return refusal(
      "more-correct-than-opportunities",
      `There cannot be more correct (${correct}) than opportunities (${opportunities}): check both.`,
    );
  }
  if (opportunities === 0) {
    return refusal("no-opportunities", "There were no opportunities, so there is no accuracy to give.");
  }
  return success((correct / opportunities) as Share);
};
