import type { TaughtSign } from "../contraction/taught-sign";
import type { Day } from "../units";

/** A sign that should be checked again, and since when. */
export interface DueSign {
  /** as the inventory, or her table, names it */
  readonly sign: string;
  readonly since: Day;
}

/** The signs whose written day to check again has come, the longest waiting first. */
export const findWrittenChecks = (taught: readonly TaughtSign[], asOf: Day): readonly DueSign[] =>
  taught
    .flatMap(({ sign, checkAgain }) =>
      checkAgain === undefined || checkAgain > asOf ? [] : [{ sign, since: checkAgain }],
    )
    .sort(bySince);

/** Orders the longest waiting first. */
export const bySince = (one: DueSign, other: DueSign): number => one.since - other.since;
