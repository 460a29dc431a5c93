import { dateOf, dayOf, shortMonth } from "../domain/calendar";
import type { Day } from "../domain/units";

/** A tick of an axis of days; the year stands under the first one and wherever it changes. */
export interface CalendarTick {
  readonly day: Day;
  readonly label: string;
  readonly year?: string;
}

const MONTH_STEPS = [1, 2, 3, 6, 12, 24, 60, 120];
const DAY_STEPS = [1, 2, 7, 14, 28];
/** Spans shorter than this many days are counted in days and weeks. */
const SHORT_SPAN = 62;

/**
 * Ticks on the first of months, in steps of 1, 2, 3, 6 or more months; on days where the span is short.
 *
 * @param most - how many ticks there is room for, 2 or more
 */
export const calendarTicks = (from: number, to: number, most: number): readonly CalendarTick[] =>
  to - from < SHORT_SPAN ? dayTicks(from, to, most) : monthTicks(from, to, most);

const monthTicks = (from: number, to: number, most: number): readonly CalendarTick[] => {
  const first = dateOf(from as Day);
  const last = dateOf(to as Day);
  const months = (last.year - first.year) * 12 + last.month - first.month;
  const step = MONTH_STEPS.find((candidate) => months / candidate <= most - 1) ?? 240;
  const days: Day[] = [];
  // Counted from January, so that steps of three fall on quarters.
  for (let month = Math.floor((first.month - 1) / step) * step; ; month += step) {
    const day = dayOf({ year: first.year + Math.floor(month / 12), month: (month % 12) + 1, date: 1 });
    if (day === undefined || day > to) break;
    if (day >= from) days.push(day);
  }
  return withYears(days, (day) => shortMonth(dateOf(day).month));
};

const dayTicks = (from: number, to: number, most: number): readonly CalendarTick[] => {
  const first = Math.ceil(from);
  const step = DAY_STEPS.find((candidate) => (to - first) / candidate <= most - 1) ?? 56;
  const days: Day[] = [];
  for (let day = first; day <= to; day += step) days.push(day as Day);
  return withYears(days, (day) => `${dateOf(day).date} ${shortMonth(dateOf(day).month)}`);
};

const withYears = (days: readonly Day[], label: (day: Day) => string): readonly CalendarTick[] => {
  let shown: number | undefined;
  return days.map((day) => {
    const { year } = dateOf(day);
    const isNew = year !== shown;
    shown = year;
    return { day, label: label(day), ...(isNew && { year: String(year) }) };
  });
};
