import type { TableOutline } from "../ports/sheet";
import { isMark, classifyCell } from "./cell-reading";
import { isBlank, labelsSummary, saysNothing, tidyText } from "./cell-text";
import { parseDayText } from "./day-text";
import type { GridCells } from "./grid-cells";
import type { GridNumbers } from "./grid-cell";
import { headerText } from "./header-row";
import { bestMatch, matchHeader } from "./header-words";
import { classifyFormat } from "./number-format";

/** A grid of marks: one heading a column across, one heading a row down. */
export interface GridRegion {
  readonly layout: "signs down" | "dates down";
  readonly headerRow: number;
  /** first label column and last mark column */
  readonly left: number;
  readonly right: number;
  /** column of the headings that stand down the side */
  readonly side: number;
  /** columns of marks */
  readonly across: readonly number[];
  readonly rows: readonly number[];
  readonly numbers: GridNumbers;
  /** side headings are pupils, not signs */
  readonly pupilsDown: boolean;
  readonly pupilColumn?: number;
  readonly table?: TableOutline;
}

const isDateHeading = (cells: GridCells, row: number, column: number): boolean => {
  const value = cells.value(row, column);
  if (typeof value === "number") return value >= 1 && classifyFormat(cells.format(row, column)) === "date";
  return typeof value === "string" && parseDayText(value) !== undefined;
};

const isGridMark = (cells: GridCells, row: number, column: number): boolean => {
  const value = cells.value(row, column);
  if (value === 0 || value === 1 || typeof value === "boolean") return true;
  return typeof value === "string" && (isMark(value) || classifyCell(value, "General") === "fraction");
};

/** Marks that a register of attendance has too: P and A, and dashes. */
const NOT_READ = /^(?:p|a|pr|abs|absent|present|-+|[\u2010-\u2015\u2212])$/i;

/** Share of marks among the filled cells of some columns over rows; numbers are counted apart. */
function weighCells(
  cells: GridCells,
  rows: readonly number[],
  columns: readonly number[],
): { filled: number; marks: number; numbers: number; signs: number; right: number; percents: number } {
  let [filled, marks, numbers, signs, right, percents] = [0, 0, 0, 0, 0, 0];
  for (const row of rows) {
    for (const column of columns) {
      const value = cells.value(row, column);
      if (isBlank(value)) continue;
      const isNothing =
        typeof value === "string" && saysNothing(value) && !/^(?:-+|a|abs|absent|nr)$/i.test(tidyText(value));
      if (isNothing) continue;
      filled += 1;
      const found = classifyCell(value, cells.format(row, column));
      if (found === "percent") percents += 1;
      if (isGridMark(cells, row, column)) {
        marks += 1;
        if (typeof value === "string") signs += 1;
        if (!(typeof value === "string" && NOT_READ.test(value.trim()))) right += 1;
      } else if (found === "number" || found === "percent" || found === "quantity") numbers += 1;
    }
  }
  return { filled, marks, numbers, signs, right, percents };
}

function sideRows(
  cells: GridCells,
  headerRow: number,
  side: number,
  across: readonly number[],
  last: number,
): number[] {
  const rows: number[] = [];
  let blanks = 0;
  for (let row = headerRow + 1; row <= last; row += 1) {
    const label = cells.value(row, side);
    const hasMarks = across.some((column) => !cells.isBlank(row, column));
    if (isBlank(label)) {
      blanks += 1;
      if (blanks > 2) break;
      continue;
    }
    if (rows.length > 0 && across.filter((column) => isDateHeading(cells, row, column)).length >= 2) break;
    if (!hasMarks && blanks > 0 && String(label).length > 12) break;
    if (typeof label === "string" && labelsSummary(label) && label.length > 2) continue;
    if (typeof label === "string" && label.length > 40) {
      blanks += 1;
      continue;
    }
    blanks = 0;
    rows.push(row);
  }
  while (
    rows.length > 0 &&
    !across.some((column) => !cells.isBlank(rows[rows.length - 1] ?? 0, column)) &&
    String(cells.value(rows[rows.length - 1] ?? 0, side)).length > 12
  )
    rows.pop();
  return rows;
}

/** What the title above a grid, its corner or its sheet says plain numbers are. */
function namedMeasure(
  cells: GridCells,
  headerRow: number,
  left: number,
  right: number,
): "rate" | "accuracy" | "score" {
  for (let row = headerRow; row >= Math.max(0, headerRow - 3); row -= 1) {
    for (let column = left; column <= right; column += 1) {
      const match = matchHeader(headerText(cells, row, column));
      if ((match.get("rate") ?? 0) >= 0.7) return "rate";
      if ((match.get("accuracy") ?? 0) >= 0.8) return "accuracy";
    }
  }
  return (matchHeader(cells.sheet).get("rate") ?? 0) >= 0.7 ? "rate" : "score";
}

/** Finds a grid with dates across: a run of dates in a row with marks (or numbers) beneath and labels at its left. */
function findDatesAcross(
  cells: GridCells,
  row: number,
  from: number,
  to: number,
  last: number,
): GridRegion | undefined {
  const dates: number[] = [];
  for (let column = from; column <= to; column += 1)
    if (isDateHeading(cells, row, column)) dates.push(column);
  const firstDate = dates[0];
  if (firstDate === undefined || dates.length < 2 || firstDate === from) return undefined;
  const labels: number[] = [];
  for (let column = from; column < firstDate; column += 1) labels.push(column);
  const named = (kind: "sign" | "pupil"): number | undefined =>
    labels.find(
      (column) =>
        (matchHeader(headerText(cells, row, column)).get(kind) ?? 0) >= 0.7 &&
        !cells.isBlank(row + 1, column),
    );
  const nearest = [...labels]
    .reverse()
    .find(
      (column) =>
        typeof cells.value(row + 1, column) === "string" || typeof cells.value(row + 2, column) === "string",
    );
  const side = named("sign") ?? nearest ?? labels[labels.length - 1];
  if (side === undefined) return undefined;
  const rows = sideRows(cells, row, side, dates, last);
  if (rows.length === 0) return undefined;
  const { filled, marks, numbers, signs, right, percents } = weighCells(cells, rows, dates);
  if (filled === 0) return undefined;
  // Two columns of dates in a list (start and goal) have dates beneath them, not marks.
  const beneath = rows.flatMap((at) => dates.filter((column) => isDateHeading(cells, at, column)));
  if (beneath.length > 0.5 * filled || marks + numbers + beneath.length < 0.6 * filled) return undefined;
  const isMarks = marks >= 0.6 * filled && (signs > 0 || numbers === 0);
  const pupil = named("pupil");
  // Pupils down and nothing but P and A is a register of attendance.
  if (pupil === side && isMarks && right === 0) return undefined;
  return {
    layout: "signs down",
    headerRow: row,
    left: from,
    right: to,
    side,
    across: dates,
    rows,
    numbers: isMarks ? "marks" : percents > 0.5 * numbers ? "accuracy" : namedMeasure(cells, row, from, to),
    pupilsDown: pupil === side,
    ...(pupil !== undefined && pupil !== side ? { pupilColumn: pupil } : {}),
  };
}

/** Columns of marks whose headings are signs; headings that mean something else count where all columns are marks. */
function signColumns(
  cells: GridCells,
  row: number,
  from: number,
  to: number,
  side: number,
  rows: readonly number[],
): number[] {
  const columns: number[] = [];
  const marked: number[] = [];
  let unnamed = 0;
  let headings = 0;
  for (let column = from; column <= to; column += 1) {
    const text = headerText(cells, row, column);
    if (column === side || text === "" || text.length > 24) continue;
    headings += 1;
    const { filled, marks } = weighCells(cells, rows, [column]);
    if (filled === 0 || marks < 0.8 * filled) continue;
    marked.push(column);
    const named = bestMatch(text);
    if (named?.kind === "sign" && named.strength >= 0.9) continue;
    if (!named || named.strength < 0.6 || text.length <= 2) unnamed += 1;
    else if (named.kind === "correct" && /correct/i.test(text)) continue;
    columns.push(column);
  }
  // "day", "time", "right", "letter" and "name" are signs too: a sheet of nothing but marks is a grid.
  if (marked.length >= 4 && marked.length >= 0.8 * headings) return marked;
  return unnamed >= 0.5 * columns.length ? columns : [];
}

/** Finds the transpose: a date column, and at least two columns of marks whose headings name signs. */
function findDatesDown(
  cells: GridCells,
  row: number,
  from: number,
  to: number,
  last: number,
): GridRegion | undefined {
  let side: number | undefined;
  for (let column = from; column <= to && side === undefined; column += 1) {
    if (headerText(cells, row, column) !== "" || column === from) {
      if (isDateHeading(cells, row + 1, column) || isDateHeading(cells, row + 2, column)) side = column;
    }
  }
  if (side === undefined || isDateHeading(cells, row, side)) return undefined;
  const rows: number[] = [];
  for (let at = row + 1; at <= last; at += 1) {
    if (isDateHeading(cells, at, side)) rows.push(at);
    else if (
      !cells.isBlank(at, side) &&
      typeof cells.value(at, side) === "string" &&
      !saysNothing(String(cells.value(at, side))) &&
      !labelsSummary(String(cells.value(at, side))) &&
      rows.length > 0 &&
      bestMatch(String(cells.value(at, side)))?.kind === "date"
    )
      break;
  }
  if (rows.length < 2) return undefined;
  const columns = signColumns(cells, row, from, to, side, rows);
  if (columns.length < 2) return undefined;
  const all = weighCells(cells, rows, columns);
  if (all.right === 0 || (all.signs === 0 && all.marks < 4)) return undefined;
  const pupil = [...Array(to - from + 1).keys()]
    .map((place) => from + place)
    .find(
      (column) =>
        !columns.includes(column) &&
        column !== side &&
        (matchHeader(headerText(cells, row, column)).get("pupil") ?? 0) >= 0.7,
    );
  return {
    layout: "dates down",
    headerRow: row,
    left: from,
    right: to,
    side,
    across: columns,
    rows,
    numbers: "marks",
    pupilsDown: false,
    ...(pupil === undefined ? {} : { pupilColumn: pupil }),
  };
}

/** Finds the grid whose heading row this may be, or undefined. */
export const findGrid = (
  cells: GridCells,
  row: number,
  from: number,
  to: number,
  last: number,
): GridRegion | undefined =>
  findDatesAcross(cells, row, from, to, last) ?? findDatesDown(cells, row, from, to, last);
