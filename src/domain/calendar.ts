import type { Day } from "./units";

/** A day of the Gregorian calendar; months count from 1. */
export interface CalendarDate {
  readonly year: number;
  readonly month: number;
  readonly date: number;
}

export const MONTH_NAMES = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;

/** Serial number of 1 March 1900: from here on serials and the calendar go together. */
const FIRST_MARCH_1900 = 61;
/** Days from 1 March 0000 to 1 March 1900. */
const DAYS_TO_1900 = 1900 * 365 + 475 - 19 + 4;

/**
 * The serial number of a calendar day. 29 February 1900, which never was, is refused as any other wrong date.
 *
 * Source: days counted from 1 March, so that the leap day ends the year (common practice, no source).
 *
 * @returns the day, or undefined where the calendar has no such date or it is before 1900
 */
export const dayOf = ({ year, month, date }: CalendarDate): Day | undefined => {
  if (![year, month, date].every(Number.isInteger) || year < 1900 || month < 1 || month > 12 || date < 1)
    return undefined;
  if (date > daysOfMonth(year, month)) return undefined;
  const marchYear = month < 3 ? year - 1 : year;
  const marchMonth = (month + 9) % 12;
  const dayOfYear = Math.floor((153 * marchMonth + 2) / 5) + date - 1;
  const leapDays = Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400);
  const serial = marchYear * 365 + leapDays + dayOfYear - DAYS_TO_1900 + FIRST_MARCH_1900;
  return (serial < FIRST_MARCH_1900 ? serial - 1 : serial) as Day;
};

/**
 * The calendar day of a serial number; a time of day in it is ignored. Serial 60 reads as 28 February 1900.
 *
 * @throws {RangeError} before 1
 */
export const dateOf = (day: Day): CalendarDate => {
  const serial = Math.floor(day);
  if (!(serial >= 1)) throw new RangeError(`Serial number ${day} is before 1 January 1900.`);
  const count =
    (serial < FIRST_MARCH_1900 ? Math.min(serial, 59) + 1 : serial) - FIRST_MARCH_1900 + DAYS_TO_1900;
  const era = Math.floor(count / 146_097);
  const dayOfEra = count - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  return {
    year: yearOfEra + era * 400 + (month < 3 ? 1 : 0),
    month,
    date: dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1,
  };
};

/** A day as people write it so that day and month cannot be mistaken: `7 Oct 2026`. */
export const formatDay = (day: Day): string => {
  const { year, month, date } = dateOf(day);
  return `${date} ${shortMonth(month)} ${year}`;
};

/** The first three letters of a month's name. */
export const shortMonth = (month: number): string => (MONTH_NAMES[month - 1] ?? "").slice(0, 3);

const isLeapYear = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

const daysOfMonth = (year: number, month: number): number =>
  month === 2 ? (isLeapYear(year) ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;
