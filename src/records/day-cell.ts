import { isCellError } from "../domain/cell-value";
import type { CellValue } from "../domain/cell-value";
import type { Day } from "../domain/units";
import { saysNothing } from "./cell-text";
import type { Complaint } from "./cell-fault";
import { parseDayText } from "./day-text";
import type { DayOrder, DayReading } from "./day-text";
import { classifyFormat } from "./number-format";

/** What a cell of a date column says. */
export type DayCell =
  | { readonly kind: "day"; readonly day: Day }
  | { readonly kind: "none" }
  /** readable once the day order is known */
  | { readonly kind: "waiting"; readonly dmy: Day; readonly mdy: Day }
  | { readonly kind: "fault"; readonly complaint: Complaint };

// Serials of 1954 and 2064: a plain number between them under a date header has lost its format.
const EARLIEST_BARE = 20000;
const LATEST_BARE = 60000;

const fault = (code: string, message: string): DayCell => ({ kind: "fault", complaint: { code, message } });
const BEFORE_1900 =
  "Dates before 1900 cannot be used: a spreadsheet counts its days from 1900. Check the year.";

function readNumber(value: number, format: string): DayCell {
  if (value >= 19000101 && value <= 20991231 && Number.isInteger(value))
    return readText(String(value), undefined);
  if (value < 1) {
    return value > 0 && classifyFormat(format) !== "date"
      ? fault("no-date", "This is a time of day. Type the date of the probe.")
      : fault("before-1900", BEFORE_1900);
  }
  const isDate = classifyFormat(format) === "date";
  if (!isDate && (value < EARLIEST_BARE || value > LATEST_BARE)) {
    return fault("no-date", `${value} is not a date. Type the date of the probe, such as 2026-10-07.`);
  }
  return { kind: "day", day: Math.floor(value) as Day };
}

function readText(text: string, order: DayOrder | undefined): DayCell {
  const reading: DayReading | undefined = parseDayText(text);
  if (!reading)
    return fault(
      "no-date",
      `"${text.slice(0, 40)}" is not a date. Type the date of the probe, such as 2026-10-07.`,
    );
  switch (reading.kind) {
    case "day":
      return { kind: "day", day: reading.day };
    case "one order":
      return order === undefined || order === reading.order
        ? { kind: "day", day: reading.day }
        : fault(
            "day-order",
            `"${text}" cannot be ${order === "dmy" ? "day first" : "month first"}: there is no such month. Check this date.`,
          );
    case "either":
      return order === undefined
        ? { kind: "waiting", dmy: reading.dmy, mdy: reading.mdy }
        : { kind: "day", day: reading[order] };
    case "before 1900":
      return fault("before-1900", BEFORE_1900);
    case "no year":
      return fault("no-year", `"${text}" has no year. Add it, such as "${text} 2026".`);
    case "no such day":
      return fault("no-such-day", `"${text}" is no day of the calendar. Check day and month.`);
  }
}

/** Reads one cell of a date column in a day order, or without one where it is not settled. */
export function readDayCell(value: CellValue, format: string, order: DayOrder | undefined): DayCell {
  if (value === null) return { kind: "none" };
  if (isCellError(value))
    return fault("error-cell", `This cell holds the error ${value.error}. Type the date of the probe.`);
  if (typeof value === "boolean") return fault("no-date", "This is not a date. Type the date of the probe.");
  if (typeof value === "number") return readNumber(value, format);
  const text = value.trim();
  return text === "" || saysNothing(text) ? { kind: "none" } : readText(text, order);
}

/** What the texts of a date column tell about its day order. */
export interface DayOrderEvidence {
  /** texts that only one order can read */
  readonly dmy: number;
  readonly mdy: number;
  /** texts that both orders can read, with different days */
  readonly open: number;
  readonly example?: { readonly text: string; readonly dmy: Day; readonly mdy: Day };
}

/** Gathers what the texts of a column tell about its day order. */
export function weighDayOrder(texts: Iterable<string>): DayOrderEvidence {
  let dmy = 0;
  let mdy = 0;
  let open = 0;
  let example: DayOrderEvidence["example"];
  for (const text of texts) {
    const reading = parseDayText(text);
    if (reading?.kind === "one order") {
      if (reading.order === "dmy") dmy += 1;
      else mdy += 1;
    } else if (reading?.kind === "either") {
      open += 1;
      example ??= { text: text.trim(), dmy: reading.dmy, mdy: reading.mdy };
    }
  }
  return { dmy, mdy, open, ...(example ? { example } : {}) };
}

/** The order that a value above 12 (or a weekday) settles; undefined where none does or they disagree. */
export const settleDayOrder = ({ dmy, mdy }: DayOrderEvidence): DayOrder | undefined =>
  dmy > 0 && mdy === 0 ? "dmy" : mdy > 0 && dmy === 0 ? "mdy" : undefined;
