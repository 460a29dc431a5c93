/** How cells of dates are read: one date, pairs of dates and scores, dated counts of trials. */
import type { DailyValue } from "../src/domain/progress/phases";
import type { TrialCount } from "../src/domain/progress/mastery-occasions";
import { refusal, success, type Result } from "../src/domain/result";
import type { Day } from "../src/domain/units";
import { numberOf, readSeries } from "./cell-reading";
import { isBlank, type Block } from "./shape";

/** 31 December 9999, the last day that a sheet can show. */
const LAST_DAY = 2_958_465;

/**
 * The day in a cell.
 *
 * @param name - what the argument is called to the teacher, such as `the start date`
 * @returns the day with its time, or `missing` / `not-a-number` / `impossible-number` (outside 1900 to 9999)
 */
export const readDate = (cell: unknown, name: string): Result<Day> => {
  const serial = readNumber(cell, name);
  if (!serial.ok) return serial;
  return serial.value >= 1 && serial.value < LAST_DAY + 1
    ? success(serial.value as Day)
    : refusal("impossible-number", `${name} is to be a day from 1 January 1900 on, not ${serial.value}.`);
};

/** The number in a cell that must not be blank. */
export const readNumber = (cell: unknown, name: string): Result<number> =>
  isBlank(cell) ? refusal("missing", `${name} is missing: fill in that cell.`) : numberOf(cell, name);

/** Pairs of a date and a score, places with a blank in either left out. */
export const readDatedScores = (dates: Block, scores: Block): Result<readonly DailyValue[]> => {
  const rows = readDatedRows([dates, scores], ["dates", "scores"]);
  if (!rows.ok) return rows;
  return success(rows.value.map(({ day, numbers: [value = NaN] }) => ({ day, value })));
};

/** Dates with what was right of what was asked, places with a blank in any of them left out. */
export const readTrialCounts = (
  dates: Block,
  correct: Block,
  opportunities: Block,
): Result<readonly TrialCount[]> => {
  const rows = readDatedRows([dates, correct, opportunities], ["dates", "correct", "opportunities"]);
  if (!rows.ok) return rows;
  return success(
    rows.value.map(({ day, numbers: [right = NaN, asked = NaN] }) => ({
      day,
      correct: right,
      opportunities: asked,
    })),
  );
};

const readDatedRows = (
  blocks: readonly Block[],
  names: readonly string[],
): Result<{ readonly day: Day; readonly numbers: readonly number[] }[]> => {
  const rows = readSeries(blocks, names);
  if (!rows.ok) return rows;
  const dated: { readonly day: Day; readonly numbers: readonly number[] }[] = [];
  for (const [serial, ...numbers] of rows.value) {
    const day = readDate(serial, "each of the dates");
    if (!day.ok) return day;
    dated.push({ day: day.value, numbers });
  }
  return success(dated);
};
