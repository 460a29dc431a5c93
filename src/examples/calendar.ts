import type { Day } from "../domain/units";

const MILLISECONDS_A_DAY = 86_400_000;
const SERIAL_OF_1970 = 25_569;

/** The serial number of a day of the Gregorian calendar, from 1 March 1900 on. @param month - 1 to 12 */
export const dayOf = (year: number, month: number, date: number): Day =>
  (Date.UTC(year, month - 1, date) / MILLISECONDS_A_DAY + SERIAL_OF_1970) as Day;

/** The JavaScript date (midnight UTC) of a serial number, for libraries that want one. */
export const dateOf = (day: Day): Date => new Date((day - SERIAL_OF_1970) * MILLISECONDS_A_DAY);
