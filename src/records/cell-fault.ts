import { dateOf, MONTH_NAMES } from "../domain/calendar";
import type { Day } from "../domain/units";
import { formatCell } from "./cell-address";
import type { CellFault } from "./found-block";
import { showsNoDay } from "./number-format";

/** What is wrong with one cell, before its place is known. */
export interface Complaint {
  readonly code: string;
  readonly message: string;
}

/** A fault at a cell; row and column count from zero. */
export const faultAt = (sheet: string, row: number, column: number, complaint: Complaint): CellFault => ({
  ...complaint,
  sheet,
  row,
  column,
  cell: formatCell(row, column),
});

const HOW_TO_TYPE = "To keep a spreadsheet from making a date of it, type an apostrophe first";

/**
 * What to say of a date among scores: a spreadsheet made it of "7/10" typed as 7 out of 10, and whether the day or
 * the month came first depends on the computer's language.
 */
export function complainOfDate(serial: number, format: string): Complaint {
  if (!(serial >= 1)) return { code: "date-in-score", message: "This is a date. Type the number." };
  const { year, month, date } = dateOf(serial as Day);
  const name = (at: number): string => MONTH_NAMES[at - 1] ?? "";
  if (showsNoDay(format) && date === 1) {
    const typed = `${month}/${String(year % 100).padStart(2, "0")}`;
    return {
      code: "date-in-score",
      message: `This is ${name(month)} ${year}: did you type ${typed}? ${HOW_TO_TYPE}: '${typed}.`,
    };
  }
  const typed = `${Math.min(date, month)}/${Math.max(date, month)}`;
  const days =
    date > 12 || date === month
      ? `${date} ${name(month)}`
      : `${Math.min(date, month)} ${name(Math.max(date, month))} or ${Math.max(date, month)} ${name(Math.min(date, month))}`;
  return {
    code: "date-in-score",
    message: `This is ${days}: did you type ${typed}? ${HOW_TO_TYPE}: '${typed}.`,
  };
}
