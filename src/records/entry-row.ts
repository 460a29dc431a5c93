import { refusal, success } from "../domain/result";
import type { Result } from "../domain/result";
import type { CellInput } from "../ports/sheet";
import { countsWords } from "./column-fit";
import type { ColumnKind } from "./column-kind";
import { styleAccuracy, styleDay, styleMark, styleNumber, styleSeconds, styleText } from "./column-style";
import type { ColumnStyle } from "./column-style";
import { columnFor } from "./entry-table";
import { columnOf } from "./found-block";
import type { FoundBlock, FoundColumn, ProbeBlock } from "./found-block";
import type { GridCells } from "./grid-cells";
import type { ProbeEntry } from "./probe-entry";
import { parseFraction } from "./quantity";

/** How the cells of a column are written, from the rows of its block. */
export function styleOf(block: FoundBlock, cells: GridCells, column: FoundColumn): ColumnStyle {
  const typed: { value: ColumnStyle["typed"][number]["value"]; format: string }[] = [];
  for (let row = block.headerRow + 1; row <= block.area.bottom; row += 1) {
    if (cells.isBlank(row, column.column) || cells.formula(row, column.column) !== null) continue;
    typed.push({ value: cells.value(row, column.column), format: cells.format(row, column.column) });
  }
  return { header: column.header, typed, nextFormat: cells.format(block.headerRow + 1, column.column) };
}

/** Whether a column is calculated: its last filled cell is a formula, or in a table without data its blank row's is. */
export function isCalculated(block: FoundBlock, cells: GridCells, column: FoundColumn): boolean {
  if (block.table !== undefined && block.area.bottom === block.headerRow)
    return cells.formula(block.headerRow + 1, column.column) !== null;
  for (let row = block.area.bottom; row > block.headerRow; row -= 1) {
    if (cells.formula(row, column.column) !== null) return true;
    if (!cells.isBlank(row, column.column)) return false;
  }
  return false;
}

const isFractionStyle = (style: ColumnStyle): boolean =>
  style.typed.some(({ value }) => typeof value === "string" && parseFraction(value) !== undefined);

/** The cells of a new row, one a column of the block; what was not given is left to the host. */
export function makeEntryRow(block: ProbeBlock, cells: GridCells, entry: ProbeEntry): Result<CellInput[]> {
  const row: CellInput[] = block.columns.map(() => undefined);
  const put = (column: FoundColumn, input: CellInput): Result<null> => {
    if (isCalculated(block, cells, column)) {
      return refusal(
        "calculated-column",
        `The column ${column.letters} is calculated by the workbook. Leave its key out.`,
      );
    }
    row[block.columns.indexOf(column)] = input;
    return success(null);
  };
  const placed = placeValues(block, cells, entry);
  if (!placed.ok) return placed;
  for (const [column, input] of placed.value) {
    const done = put(column, input);
    if (!done.ok) return done;
  }
  return success(row);
}

function placeValues(
  block: ProbeBlock,
  cells: GridCells,
  entry: ProbeEntry,
): Result<Map<FoundColumn, CellInput>> {
  const values = new Map<FoundColumn, CellInput>();
  const style = (column: FoundColumn): ColumnStyle => styleOf(block, cells, column);
  const date = columnOf(block.columns, "date");
  if (!date) return refusal("no-date", "The table has no date column.");
  const dateStyle = style(date);
  values.set(date, styleDay(dateStyle, entry.day, block.dayOrder));
  const pupil = columnOf(block.columns, "pupil");
  if (pupil && !entry.texts.has("pupil"))
    return refusal("no-pupil", "The table has a pupil column. Give the pupil, as pupil=….");

  for (const [kind, text] of entry.texts) {
    const column = columnFor(block, kind);
    if (!column) continue;
    values.set(
      column,
      kind === "correct" || kind === "score"
        ? styleMark(style(column), text)
        : styleText(style(column), text),
    );
  }
  const time = placeTime(block, entry, style, values);
  if (!time.ok) return time;
  for (const [kind, number] of entry.numbers) {
    if (kind === "seconds" || kind === "minutes") continue;
    const column = columnFor(block, kind);
    if (!column) continue;
    values.set(column, styleMeasure(kind, style(column), number, entry, block));
  }
  return placeUnit(block, entry, style, values);
}

function styleMeasure(
  kind: ColumnKind,
  style: ColumnStyle,
  number: number,
  entry: ProbeEntry,
  block: ProbeBlock,
): CellInput {
  if (kind === "accuracy") return styleAccuracy(style, number);
  const total = entry.numbers.get("opportunities");
  if (kind === "correct" && total !== undefined && !columnFor(block, "opportunities"))
    return `${number}/${total}`;
  const isMarks =
    (kind === "correct" || kind === "score") &&
    !isFractionStyle(style) &&
    style.typed.length > 0 &&
    style.typed.every(({ value }) => typeof value === "string" || typeof value === "boolean");
  return isMarks && (number === 0 || number === 1) ? styleMark(style, number) : styleNumber(style, number);
}

function placeTime(
  block: ProbeBlock,
  entry: ProbeEntry,
  style: (column: FoundColumn) => ColumnStyle,
  values: Map<FoundColumn, CellInput>,
): Result<null> {
  const minutes = entry.numbers.get("minutes");
  const given = entry.numbers.get("seconds");
  if (given === undefined && minutes === undefined) return success(null);
  const seconds = (given ?? 0) + (minutes ?? 0) * 60;
  const secondsColumn = columnOf(block.columns, "seconds");
  const minutesColumn = columnOf(block.columns, "minutes");
  const clock = block.clock ?? "m:ss";
  if (secondsColumn && minutesColumn) {
    values.set(minutesColumn, Math.floor(seconds / 60));
    values.set(secondsColumn, Math.round((seconds % 60) * 1000) / 1000);
  } else if (secondsColumn) values.set(secondsColumn, styleSeconds(style(secondsColumn), seconds, clock));
  else if (minutesColumn)
    values.set(minutesColumn, styleNumber(style(minutesColumn), Math.round((seconds / 60) * 1e6) / 1e6));
  return success(null);
}

/** Attempted counts whatever Unit says: with `words` the unit is words, and for other totals it must be given. */
function placeUnit(
  block: ProbeBlock,
  entry: ProbeEntry,
  style: (column: FoundColumn) => ColumnStyle,
  values: Map<FoundColumn, CellInput>,
): Result<Map<FoundColumn, CellInput>> {
  const unit = columnOf(block.columns, "unit");
  if (!unit || entry.texts.has("unit")) return success(values);
  if (entry.numbers.has("words")) {
    const hers = style(unit).typed.find(({ value }) => typeof value === "string" && countsWords(value));
    values.set(unit, hers?.value ?? "words");
    return success(values);
  }
  return entry.numbers.has("opportunities")
    ? refusal(
        "no-unit",
        "The table counts whatever its Unit column says. Give the unit too, such as unit=signs.",
      )
    : success(values);
}
