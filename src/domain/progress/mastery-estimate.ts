import { refusal, success, type Fault, type Result } from "../result";
import { betaQuantile } from "../statistics/beta-quantile";
import type { Interval } from "../statistics/proportion-interval";
import type { Day } from "../units";
import { poolOccasions, type OccasionFault, type TrialCount } from "./mastery-occasions";

/** What is believed about the share that a pupil gets right, as the two counts of a beta distribution. */
export interface ShareBelief {
  readonly right: number;
  readonly wrong: number;
}

/** Every share is as likely before anything was tried: our choice. */
export const SHARE_PRIOR: ShareBelief = { right: 1, wrong: 1 };

/** What a week leaves of the evidence: after 6 or 7 weeks it counts half. Our choice, not fitted to pupils. */
export const KEPT_A_WEEK = 0.9;

const DAYS_A_WEEK = 7;
const CONFIDENCE = 0.95;

/**
 * A belief after some weeks: both counts move towards the prior, so the share stays near and the certainty goes.
 *
 * @param weeks - 0 or more, fractions allowed
 */
export const fadeBelief = (
  { right, wrong }: ShareBelief,
  weeks: number,
  prior: ShareBelief = SHARE_PRIOR,
  keptAWeek = KEPT_A_WEEK,
): ShareBelief => {
  const kept = keptAWeek ** weeks;
  return {
    right: prior.right + (right - prior.right) * kept,
    wrong: prior.wrong + (wrong - prior.wrong) * kept,
  };
};

/** The share that a pupil would get right, how sure that is, and what it rests on. */
export interface KnownShare extends Interval {
  readonly expected: number;
  readonly belief: ShareBelief;
  readonly asOf: Day;
  readonly lastDay: Day;
  /** opportunities that took part */
  readonly opportunities: number;
}

/** Why nothing is known. */
export interface KnownFault extends Fault {
  readonly code: OccasionFault["code"] | "nothing-tried";
}

/**
 * The expected share right with its 95 % interval: a beta-binomial with forgetting, both counts moved towards the prior
 * by 0.9 a week before each day and up to `asOf`.
 *
 * Source: worked out from the model; no published example was found. Prior and forgetting are our choice.
 *
 * @param rows - trials done without support, any order, several a day allowed
 * @param asOf - the last day of the rows unless given; later rows take no part
 * @returns the share, or `nothing-tried` / the faults of {@link poolOccasions}
 */
export const estimateKnown = (rows: readonly TrialCount[], asOf?: Day): Result<KnownShare, KnownFault> => {
  const pooled = poolOccasions(rows);
  if (!pooled.ok) return pooled;
  const until = asOf === undefined ? Infinity : Math.floor(asOf);
  const days = pooled.value.filter(({ day }) => day <= until);
  const lastDay = days.at(-1)?.day;
  if (lastDay === undefined) {
    return refusal("nothing-tried", "Nothing was tried up to that date: add dates with opportunities.");
  }
  let belief = SHARE_PRIOR;
  let before: number = lastDay;
  days.forEach(({ day, correct, opportunities }, i) => {
    const faded = i === 0 ? belief : fadeBelief(belief, (day - before) / DAYS_A_WEEK);
    belief = { right: faded.right + correct, wrong: faded.wrong + opportunities - correct };
    before = day;
  });
  const end = (asOf === undefined ? lastDay : until) as Day;
  belief = fadeBelief(belief, (end - lastDay) / DAYS_A_WEEK);
  return success({
    expected: belief.right / (belief.right + belief.wrong),
    low: betaQuantile((1 - CONFIDENCE) / 2, belief.right, belief.wrong),
    high: betaQuantile((1 + CONFIDENCE) / 2, belief.right, belief.wrong),
    belief,
    asOf: end,
    lastDay,
    opportunities: days.reduce((sum, day) => sum + day.opportunities, 0),
  });
};
