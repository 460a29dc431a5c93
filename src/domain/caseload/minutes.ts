import type { Day } from "../units";
import type { Lesson } from "./lesson";
import { mondayOf } from "./week";

/** Minutes of lessons over some days: as planned, where the plan says, and as given. */
export interface Minutes {
  /** absent where no minutes a week are planned */
  readonly planned?: number;
  readonly given: number;
}

/**
 * Minutes given and planned from one day to another. Given are those of lessons held. Planned are the minutes a week for
 * each week, Monday to Sunday, that has a row of lessons for the pupil, held or not, and in which not every row says
 * that the school was closed: holidays are no debt (our choice, no source).
 *
 * @param lessons - of one pupil
 * @param aWeek - minutes planned a week
 */
export const sumMinutes = (
  lessons: readonly Lesson[],
  aWeek: number | undefined,
  from: Day,
  to: Day,
): Minutes => {
  const within = lessons.filter(({ day }) => day >= from && day <= to);
  const given = within.reduce((sum, { held, minutes }) => sum + (held === "yes" ? minutes : 0), 0);
  if (aWeek === undefined) return { given };
  const weeks = new Set(
    within.filter(({ held }) => held !== "school closed").map(({ day }) => mondayOf(day)),
  );
  return { planned: aWeek * weeks.size, given };
};
