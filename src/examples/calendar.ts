import { dayOf as findDay } from "../domain/calendar";
import type { Day } from "../domain/units";

const MILLISECONDS_A_DAY = 86_400_000;
const SERIAL_OF_1970 = 25_569;

/** The serial number of a calendar day. @param month - 1 to 12 @throws {RangeError} where there is no such day */
export const dayOf = (year: number, month: number, date: number): Day => {
  const day = findDay({ year, month, date });
  if (day === undefined) throw new RangeError(`no such day: ${year}-${month}-${date}`);
  return day;
};

/** The JavaScript date (midnight UTC) of a serial number, for the library that writes the file. */
export const dateOf = (day: Day): Date => new Date((day - SERIAL_OF_1970) * MILLISECONDS_A_DAY);
