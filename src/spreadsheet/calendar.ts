/** Which comes first where a date is typed as two numbers: the day (`dmy`) or the month (`mdy`). */
export type DayOrder = "dmy" | "mdy";

/** Days from 30 December 1899, the day that serial 0 would be were 1900 no leap year, to 1 January 1904. */
export const DAYS_1904 = 1462;

/** The last day that a spreadsheet can show: 31 December 9999. */
export const LAST_SERIAL = 2_958_465;

/**
 * The serial number of a day in the 1900 date system; months and days outside their range carry over, as DATE does.
 * Serial 60 is the day that never was, 29 February 1900.
 *
 * @param month - 1 is January
 * @returns undefined before 1 January 1900 and after 31 December 9999
 */
export function serialOfDate(year: number, month: number, day: number): number | undefined {
  const days = daysFromCivil(year + Math.floor((month - 1) / 12), modulo(month - 1, 12) + 1, 1) + day - 1;
  const serial = days > 59 ? days + 1 : days;
  const isLeapDay = year === 1900 && month === 2 && day === 29;
  if (isLeapDay) return 60;
  return serial < 1 || serial > LAST_SERIAL ? undefined : serial;
}

/** The calendar date of a serial number (1900 date system), its time of day left out. */
export function dateOfSerial(serial: number): { year: number; month: number; day: number } {
  const whole = Math.floor(serial);
  if (whole === 60) return { year: 1900, month: 2, day: 29 };
  if (whole === 0) return { year: 1900, month: 1, day: 0 };
  return civilFromDays(whole > 60 ? whole - 1 : whole);
}

/** Days in a month. */
export const daysInMonth = (year: number, month: number): number =>
  daysFromCivil(month === 12 ? year + 1 : year, month === 12 ? 1 : month + 1, 1) -
  daysFromCivil(year, month, 1);

const modulo = (a: number, b: number): number => ((a % b) + b) % b;

/** Days since 31 December 1899: 1 is 1 January 1900, without the day that never was. */
function daysFromCivil(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 693_900;
}

function civilFromDays(days: number): { year: number; month: number; day: number } {
  const z = days + 693_900;
  const era = Math.floor(z / 146_097);
  const dayOfEra = z - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const shifted = Math.floor((5 * dayOfYear + 2) / 153);
  const month = shifted < 10 ? shifted + 3 : shifted - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return { year, month, day: dayOfYear - Math.floor((153 * shifted + 2) / 5) + 1 };
}
