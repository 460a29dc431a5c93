import { dayOf } from "../domain/calendar";
import type { Day } from "../domain/units";
import { tidyText } from "./cell-text";

/** Day before month, or month before day. */
export const DAY_ORDERS = ["dmy", "mdy"] as const;
export type DayOrder = (typeof DAY_ORDERS)[number];

/** Day of the week of a serial number from 61 on, 0 for Sunday. */
const weekdayOf = (serial: number): number => (serial + 6) % 7;

/** What a text says as a date. */
export type DayReading =
  /** One day, whatever the order. */
  | { readonly kind: "day"; readonly day: Day }
  /** Only this order gives a day: it tells the order of its column. */
  | { readonly kind: "one order"; readonly order: DayOrder; readonly day: Day }
  | { readonly kind: "either"; readonly dmy: Day; readonly mdy: Day }
  | { readonly kind: "before 1900" | "no year" | "no such day" };

const WEEKDAYS = ["sun", "mon", "tue", "wed", "thu", "fri", "sat"];
const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const WEEKDAY =
  /^(sun|mon|tue|tues|wed|weds|thu|thur|thurs|fri|sat|sunday|monday|tuesday|wednesday|thursday|friday|saturday)\b\.?,? ?/i;
const TIME_OF_DAY = /[ T,]+(?:at )?\d{1,2}[:.]\d{2}(?::\d{2}(?:\.\d+)?)? ?(?:am|pm|a\.m\.|p\.m\.|z)?$/i;

const monthOf = (name: string): number | undefined => {
  const lower = name.toLowerCase().replace(/\.$/, "");
  const at = MONTHS.indexOf(lower.slice(0, 3));
  if (at < 0 || lower.length < 3) return undefined;
  const full =
    [
      "january",
      "february",
      "march",
      "april",
      "may",
      "june",
      "july",
      "august",
      "september",
      "october",
      "november",
      "december",
    ][at] ?? "";
  return full.startsWith(lower) || lower === "sept" ? at + 1 : undefined;
};

// Two digits: 00–69 are this century, 70–99 the last (common practice; no probe of 1969 is expected).
const yearOf = (digits: string): number => {
  const year = Number(digits);
  return digits.length > 2 ? year : year < 70 ? 2000 + year : 1900 + year;
};

function settle(year: number, month: number, day: number): DayReading {
  // The calendar repeats every 400 years, so a day before 1900 is checked in a like year.
  if (dayOf({ year: year < 1900 ? 2000 + (year % 400) : year, month, date: day }) === undefined) {
    return { kind: "no such day" };
  }
  const serial = dayOf({ year, month, date: day });
  return serial === undefined ? { kind: "before 1900" } : { kind: "day", day: serial };
}

function settleNumbers(first: number, second: number, year: number, weekday: number | undefined): DayReading {
  const dmy = settle(year, second, first);
  const mdy = settle(year, first, second);
  if (dmy.kind === "before 1900" || mdy.kind === "before 1900") return { kind: "before 1900" };
  if (dmy.kind !== "day") return mdy.kind === "day" ? { kind: "one order", order: "mdy", day: mdy.day } : dmy;
  if (mdy.kind !== "day") return { kind: "one order", order: "dmy", day: dmy.day };
  if (dmy.day === mdy.day) return dmy;
  if (weekday !== undefined) {
    const dmyFits = weekdayOf(dmy.day) === weekday;
    if (dmyFits !== (weekdayOf(mdy.day) === weekday)) {
      return dmyFits
        ? { kind: "one order", order: "dmy", day: dmy.day }
        : { kind: "one order", order: "mdy", day: mdy.day };
    }
  }
  return { kind: "either", dmy: dmy.day, mdy: mdy.day };
}

/**
 * Reads a date written as text: `7/10/2026`, `7.10.26`, `2026-10-07`, `7 Oct 2026`, `Oct 7th, 2026`, each with or
 * without a weekday before it and a time of day after it. A weekday settles the day order where only one order fits.
 *
 * @returns undefined where the text is no date at all
 */
export function parseDayText(text: string): DayReading | undefined {
  let rest = tidyText(text);
  if (rest.length < 3 || rest.length > 40 || !/\d/.test(rest)) return undefined;
  const named = WEEKDAY.exec(rest);
  const weekday = named ? WEEKDAYS.indexOf((named[1] ?? "").slice(0, 3).toLowerCase()) : undefined;
  if (named) rest = rest.slice(named[0].length);
  rest = rest
    .replace(TIME_OF_DAY, "")
    .replace(/ ?\((?:sun|mon|tue|wed|thu|fri|sat)[a-z]*\)$/i, "")
    .trim();

  const iso =
    /^(\d{4}) ?[-/.] ?(\d{1,2}) ?[-/.] ?(\d{1,2})$/.exec(rest) ?? /^((?:19|20)\d\d)(\d\d)(\d\d)$/.exec(rest);
  if (iso) return settle(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const numbers = /^(\d{1,2}) ?([-/.]) ?(\d{1,2}) ?\2 ?(\d{4}|\d{2})$/.exec(rest);
  if (numbers)
    return settleNumbers(Number(numbers[1]), Number(numbers[3]), yearOf(numbers[4] ?? ""), weekday);
  const dayFirst =
    /^(\d{1,2})(?:st|nd|rd|th)?[ ./-]*(?:of )?([a-z]{3,9}\.?)(?:[ ,./'-]*(\d{4}|\d{2}))?$/i.exec(rest);
  const monthFirst = /^([a-z]{3,9}\.?)[ ./-]*(\d{1,2})(?:st|nd|rd|th)?(?:[ ,./'-]+(\d{4}|\d{2}))?$/i.exec(
    rest,
  );
  const parts = dayFirst
    ? { day: dayFirst[1], month: dayFirst[2], year: dayFirst[3] }
    : monthFirst
      ? { day: monthFirst[2], month: monthFirst[1], year: monthFirst[3] }
      : undefined;
  if (!parts) return undefined;
  const month = monthOf(parts.month ?? "");
  if (month === undefined) return undefined;
  if (parts.year === undefined) return { kind: "no year" };
  return settle(yearOf(parts.year), month, Number(parts.day));
}
