import type { RowSource } from "../row-source";
import type { Day } from "../units";

/** Whether a lesson was held, and if not, why; `no` where the sheet gives no reason. */
export const HELD = ["yes", "pupil absent", "teacher absent", "school closed", "no"] as const;
export type Held = (typeof HELD)[number];

/** One lesson, held or not. */
export interface Lesson {
  readonly day: Day;
  readonly pupil: string;
  /** 0 or more; 0 where it was not held and the sheet says nothing */
  readonly minutes: number;
  readonly held: Held;
  readonly workedOn?: string;
  readonly note?: string;
  readonly source: RowSource;
}

/** Words of teachers for each answer, matched in small letters (common practice, no source). */
const WORDS: readonly (readonly [Held, RegExp])[] = [
  ["yes", /^(?:y|yes|x|✓|✔|\+|1|true|held|done|given|ok|present|attended|full|part(?:ial)?(?:ly)?)[.!]?$/],
  ["teacher absent", /teacher|tutor|\btvi\b|\bqtvi\b|staff|specialist|my(?:self)?\b|\bi was\b/],
  [
    "school closed",
    /clos|holiday|half[ -]?term|vacation|snow|weather|strike|\binset\b|\bbreak\b|training day|no school/,
  ],
  ["pupil absent", /absen|\babs\b|\bill\b|sick|unwell|away|pupil|student|child|learner|no[ -]?show|hospital/],
  ["no", /^(?:n|no|−|-|0|✗|✘|false|not held|cancell?ed|missed|none)[.!]?$/],
];

/**
 * Reads what stands under "Held": `yes`, `pupil absent`, `teacher absent`, `school closed`, and other words for these.
 *
 * @returns the answer, or undefined where the text says none of them
 */
export const parseHeld = (text: string): Held | undefined => {
  const words = text.normalize("NFKC").trim().replace(/\s+/g, " ").toLowerCase();
  return WORDS.find(([, pattern]) => pattern.test(words))?.[0];
};
