import { refusal, success, type Fault, type Result } from "../result";
import { incompleteBeta } from "../statistics/incomplete-beta";
import type { Day } from "../units";
import { poolOccasions, type Occasion, type OccasionFault, type TrialCount } from "./mastery-occasions";

/** When a sign counts as mastered: `met` of `of` occasions in a row at `share` or above. */
export interface MasteryCriterion {
  /** above 0, at most 1 */
  readonly share: number;
  /** occasions that must reach the share */
  readonly met: number;
  /** out of this many in a row; the same as `met` for consecutive ones */
  readonly of: number;
  /** opportunities that make an occasion */
  readonly least: number;
}

/**
 * Three consecutive occasions at 80 % with ten opportunities each. 80 % is a common wording of goals; letters usually
 * need more, so the pane asks. Source: common practice, no source.
 */
export const DEFAULT_CRITERION: MasteryCriterion = { share: 0.8, met: 3, of: 3, least: 10 };

/** How far a sign is on the way to the criterion. */
export interface Mastery {
  readonly criterion: MasteryCriterion;
  /** the day on which the criterion was first met; absent where it is not yet */
  readonly masteredOn?: Day;
  readonly occasions: readonly Occasion[];
  /** of the last `of` occasions, how many reached the share (of fewer, while there are fewer) */
  readonly lately: { readonly reached: number; readonly of: number };
}

/** Why a criterion cannot be used. */
export interface CriterionFault extends Fault {
  readonly code: "impossible-number";
}

/** A criterion that can be met: shares and counts within their bounds. */
export const checkCriterion = (criterion: MasteryCriterion): Result<MasteryCriterion, CriterionFault> => {
  const { share, met, of, least } = criterion;
  if (!(share > 0 && share <= 1))
    return refusal("impossible-number", `The share is above 0 and at most 1, such as 0.8, not ${share}.`);
  if (!(isCount(met) && isCount(of) && met <= of)) {
    return refusal(
      "impossible-number",
      `A run is a whole number from 1, or such as “3 of 5”, not ${met} of ${of}.`,
    );
  }
  if (!isCount(least))
    return refusal("impossible-number", `The least opportunities are a whole number from 1, not ${least}.`);
  return success(criterion);
};

const isCount = (value: number): boolean => Number.isInteger(value) && value >= 1;

/**
 * Whether and when a criterion was met by direct trials. Three of five is met with the third occasion that reaches the
 * share, if it is among five in a row. Knowledge inferred from whole words takes no part.
 *
 * Source: this project's rule (page on probes and progress).
 *
 * @param rows - trials of one sign done without support, any order, several a day allowed
 * @param criterion - checked by {@link checkCriterion}
 */
export const findMastery = (
  rows: readonly TrialCount[],
  criterion: MasteryCriterion = DEFAULT_CRITERION,
): Result<Mastery, OccasionFault> => {
  const pooled = poolOccasions(rows, criterion.least);
  if (!pooled.ok) return pooled;
  const occasions = pooled.value;
  const reached = occasions.map((occasion) => reachesShare(occasion, criterion.share));
  const window = (end: number): readonly boolean[] =>
    reached.slice(Math.max(0, end + 1 - criterion.of), end + 1);
  const count = (flags: readonly boolean[]): number => flags.filter(Boolean).length;
  const first = reached.findIndex((_, end) => count(window(end)) >= criterion.met);
  const masteredOn = occasions[first]?.day;
  const last = window(occasions.length - 1);
  return success({
    criterion,
    ...(masteredOn !== undefined && { masteredOn }),
    occasions,
    lately: { reached: count(last), of: last.length },
  });
};

/** Whether an occasion is at or above a share. */
export const reachesShare = ({ correct, opportunities }: Occasion, share: number): boolean =>
  // 0.7 × 10 is 7.000000000000001 in binary for some shares.
  correct >= share * opportunities - 1e-9 * opportunities;

/**
 * The chance that a pupil of a given true accuracy meets the criterion within `of` occasions of `least` opportunities:
 * how easily chance alone lets one pass.
 *
 * Source: binomial distribution by the incomplete beta function, Abramowitz & Stegun 1964, 26.5.24 (from memory).
 *
 * @param accuracy - from 0 to 1
 */
export const chanceToPass = ({ share, met, of, least }: MasteryCriterion, accuracy: number): number =>
  chanceOfAtLeast(met, of, chanceOfAtLeast(Math.ceil(share * least - 1e-9 * least), least, accuracy));

const chanceOfAtLeast = (successes: number, trials: number, chance: number): number =>
  successes <= 0 ? 1 : incompleteBeta(chance, successes, trials - successes + 1);
