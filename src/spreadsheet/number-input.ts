import { serialOfDate, type DayOrder } from "./calendar";

/** A number read from text, and the format that shows it the way it was written. */
export interface TypedNumber {
  readonly value: number;
  /** undefined where `General` shows it well */
  readonly format?: string;
}

/** How numbers and dates are typed. */
export interface TypingSettings {
  readonly dayOrder: DayOrder;
  /** The year of a date typed without one. */
  readonly year: number;
}

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const MONTH_NAMES =
  "january|february|march|april|june|july|august|september|october|november|december|jan|feb|mar|apr|may|jun|jul|aug|sept?|oct|nov|dec";
const PLAIN = /^([+-]?)(?:(\d{1,3}(?:,\d{3})+)|(\d+))?(\.\d*)?(e[+-]?\d{1,3})?$/i;
const TIME = /^(\d{1,4}):([0-5]?\d)(?::([0-5]?\d)(\.\d+)?)?(?:\s*([ap])\.?m\.?)?$/i;
const NUMERIC_DATE = /^(\d{1,2})([/.-])(\d{1,2})(?:\2(\d{4}|\d{2}))?$/;
const ISO_DATE = /^(\d{4})[-/](\d{1,2})[-/](\d{1,2})$/;
const DAY_MONTH = new RegExp(`^(\\d{1,2})[ -]?(${MONTH_NAMES})\\.?(?:[ ,-]+(\\d{4}|\\d{2}))?$`, "i");
const MONTH_DAY = new RegExp(`^(${MONTH_NAMES})\\.? (\\d{1,2})(?:(?:, ?| )(\\d{4}))?$`, "i");
const MONTH_YEAR = new RegExp(`^(${MONTH_NAMES})\\.?[ -](\\d{4})$`, "i");

/**
 * The number that a typed text stands for: plain, with thousands separators, per cent, currency, a time, a date in
 * the given order of day and month, or a date and a time. Years of two digits: 00–29 are 2000–2029.
 *
 * @returns undefined where the text is no number; dates as serial numbers of the 1900 system
 */
export function parseNumberText(text: string, settings: TypingSettings): TypedNumber | undefined {
  const trimmed = text.trim();
  if (trimmed === "" || !/\d/.test(trimmed)) return undefined;
  return (
    parsePlain(trimmed) ??
    parseTime(trimmed) ??
    parseDate(trimmed, settings) ??
    parseDateTime(trimmed, settings)
  );
}

function parsePlain(text: string): TypedNumber | undefined {
  const negative = /^\((.*)\)$/.exec(text);
  const body = negative?.[1] ?? text;
  const currency = /^([+-]?)\s*([£$€])\s*(.+)$/.exec(body);
  const percent = !currency && /^(.+?)\s*%$/.exec(body);
  const digits = currency ? `${currency[1] ?? ""}${currency[3] ?? ""}` : percent ? (percent[1] ?? "") : body;
  const match = PLAIN.exec(digits);
  if (!match || !/\d/.test(digits.replace(/e.*$/i, ""))) return undefined;
  const [, sign = "", grouped, , fraction = "", exponent] = match;
  if (negative && sign) return undefined;
  const size = Number(digits.replaceAll(",", ""));
  if (!Number.isFinite(size)) return undefined;
  const value = negative ? -size : size;
  if (percent) return { value: value / 100, format: fraction.length > 1 ? "0.00%" : "0%" };
  const decimals = fraction.length > 1 ? ".00" : "";
  if (currency) return { value, format: `"${currency[2] ?? ""}"#,##0${decimals}` };
  if (grouped) return { value, format: `#,##0${decimals}` };
  return exponent ? { value, format: "0.00E+00" } : { value };
}

function parseTime(text: string): TypedNumber | undefined {
  const match = TIME.exec(text);
  if (!match) return undefined;
  const [, first = "0", minutes = "0", seconds, fraction, half] = match;
  let hours = Number(first);
  if (half) {
    if (hours > 12 || hours === 0) return undefined;
    hours = (hours % 12) + (half.toLowerCase() === "p" ? 12 : 0);
  }
  const value = (hours * 3600 + Number(minutes) * 60 + Number(`${seconds ?? "0"}${fraction ?? ""}`)) / 86_400;
  const withSeconds = seconds === undefined ? "" : ":ss";
  if (half) return { value, format: `h:mm${withSeconds} AM/PM` };
  return { value, format: hours >= 24 ? "[h]:mm:ss" : `h:mm${withSeconds}` };
}

function parseDate(text: string, settings: TypingSettings): TypedNumber | undefined {
  const iso = ISO_DATE.exec(text);
  if (iso) return makeDate(Number(iso[1]), Number(iso[2]), Number(iso[3]), "yyyy-mm-dd");
  const numeric = NUMERIC_DATE.exec(text);
  if (numeric) {
    const [, first = "", , second = "", year] = numeric;
    const [day, month] = settings.dayOrder === "dmy" ? [first, second] : [second, first];
    const format = year === undefined ? "d-mmm" : settings.dayOrder === "dmy" ? "dd/mm/yyyy" : "m/d/yyyy";
    return makeDate(year === undefined ? settings.year : fullYear(year), Number(month), Number(day), format);
  }
  const named = DAY_MONTH.exec(text);
  if (named) {
    const [, day = "", month = "", year] = named;
    return makeDate(
      year === undefined ? settings.year : fullYear(year),
      monthOf(month),
      Number(day),
      year === undefined ? "d-mmm" : "d-mmm-yy",
    );
  }
  const american = MONTH_DAY.exec(text);
  if (american) {
    const [, month = "", day = "", year] = american;
    return makeDate(
      year === undefined ? settings.year : Number(year),
      monthOf(month),
      Number(day),
      year === undefined ? "d-mmm" : "d-mmm-yy",
    );
  }
  const monthYear = MONTH_YEAR.exec(text);
  return monthYear ? makeDate(Number(monthYear[2]), monthOf(monthYear[1] ?? ""), 1, "mmm-yy") : undefined;
}

function parseDateTime(text: string, settings: TypingSettings): TypedNumber | undefined {
  const match = /^(.+?)[ T](\d{1,2}:\d.*)$/.exec(text);
  const date = match && parseDate(match[1] ?? "", settings);
  const time = match && parseTime(match[2] ?? "");
  if (!date || !time || time.value >= 1) return undefined;
  return {
    value: date.value + time.value,
    format: `${settings.dayOrder === "dmy" ? "dd/mm/yyyy" : "m/d/yyyy"} h:mm`,
  };
}

const monthOf = (name: string): number => MONTHS.indexOf(name.slice(0, 3).toLowerCase()) + 1;

const fullYear = (text: string): number => {
  const year = Number(text);
  return text.length > 2 ? year : year + (year < 30 ? 2000 : 1900);
};

function makeDate(year: number, month: number, day: number, format: string): TypedNumber | undefined {
  if (month < 1 || month > 12 || day < 1) return undefined;
  const value = serialOfDate(year, month, day);
  // A day beyond the month's end would carry over into the next month.
  const stays =
    value !== undefined &&
    (value === serialOfDate(year, month + 1, 0) || value < (serialOfDate(year, month + 1, 1) ?? Infinity));
  return value !== undefined && stays ? { value, format } : undefined;
}
