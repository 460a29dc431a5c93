import type { Day } from "../units";
import { reachesShare, type Mastery } from "./mastery";
import type { Occasion } from "./mastery-occasions";

/** Weeks after mastery at which a sign is checked again. Source: common practice, no source. */
const MAINTENANCE_WEEKS = [2, 6] as const;
const DAYS_A_WEEK = 7;

/** One maintenance check: whether a mastered sign is still known later. */
export interface MaintenanceCheck {
  readonly weeks: (typeof MAINTENANCE_WEEKS)[number];
  readonly due: Day;
  /** the first occasion on or after `due` that no earlier check took; absent while it is still to come */
  readonly occasion?: Occasion;
  /** whether that occasion reached the share of the criterion */
  readonly kept?: boolean;
}

/**
 * The checks of a mastered sign after two and six weeks, each by one occasion of the criterion's size. A last one, in
 * connected text not read before, is the teacher's own: trials of the sign alone cannot show it.
 *
 * Source: common practice, no source.
 *
 * @returns none while the sign is not mastered
 */
export const listMaintenanceChecks = ({
  criterion,
  masteredOn,
  occasions,
}: Mastery): readonly MaintenanceCheck[] => {
  if (masteredOn === undefined) return [];
  let after = masteredOn as number;
  return MAINTENANCE_WEEKS.map((weeks) => {
    const due = (masteredOn + weeks * DAYS_A_WEEK) as Day;
    const occasion = occasions.find(({ day }) => day > after && day >= due);
    if (occasion === undefined) return { weeks, due };
    after = occasion.day;
    return { weeks, due, occasion, kept: reachesShare(occasion, criterion.share) };
  });
};
