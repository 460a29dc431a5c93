import { refusal, success, type Result } from "../result";
import type { Share } from "../units";
import type { Contraction } from "./inventory";
import type { WordSigns } from "./passage";
import type { TaughtSigns } from "./taught";

/** What a coverage counts: running words readable, contraction uses taught, different contractions taught. */
export const COVERAGE_MEASURES = ["words", "signs", "distinct"] as const;
export type CoverageMeasure = (typeof COVERAGE_MEASURES)[number];

/** Whether a pupil can read a word: every sign in it is known. */
export const isReadable = (word: WordSigns, taught: TaughtSigns): boolean =>
  word.signs.every((sign) => taught.knows(sign));

/**
 * The share of a passage that a pupil can read, from 0 to 1.
 *
 * - `words`: running words all of whose signs are known, of all running words
 * - `signs`: uses of taught contractions, of all uses of contractions
 * - `distinct`: different contractions taught, of the different contractions used
 *
 * @param words - the passage as its reader gives it
 * @returns the share, or `no-words` / `no-contractions` where there is nothing to count
 */
export const measureCoverage = (
  words: readonly WordSigns[],
  taught: TaughtSigns,
  measure: CoverageMeasure,
): Result<Share> => {
  if (words.length === 0) return refusal("no-words", "The text has no words: coverage needs some to count.");
  if (measure === "words") return success(share(words, (word) => isReadable(word, taught)));
  const uses = words.flatMap(({ contractions }) => contractions);
  if (uses.length === 0) {
    return refusal("no-contractions", 'The text uses no contractions: use the measure "words".');
  }
  const counted: readonly Contraction[] = measure === "signs" ? uses : [...new Set(uses)];
  return success(share(counted, (contraction) => taught.knows(contraction)));
};

const share = <T>(items: readonly T[], counts: (item: T) => boolean): Share => {
  let counted = 0;
  for (const item of items) if (counts(item)) counted++;
  return (counted / items.length) as Share;
};
