import { refusal, success } from "../domain/result";
import type { Result } from "../domain/result";
import type { Day } from "../domain/units";
import { COLUMN_KINDS, isColumnKind, NUMBER_KINDS, OUTCOME_KINDS } from "./column-kind";
import type { ColumnKind } from "./column-kind";
import { parseDayText } from "./day-text";
import type { DayOrder } from "./day-text";
import { countsWords } from "./column-fit";
import { readMeasureCell } from "./measure-cell";
import { parseFraction } from "./quantity";
import { isMark } from "./cell-reading";

/** A probe to be written into a teacher's table, as given by keys and values. `seconds` and `minutes` stay apart. */
export interface ProbeEntry {
  readonly day: Day;
  readonly numbers: ReadonlyMap<ColumnKind, number>;
  /** texts, and marks or 45/50 given for `correct` or `score` */
  readonly texts: ReadonlyMap<ColumnKind, string>;
  /** the keys as given, in their order */
  readonly keys: readonly ColumnKind[];
}

type Given = ReadonlyMap<ColumnKind, string>;

function parsePairs(pairs: readonly string[]): Result<Given> {
  const given = new Map<ColumnKind, string>();
  for (const pair of pairs) {
    const at = pair.indexOf("=");
    if (at <= 0) return refusal("no-pair", "Give each value as key=value, such as words=84.");
    const key = pair.slice(0, at).trim().toLowerCase();
    if (!isColumnKind(key)) {
      return refusal("unknown-key", `There is no such key. The keys are: ${COLUMN_KINDS.join(", ")}.`);
    }
    if (given.has(key)) return refusal("repeated-key", `${key} is given twice. Give it once.`);
    const value = pair.slice(at + 1).trim();
    if (value === "") return refusal("empty-value", `${key} has no value. Leave it out, or give one.`);
    given.set(key, value);
  }
  return success(given);
}

function parseDay(text: string, order: DayOrder | undefined): Result<Day> {
  const reading = parseDayText(text);
  switch (reading?.kind) {
    case "day":
    case "one order":
      return success(reading.day);
    case "either":
      return order
        ? success(reading[order])
        : refusal(
            "day-order",
            "The date can be read two ways. Give it as year-month-day, such as 2026-11-20.",
          );
    case "before 1900":
      return refusal(
        "before-1900",
        "The date is before 1900, which a spreadsheet cannot count. Check the year.",
      );
    case "no year":
      return refusal("no-year", "The date has no year. Give it as year-month-day, such as 2026-11-20.");
    case "no such day":
      return refusal("no-such-day", "The date is no day of the calendar. Check day and month.");
    case undefined:
      return refusal("no-date", "The date is not a date. Give it as year-month-day, such as 2026-11-20.");
  }
}

function parseNumber(kind: ColumnKind, text: string): Result<number | string> {
  if (
    (kind === "correct" || kind === "score") &&
    (parseFraction(text) || (isMark(text) && !/^\d/.test(text)))
  ) {
    return success(text);
  }
  const shares = kind === "accuracy" && Number(text.replace(",", ".")) <= 1;
  const read = readMeasureCell(kind, text, "General", { shares, marks: false, clock: "m:ss", clocks: false });
  if (read.kind === "fault") {
    const repeats = read.complaint.message.includes(text);
    return refusal(
      read.complaint.code,
      repeats ? `${kind} cannot be read as a number. Check it.` : `${kind}: ${read.complaint.message}`,
    );
  }
  if (read.kind !== "value")
    return refusal("no-number", `${kind} is not a number. Give one, or leave it out.`);
  if ((kind === "seconds" || kind === "minutes") && read.value === 0) {
    return refusal("no-time", `${kind} is 0. Give the time taken, or leave it out.`);
  }
  return success(read.value);
}

/** Finds what cannot be together: more errors than words, more correct than shown, words counted in signs. */
function checkTogether(entry: ProbeEntry): Result<ProbeEntry> {
  const number = (kind: ColumnKind): number | undefined => entry.numbers.get(kind);
  const words = number("words");
  const errors = number("errors");
  const total = number("opportunities") ?? words;
  const correct = number("correct");
  if (errors !== undefined && (words ?? total) !== undefined && errors > (words ?? total ?? 0)) {
    return refusal("more-errors-than-words", "There are more errors than words. Check both numbers.");
  }
  if (correct !== undefined && total !== undefined && correct > total) {
    return refusal("more-correct-than-all", "More are correct than there were. Check both numbers.");
  }
  const unit = entry.texts.get("unit");
  if (words !== undefined && unit !== undefined && !countsWords(unit)) {
    return refusal(
      "unit-not-words",
      "words is given, but the unit is not words. Give opportunities instead of words.",
    );
  }
  if (!OUTCOME_KINDS.some((kind) => entry.keys.includes(kind))) {
    return refusal(
      "no-outcome",
      `Nothing says how the probe went. Give at least one of: ${OUTCOME_KINDS.join(", ")}.`,
    );
  }
  return success(entry);
}

/**
 * Reads a probe from `key=value` pairs. Messages name keys and never repeat a value, so that no pupil's name reaches
 * a log.
 *
 * @param order - the day order of the date where it could be read two ways
 */
export function parseProbeEntry(pairs: readonly string[], order: DayOrder | undefined): Result<ProbeEntry> {
  const given = parsePairs(pairs);
  if (!given.ok) return given;
  const date = given.value.get("date");
  if (date === undefined) return refusal("no-date", "The date is missing. Give it, such as date=2026-11-20.");
  const day = parseDay(date, order);
  if (!day.ok) return day;
  const numbers = new Map<ColumnKind, number>();
  const texts = new Map<ColumnKind, string>();
  for (const [kind, text] of given.value) {
    if (kind === "date") continue;
    if (!NUMBER_KINDS.includes(kind)) {
      texts.set(kind, text);
      continue;
    }
    const number = parseNumber(kind, text);
    if (!number.ok) return number;
    if (typeof number.value === "number") numbers.set(kind, number.value);
    else texts.set(kind, number.value);
  }
  return checkTogether({ day: day.value, numbers, texts, keys: [...given.value.keys()] });
}
