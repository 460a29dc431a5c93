import { computeShare, type AccuracyFault } from "../probe/accuracy";
import { refusal, success, type Fault, type Result } from "../result";
import type { Day } from "../units";

/** One row of trials: what was right of what was asked on a day. */
export interface TrialCount {
  readonly day: Day;
  readonly correct: number;
  readonly opportunities: number;
}

/** One time at which a sign was tried: a day, or several days pooled and dated by the last. */
export type Occasion = TrialCount;

/** Why rows cannot be counted. */
export interface OccasionFault extends Fault {
  readonly code: AccuracyFault["code"] | "impossible-number";
}

/** More than this in one row is a slip of the keyboard: our choice. */
const MOST_OPPORTUNITIES = 100_000;

/**
 * The occasions behind rows of trials: the rows of a day are summed; days below `least` opportunities are pooled with
 * the following days until it is reached, dated by the last. What is left over at the end is no occasion yet. Rows
 * without opportunities count for nothing.
 *
 * Source: this project's rule (page on probes and progress).
 *
 * @param rows - any order; a time of day is ignored
 * @param least - opportunities that make an occasion, from 1
 * @returns the occasions in order of day, or `negative-count` / `more-correct-than-opportunities` /
 *   `impossible-number` (a fraction, or more than 100,000)
 */
export const poolOccasions = (
  rows: readonly TrialCount[],
  least = 1,
): Result<readonly Occasion[], OccasionFault> => {
  for (const row of rows) {
    const checked = checkCount(row);
    if (!checked.ok) return checked;
  }
  const occasions: Occasion[] = [];
  let pool: Occasion | undefined;
  for (const { day, correct, opportunities } of sumByDay(rows)) {
    pool = {
      day,
      correct: correct + (pool?.correct ?? 0),
      opportunities: opportunities + (pool?.opportunities ?? 0),
    };
    if (pool.opportunities < least) continue;
    occasions.push(pool);
    pool = undefined;
  }
  return success(occasions);
};

const checkCount = ({ correct, opportunities }: TrialCount): Result<unknown, OccasionFault> => {
  if (!Number.isInteger(correct) || !Number.isInteger(opportunities) || opportunities > MOST_OPPORTUNITIES) {
    return refusal(
      "impossible-number",
      `Correct answers and opportunities are counts, whole numbers up to 100,000, not ${correct} of ${opportunities}: check both.`,
    );
  }
  return opportunities === 0 && correct === 0 ? success(0) : computeShare(correct, opportunities);
};

const sumByDay = (rows: readonly TrialCount[]): readonly Occasion[] => {
  const days = new Map<number, { correct: number; opportunities: number }>();
  for (const { day, correct, opportunities } of rows) {
    if (opportunities === 0) continue;
    const whole = Math.floor(day);
    const before = days.get(whole) ?? { correct: 0, opportunities: 0 };
    days.set(whole, {
      correct: before.correct + correct,
      opportunities: before.opportunities + opportunities,
    });
  }
  return [...days].sort(([a], [b]) => a - b).map(([day, counts]) => ({ day: day as Day, ...counts }));
};
