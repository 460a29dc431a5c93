import type { Probe } from "../../src/domain/probe/probe";
import { success } from "../../src/domain/result";
import type { Fault, Result } from "../../src/domain/result";
import type { Day, Seconds } from "../../src/domain/units";
import type { Unplaced } from "../../src/records/new-entries";
import { parseDayText } from "../../src/records/day-text";

/** The fields of the form, in its order. */
export const SCORE_FIELDS = [
  "pupil",
  "date",
  "task",
  "code",
  "medium",
  "material",
  "words",
  "errors",
  "seconds",
  "correct",
  "opportunities",
  "unit",
  "support",
  "note",
] as const;
export type ScoreField = (typeof SCORE_FIELDS)[number];
/** What stands in the fields, as typed. */
export type TypedScore = Readonly<Record<ScoreField, string>>;

/** What cannot be taken, and the field where it is. */
interface ScoreFault extends Fault {
  readonly field: ScoreField;
}

const refuse = (field: ScoreField, message: string): Result<never, ScoreFault> => ({
  ok: false,
  fault: { code: field, message, field },
});

const NUMBERS = {
  words: "words attempted",
  errors: "errors",
  seconds: "seconds",
  correct: "number correct",
  opportunities: "number asked",
} as const;
type NumberField = keyof typeof NUMBERS;
const WHOLE: ReadonlySet<NumberField> = new Set(["words", "errors", "opportunities"]);

/** A time as seconds: `75`, `75.5` or `1:15`. */
const parseSeconds = (text: string): number => {
  const clock = /^(\d+):([0-5]?\d(?:\.\d+)?)$/.exec(text);
  return clock ? 60 * Number(clock[1]) + Number(clock[2]) : Number(text);
};

function readNumbers(typed: TypedScore): Result<Partial<Record<NumberField, number>>, ScoreFault> {
  const numbers: Partial<Record<NumberField, number>> = {};
  for (const field of Object.keys(NUMBERS) as NumberField[]) {
    const text = typed[field].trim().replace(",", ".");
    if (text === "") continue;
    const value = field === "seconds" ? parseSeconds(text) : Number(text);
    if (!(value >= 0 && value < 1e6))
      return refuse(field, `The ${NUMBERS[field]} must be a number from 0 on, or left empty.`);
    if (WHOLE.has(field) && !Number.isInteger(value))
      return refuse(field, `The ${NUMBERS[field]} must be a whole number.`);
    numbers[field] = value;
  }
  return success(numbers);
}

function checkNumbers({
  words,
  errors,
  seconds,
  correct,
  opportunities,
}: Partial<Record<NumberField, number>>): Result<null, ScoreFault> {
  if (words === undefined && correct === undefined)
    return refuse("words", "Say how the probe went: words attempted, or a number correct.");
  if (errors !== undefined && words === undefined)
    return refuse("words", "Errors are counted among words attempted: give both.");
  if (errors !== undefined && words !== undefined && errors > words)
    return refuse("errors", "There are more errors than words attempted. Check both numbers.");
  if (seconds === 0) return refuse("seconds", "The time is 0. Give the time taken, or leave it empty.");
  if (words !== undefined && correct !== undefined)
    return refuse(
      "correct",
      "Give words attempted and errors, or a number correct out of those asked: not both.",
    );
  if (opportunities !== undefined && correct === undefined)
    return refuse("correct", "Say how many of those asked were correct.");
  if (correct !== undefined && opportunities !== undefined && correct > opportunities)
    return refuse("correct", "More are correct than were asked. Check both numbers.");
  return success(null);
}

function readDay(text: string, today: Day): Result<Day, ScoreFault> {
  const read = parseDayText(text.trim());
  if (read?.kind !== "day") return refuse("date", "Give the date as year-month-day, such as 2026-11-20.");
  return read.day > today ? refuse("date", "The date is after today. Check it.") : success(read.day);
}

/** A text field only where something was typed. */
const given = <K extends "task" | "code" | "medium" | "material" | "support" | "note">(
  typed: TypedScore,
  ...fields: readonly K[]
): Partial<Record<K, string>> =>
  Object.fromEntries(
    fields.flatMap((field) => (typed[field].trim() === "" ? [] : [[field, typed[field].trim()]])),
  ) as Partial<Record<K, string>>;

/**
 * Reads a score that was typed into the form as one probe.
 *
 * @returns the probe, or what to do at which field
 */
export function readScore(typed: TypedScore, today: Day): Result<Unplaced<Probe>, ScoreFault> {
  const pupil = typed.pupil.trim();
  if (pupil === "") return refuse("pupil", "Say which pupil: a code or initials.");
  const day = readDay(typed.date, today);
  if (!day.ok) return day;
  const numbers = readNumbers(typed);
  if (!numbers.ok) return numbers;
  const checked = checkNumbers(numbers.value);
  if (!checked.ok) return checked;
  const { seconds, words, errors, ...counts } = numbers.value;
  return success({
    pupil,
    day: day.value,
    ...given(typed, "task", "code", "medium", "material", "support", "note"),
    ...(words === undefined
      ? { unit: typed.unit.trim() === "" ? "signs" : typed.unit.trim() }
      : { unit: "words", words, errors: errors ?? 0 }),
    ...counts,
    ...(seconds === undefined ? {} : { seconds: seconds as Seconds }),
  });
}
