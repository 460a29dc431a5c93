import { refusal, success, type Result } from "../result";
import type { Share } from "../units";
import type { WordSigns } from "./passage";
import { isContraction, type Sign } from "./sign";
import type { TaughtSigns } from "./taught";

/** What a coverage counts: running words readable, uses of taught signs, different signs taught. */
export const COVERAGE_MEASURES = ["words", "signs", "distinct"] as const;
export type CoverageMeasure = (typeof COVERAGE_MEASURES)[number];

/** Whether a pupil can read a word: every sign in it is known. */
export const isReadable = (word: WordSigns, taught: TaughtSigns): boolean =>
  word.signs.every((sign) => taught.knows(sign));

/** The signs that a reader of each code learns: contractions, or letters where there are none. */
const LEARNT = {
  contracted: { counts: isContraction, named: "contractions" },
  uncontracted: { counts: ({ kind }: Sign): boolean => kind === "letter", named: "letters" },
} as const;

/**
 * The share of a passage that a pupil can read, from 0 to 1.
 *
 * - `words`: running words all of whose signs are known, of all running words
 * - `signs`: uses of taught contractions, of all uses of contractions
 * - `distinct`: different contractions taught, of the different contractions used
 *
 * An uncontracted reader learns letters: there the last two count letters in place of contractions.
 *
 * @param words - the passage as its reader gives it
 * @param code - the code that the passage was read in
 * @returns the share, or `no-words` / `nothing-to-give` where there is nothing to count
 */
export const measureCoverage = (
  words: readonly WordSigns[],
  taught: TaughtSigns,
  measure: CoverageMeasure,
  code: keyof typeof LEARNT = "contracted",
): Result<Share> => {
  if (words.length === 0) return refusal("no-words", "The text has no words: coverage needs some to count.");
  if (measure === "words") return success(share(words, (word) => isReadable(word, taught)));
  const { counts, named } = LEARNT[code];
  const uses = words.flatMap(({ sequence }) => sequence.filter(counts));
  if (uses.length === 0)
    return refusal("nothing-to-give", `The text uses no ${named}: use the measure "words".`);
  const counted: readonly Sign[] = measure === "signs" ? uses : [...new Set(uses)];
  return success(share(counted, (sign) => taught.knows(sign)));
};

const share = <T>(items: readonly T[], counts: (item: T) => boolean): Share => {
  let counted = 0;
  for (const item of items) if (counts(item)) counted++;
  return (counted / items.length) as Share;
};
