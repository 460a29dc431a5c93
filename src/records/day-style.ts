import { dateOf, MONTH_NAMES } from "../domain/calendar";
import type { Day } from "../domain/units";
import { tidyText } from "./cell-text";
import { parseDayText } from "./day-text";
import type { DayOrder } from "./day-text";

const WEEKDAYS = ["Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"];

const two = (number: number): string => String(number).padStart(2, "0");

/** A day as year-month-day, which every reader and every spreadsheet understands. */
export function formatIsoDay(day: Day): string {
  const { year, month, date } = dateOf(day);
  return `${year}-${two(month)}-${two(date)}`;
}

const inCaseOf = (word: string, example: string): string =>
  example === example.toUpperCase()
    ? word.toUpperCase()
    : example === example.toLowerCase()
      ? word.toLowerCase()
      : word;

const ordinal = (date: number): string =>
  date % 10 === 1 && date !== 11
    ? "st"
    : date % 10 === 2 && date !== 12
      ? "nd"
      : date % 10 === 3 && date !== 13
        ? "rd"
        : "th";

const yearLike = (year: number, example: string): string =>
  example.length === 2 ? two(year % 100) : String(year);

function formatRest(rest: string, day: Day, order: DayOrder, padded: boolean): string | undefined {
  const { year, month, date } = dateOf(day);
  const pad = (number: number): string => (padded ? two(number) : String(number));
  const iso = /^\d{4}( ?[-/.] ?)\d{1,2}\1\d{1,2}$/.exec(rest);
  if (iso) return [year, two(month), two(date)].join(iso[1]);
  if (/^\d{8}$/.test(rest)) return `${year}${two(month)}${two(date)}`;
  const numbers = /^\d{1,2}( ?[-/.] ?)\d{1,2}\1(\d{4}|\d{2})$/.exec(rest);
  if (numbers) {
    const [first, second] = order === "dmy" ? [date, month] : [month, date];
    return [pad(first), pad(second), yearLike(year, numbers[2] ?? "")].join(numbers[1]);
  }
  const named = (example: string): string => {
    const full = MONTH_NAMES[month - 1] ?? "";
    const dot = example.endsWith(".") ? "." : "";
    const letters = example.replace(".", "");
    return (
      inCaseOf(
        letters.length > 4 || (letters.length === 4 && !/^sept$/i.test(letters)) ? full : full.slice(0, 3),
        letters,
      ) + (full.length > 3 ? dot : "")
    );
  };
  const dayFirst = /^(\d{1,2})(st|nd|rd|th)?([ ./-]*(?:of )?)([a-z]{3,9}\.?)([ ,./'-]*)(\d{4}|\d{2})$/i.exec(
    rest,
  );
  if (dayFirst) {
    const [, , suffix, gap = "", name = "", gap2 = "", digits = ""] = dayFirst;
    return pad(date) + (suffix ? ordinal(date) : "") + gap + named(name) + gap2 + yearLike(year, digits);
  }
  const monthFirst = /^([a-z]{3,9}\.?)([ ./-]*)(\d{1,2})(st|nd|rd|th)?([ ,./'-]+)(\d{4}|\d{2})$/i.exec(rest);
  if (!monthFirst) return undefined;
  const [, name = "", gap = "", , suffix, gap2 = "", digits = ""] = monthFirst;
  return named(name) + gap + pad(date) + (suffix ? ordinal(date) : "") + gap2 + yearLike(year, digits);
}

/**
 * A day written as another date text is: its order, separators, month names, zeros, digits of the year and weekday.
 *
 * @param example - a date text of the same column
 * @param padded - single digits get a zero before them
 * @returns the text, or year-month-day where the example's form cannot be followed
 */
export function formatDayLike(example: string, day: Day, order: DayOrder, padded: boolean): string {
  const tidy = tidyText(example);
  const weekday = /^([a-z]{3,9})(\.?,? ?)(?=[\da-z])/i.exec(tidy);
  const isWeekday =
    weekday &&
    WEEKDAYS.some(
      (name) =>
        name.toLowerCase().startsWith((weekday[1] ?? "").slice(0, 3).toLowerCase()) &&
        (weekday[1] ?? "").length !== 5,
    );
  const name = WEEKDAYS[(day + 6) % 7] ?? "";
  const prefix =
    weekday && isWeekday
      ? inCaseOf((weekday[1] ?? "").length <= 4 ? name.slice(0, 3) : name, weekday[1] ?? "") +
        (weekday[2] ?? "")
      : "";
  const rest = (weekday && isWeekday ? tidy.slice(weekday[0].length) : tidy).replace(
    /[ T,]+\d{1,2}:\d{2}.*$/,
    "",
  );
  const text = formatRest(rest, day, order, padded);
  if (text === undefined) return formatIsoDay(day);
  const read = parseDayText(prefix + text);
  const means =
    read?.kind === "either"
      ? read[order]
      : read?.kind === "day" || read?.kind === "one order"
        ? read.day
        : undefined;
  return means === day ? prefix + text : formatIsoDay(day);
}
