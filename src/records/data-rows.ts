import { isCellError } from "../domain/cell-value";
import type { CandidateBlock } from "./candidate-block";
import { labelsSummary, saysNothing, sumsUp, tidyText } from "./cell-text";
import { NUMBER_KINDS } from "./column-kind";
import type { AnyKind } from "./column-kind";
import { columnOf } from "./found-block";
import { readDayCell } from "./day-cell";

/** What a row beneath the headers is. */
export type RowNature = "blank" | "summary" | "data";

/** Kinds whose cells may hold any words, "Total" and "Mean" among them. */
const FREE_TEXT: readonly AnyKind[] = ["note", "response", "expected", "material", "task", "sign", "text"];

/** Tells blank rows (calculated cells alone do not count) and rows of totals from rows of data. */
export function natureOfRow(block: CandidateBlock, row: number): RowNature {
  const { cells, columns, region } = block;
  let typed = false;
  let summaryLabel = false;
  let aggregate = false;
  let repeatsHeader = 0;
  for (const { column, kinds, header } of columns) {
    if (cells.isBlank(row, column)) continue;
    const formula = cells.formula(row, column);
    if (formula === null) typed = true;
    const value = cells.value(row, column);
    const isNumber = kinds.some((kind) => (NUMBER_KINDS as readonly AnyKind[]).includes(kind));
    if (isNumber && sumsUp(formula) && spansRows(formula)) aggregate = true;
    if (typeof value !== "string") continue;
    if (header !== "" && tidyText(value) === tidyText(header)) repeatsHeader += 1;
    if (!kinds.some((kind) => FREE_TEXT.includes(kind)) && !isNumber && labelsSummary(value))
      summaryLabel = true;
    if (column === region.left && labelsSummary(value) && !kinds.includes("note")) summaryLabel = true;
  }
  if (!typed && !aggregate) return allFormulas(block, row) ? "data" : "blank";
  if (repeatsHeader >= 2) return "blank";
  const hasDay = holdsDay(block, row);
  if (summaryLabel) return hasDay && !pupilIsSummary(block, row) ? "data" : "summary";
  return aggregate && !hasDay ? "summary" : "data";
}

/** A sum down a column, not along a row: its range runs over more than one row. */
const spansRows = (formula: string | null): boolean => {
  const found = /\$?[A-Z]{1,3}\$?(\d+):\$?[A-Z]{1,3}\$?(\d+)/i.exec(formula ?? "");
  return found ? found[1] !== found[2] : /\[[^@#]/.test(formula ?? "");
};

function holdsDay({ cells, columns, choice }: CandidateBlock, row: number): boolean {
  const date = columnOf(columns, "date");
  if (!date) return false;
  const { kind } = readDayCell(
    cells.value(row, date.column),
    cells.format(row, date.column),
    choice.dayOrder,
  );
  return kind === "day" || kind === "waiting";
}

function pupilIsSummary({ cells, columns }: CandidateBlock, row: number): boolean {
  const pupil = columnOf(columns, "pupil");
  const value = pupil ? cells.value(row, pupil.column) : null;
  return typeof value === "string" && labelsSummary(value);
}

/** A row made of formulas only is data where the whole block is drawn from elsewhere: its date too is a formula. */
function allFormulas(block: CandidateBlock, row: number): boolean {
  const date = columnOf(block.columns, "date");
  if (!date || block.cells.formula(row, date.column) === null) return false;
  const value = block.cells.value(row, date.column);
  return !isCellError(value) && value !== 0 && value !== "" && holdsDay(block, row);
}

/** The text of a cell that names something; "" for blanks, dashes and "n/a". */
export function textAt(block: CandidateBlock, row: number, column: number): string {
  const value = block.cells.value(row, column);
  if (value === null || isCellError(value)) return "";
  const text =
    typeof value === "string"
      ? value.trim()
      : typeof value === "boolean"
        ? value
          ? "yes"
          : "no"
        : String(value);
  return text;
}

/**
 * Whether the pupil or date of a block's rows is given once and left blank beneath (grouped or merged cells): such a
 * column is filled down; a column with a few gaps is not, there a blank is a fault.
 */
export function isGrouped(block: CandidateBlock, column: number, rows: readonly number[]): boolean {
  let blanks = 0;
  let repeats = 0;
  let filled = 0;
  let before = "";
  for (const row of rows) {
    const text = textAt(block, row, column);
    if (text === "") blanks += 1;
    else {
      filled += 1;
      if (text === before) repeats += 1;
      before = text;
    }
  }
  const startsFilled = rows[0] !== undefined && textAt(block, rows[0], column) !== "";
  return startsFilled && blanks >= 0.3 * rows.length && repeats <= 0.2 * filled;
}

/** Whether a cell says that the pupil was absent or nothing was measured. */
export const saysNothingAt = (block: CandidateBlock, row: number, column: number): boolean =>
  saysNothing(textAt(block, row, column));
