import { tidyText } from "./cell-text";

/** How a duration was written, so that another can be written the same way. */
export type DurationForm = "m:ss" | "h:mm:ss" | "units" | "number";

/** A duration in seconds as a text says it; a bare number has no unit yet. */
export interface DurationText {
  readonly value: number;
  readonly form: DurationForm;
}

const number = (text: string | undefined): number => Number((text ?? "0").replace(",", "."));

/**
 * Reads a duration: `1:30` (minutes and seconds), `1:02:30` (hours, minutes, seconds), `1m 30s`, `1 min 5 sec`,
 * `90 s`, `1'30"`, `2 minutes`. A bare number is given as it is, form `number`.
 *
 * @returns seconds (or the bare number), or undefined where the text is no duration
 */
export function parseDurationText(text: string): DurationText | undefined {
  const tidy = tidyText(text).toLowerCase();
  const colons = /^(-?\d+):([0-5]?\d(?:[.,]\d+)?)$/.exec(tidy);
  if (colons) {
    const sign = (colons[1] ?? "").startsWith("-") ? -1 : 1;
    return { value: sign * (Math.abs(number(colons[1])) * 60 + number(colons[2])), form: "m:ss" };
  }
  const long = /^(\d+):([0-5]?\d):([0-5]?\d(?:[.,]\d+)?)$/.exec(tidy);
  if (long)
    return { value: number(long[1]) * 3600 + number(long[2]) * 60 + number(long[3]), form: "h:mm:ss" };
  const primes = /^(\d+) ?['’′] ?(\d+(?:[.,]\d+)?) ?(?:["”″]|''|’’|′′)?$/.exec(tidy);
  if (primes) return { value: number(primes[1]) * 60 + number(primes[2]), form: "units" };
  const units =
    /^(?:(\d+(?:[.,]\d+)?) ?(?:m|min|mins|minute|minutes)\.?)?,? ?(?:and )?(?:(\d+(?:[.,]\d+)?) ?(?:s|sec|secs|second|seconds)\.?)?$/.exec(
      tidy,
    );
  if (units && (units[1] !== undefined || units[2] !== undefined)) {
    return { value: number(units[1]) * 60 + number(units[2]), form: "units" };
  }
  return /^[+-]?\d+(?:[.,]\d+)?$/.test(tidy) ? { value: number(tidy), form: "number" } : undefined;
}

/** How the clock values of a time column are meant: 1:30 as minutes and seconds, or as hours and minutes. */
export const CLOCK_MEANINGS = ["m:ss", "h:mm"] as const;
export type ClockMeaning = (typeof CLOCK_MEANINGS)[number];

/**
 * Seconds of a clock value, a part of a day: as it stands (hours and minutes), or with hours taken for minutes, as
 * 1:30 typed into a spreadsheet for a minute and a half.
 */
export function readClock(partOfDay: number, meaning: ClockMeaning): number {
  const seconds = Math.round(partOfDay * 86400 * 1000) / 1000;
  return meaning === "h:mm" ? seconds : Math.round((seconds / 60) * 1000) / 1000;
}
