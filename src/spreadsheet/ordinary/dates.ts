import { DAYS_1904, dateOfSerial, daysInMonth, LAST_SERIAL, serialOfDate } from "../calendar";
import type { Scope } from "../engine/program";
import { FormulaError, makeError, type Value } from "../engine/value";
import { parseNumberText } from "../number-input";
import { collectNumbers } from "./collecting";
import { defineFunction, type OrdinaryFunction } from "./ordinary-function";
import { integer, number, optional, range, text } from "./parameters";

const NO_DATE = makeError("#NUM!", "That is not a date from 1900 to 9999.");

/** A serial number of the workbook's day system as one of the 1900 system. */
function serial(given: number, scope: Scope): number {
  const day = given + (scope.engine.date1904 ? DAYS_1904 : 0);
  if (day < 0 || day >= LAST_SERIAL + 1)
    throw new FormulaError("#NUM!", "That is not a date from 1900 to 9999.");
  return day;
}

/** A serial number of the 1900 system as one of the workbook's day system. */
const toWorkbook = (day: number | undefined, scope: Scope): Value => {
  if (day === undefined) return NO_DATE;
  const own = day - (scope.engine.date1904 ? DAYS_1904 : 0);
  return own < 0 ? NO_DATE : own;
};

const part = (
  name: string,
  give: (date: { year: number; month: number; day: number }) => number,
): OrdinaryFunction =>
  defineFunction(name, [number], (scope, given) => give(dateOfSerial(serial(given, scope))));

/** Seconds after midnight of a serial number. */
const secondsOf = (given: number, scope: Scope): number =>
  Math.round((serial(given, scope) % 1) * 86_400) % 86_400;

/** A day so many months on, kept within the month. */
function addMonths(day: number, months: number): number | undefined {
  const date = dateOfSerial(day);
  const first = date.year * 12 + date.month - 1 + months;
  const [year, month] = [Math.floor(first / 12), (((first % 12) + 12) % 12) + 1];
  return serialOfDate(year, month, Math.min(date.day, daysInMonth(year, month)));
}

/** Days from Monday = 0 to Sunday = 6. Serial 1 counts as a Sunday, as the day that never was makes it. */
const weekdayFromMonday = (day: number): number => (((Math.floor(day) - 2) % 7) + 7) % 7;

function weekday(day: number, kind: number): Value {
  const monday = weekdayFromMonday(day);
  if (kind === 1) return ((monday + 1) % 7) + 1;
  if (kind === 2) return monday + 1;
  if (kind === 3) return monday;
  return kind >= 11 && kind <= 17 ? ((monday - (kind - 11) + 7) % 7) + 1 : makeError("#NUM!");
}

/** Whole years, months or days between two days. */
function dateDifference(from: number, to: number, unit: string): Value {
  const [start, end] = [Math.floor(from), Math.floor(to)];
  if (start > end) return makeError("#NUM!", "The first date must not be after the second.");
  const [a, b] = [dateOfSerial(start), dateOfSerial(end)];
  const months = (b.year - a.year) * 12 + b.month - a.month - (b.day < a.day ? 1 : 0);
  switch (unit.toUpperCase()) {
    case "Y":
      return Math.floor(months / 12);
    case "M":
      return months;
    case "D":
      return end - start;
    case "YM":
      return months % 12;
    case "MD":
      return b.day >= a.day ? b.day - a.day : end - (serialOfDate(b.year, b.month - 1, a.day) ?? end);
    case "YD": {
      const sameYear = serialOfDate(b.year, a.month, a.day) ?? start;
      return sameYear <= end ? end - sameYear : end - (serialOfDate(b.year - 1, a.month, a.day) ?? start);
    }
    default:
      return makeError("#NUM!", "The unit is Y, M, D, YM, MD or YD.");
  }
}

const isWorkday = (day: number, holidays: ReadonlySet<number>): boolean =>
  weekdayFromMonday(day) < 5 && !holidays.has(day);

const holidaySet = (given: Value, scope: Scope): ReadonlySet<number> =>
  new Set(
    given === undefined ? [] : collectNumbers([given], scope).map((each) => Math.floor(serial(each, scope))),
  );

function workdaysBetween(from: number, to: number, holidays: ReadonlySet<number>): number {
  const [first, last] = [Math.floor(Math.min(from, to)), Math.floor(Math.max(from, to))];
  let count = 0;
  for (let day = first; day <= last; day++) if (isWorkday(day, holidays)) count++;
  return from > to ? -count : count;
}

function addWorkdays(from: number, count: number, holidays: ReadonlySet<number>): number | undefined {
  const step = Math.sign(count);
  let day = Math.floor(from);
  for (let left = Math.abs(count); left > 0;) {
    day += step;
    if (day < 1 || day > LAST_SERIAL) return undefined;
    if (isWorkday(day, holidays)) left--;
  }
  return day;
}

/** ISO 8601 week: the week with the year's first Thursday is week 1. */
function isoWeek(day: number): number {
  const thursday = Math.floor(day) - weekdayFromMonday(day) + 3;
  const newYear = serialOfDate(dateOfSerial(thursday).year, 1, 1) ?? thursday;
  return Math.floor((thursday - newYear) / 7) + 1;
}

function weekNumber(day: number, kind: number): Value {
  if (kind === 21) return isoWeek(day);
  const start = kind === 1 ? 6 : kind === 2 ? 0 : kind >= 11 && kind <= 17 ? kind - 11 : undefined;
  if (start === undefined) return makeError("#NUM!");
  const newYear = serialOfDate(dateOfSerial(day).year, 1, 1) ?? day;
  const lead = (weekdayFromMonday(newYear) - start + 7) % 7;
  return Math.floor((Math.floor(day) - newYear + lead) / 7) + 1;
}

const readText = (given: string, scope: Scope, pick: (value: number) => number): Value => {
  const read = parseNumberText(given, scope.engine.settings);
  const isMoment = read?.format !== undefined && /[dmyhs]/.test(read.format);
  return isMoment ? pick(read.value) : makeError("#VALUE!", "The text is no date or time.");
};

/** Dates and times. */
export const DATES: readonly OrdinaryFunction[] = [
  defineFunction("DATE", [integer, integer, integer], (scope, year, month, day) =>
    year < 0 || year > 9999
      ? NO_DATE
      : toWorkbook(serialOfDate(year < 1900 ? year + 1900 : year, month, day), scope),
  ),
  defineFunction("TIME", [integer, integer, integer], (_, hours, minutes, seconds) => {
    const all = hours * 3600 + minutes * 60 + seconds;
    return all < 0 ? makeError("#NUM!") : (all % 86_400) / 86_400;
  }),
  part("YEAR", ({ year }) => year),
  part("MONTH", ({ month }) => month),
  part("DAY", ({ day }) => day),
  defineFunction("HOUR", [number], (scope, given) => Math.floor(secondsOf(given, scope) / 3600)),
  defineFunction("MINUTE", [number], (scope, given) => Math.floor(secondsOf(given, scope) / 60) % 60),
  defineFunction("SECOND", [number], (scope, given) => secondsOf(given, scope) % 60),
  defineFunction("WEEKDAY", [number, optional(integer)], (scope, given, kind = 1) =>
    weekday(serial(given, scope), kind),
  ),
  defineFunction("WEEKNUM", [number, optional(integer)], (scope, given, kind = 1) =>
    weekNumber(serial(given, scope), kind),
  ),
  defineFunction("ISOWEEKNUM", [number], (scope, given) => isoWeek(serial(given, scope))),
  defineFunction("EDATE", [number, integer], (scope, given, months) =>
    toWorkbook(addMonths(serial(given, scope), months), scope),
  ),
  defineFunction("EOMONTH", [number, integer], (scope, given, months) => {
    const { year, month } = dateOfSerial(serial(given, scope));
    return toWorkbook(serialOfDate(year, month + months + 1, 0), scope);
  }),
  defineFunction("DATEDIF", [number, number, text], (scope, from, to, unit) =>
    dateDifference(serial(from, scope), serial(to, scope), unit),
  ),
  defineFunction("DAYS", [number, number], (_, to, from) => Math.floor(to) - Math.floor(from)),
  defineFunction("NETWORKDAYS", [number, number, optional(range)], (scope, from, to, holidays) =>
    workdaysBetween(serial(from, scope), serial(to, scope), holidaySet(holidays, scope)),
  ),
  defineFunction("WORKDAY", [number, integer, optional(range)], (scope, from, count, holidays) =>
    toWorkbook(addWorkdays(serial(from, scope), count, holidaySet(holidays, scope)), scope),
  ),
  defineFunction("DATEVALUE", [text], (scope, given) =>
    readText(given, scope, (read) => Math.floor(read) - (scope.engine.date1904 ? DAYS_1904 : 0)),
  ),
  defineFunction("TIMEVALUE", [text], (scope, given) => readText(given, scope, (read) => read % 1)),
  defineFunction("TODAY", [], ({ engine }) => Math.floor(engine.now()), { volatile: true }),
  defineFunction("NOW", [], ({ engine }) => engine.now(), { volatile: true }),
];
