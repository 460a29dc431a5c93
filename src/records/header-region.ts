import type { Area } from "../domain/area";
import type { TableOutline } from "../ports/sheet";
import type { GridCells } from "./grid-cells";
import { headerText, isUnitRow, judgeHeaders, judgeListHeaders, runsOf } from "./header-row";

/** A header row (or two) with the columns and rows beneath it that may belong to it. */
export interface HeaderRegion {
  /** first header row; `headerRow` is the last */
  readonly top: number;
  readonly headerRow: number;
  readonly left: number;
  readonly right: number;
  /** first and last row that may hold data */
  readonly first: number;
  readonly last: number;
  /** one text a column, from `left`; a group's heading stands before a header that says little by itself */
  readonly headers: readonly string[];
  readonly groups: readonly string[];
  /** row of the lowest header cell, one a column */
  readonly headerRows: readonly number[];
  readonly table?: TableOutline;
}

const inside = (area: Area, row: number, column: number): boolean =>
  row >= area.top && row <= area.bottom && column >= area.left && column <= area.right;

interface Headers {
  readonly top: number;
  readonly headerRow: number;
  readonly left: number;
  readonly right: number;
  readonly first: number;
}

function describeHeaders(
  cells: GridCells,
  found: Headers,
): Pick<HeaderRegion, "headers" | "groups" | "headerRows"> {
  const headers: string[] = [];
  const groups: string[] = [];
  const headerRows: number[] = [];
  let group = "";
  for (let column = found.left; column <= found.right; column += 1) {
    const upper = found.top < found.headerRow ? headerText(cells, found.top, column) : "";
    const lower = headerText(cells, found.headerRow, column);
    const unit = found.first - found.headerRow > 1 ? headerText(cells, found.headerRow + 1, column) : "";
    if (upper !== "") group = upper;
    const own = lower === "" ? upper : lower;
    headers.push(unit === "" ? own : own === "" ? unit : `${own} ${/^[([]/.test(unit) ? unit : `(${unit})`}`);
    groups.push(lower === "" ? "" : group);
    headerRows.push(lower === "" && upper !== "" ? found.top : found.headerRow);
    if (lower === "" && upper === "") group = "";
  }
  return { headers, groups, headerRows };
}

const overlaps = (a: { left: number; right: number }, b: { left: number; right: number }): boolean =>
  a.left <= b.right && b.left <= a.right;

/** Widens a header run over headings that stand one row higher (Date and Pupil merged over two rows). */
function joinUpperRow(
  cells: GridCells,
  run: { row: number; left: number; right: number },
  isFree: (row: number, column: number) => boolean,
): Headers {
  let { left, right } = run;
  let top = run.row;
  const isUpper = (column: number): boolean =>
    run.row > 0 &&
    isFree(run.row, column) &&
    isFree(run.row - 1, column) &&
    cells.isBlank(run.row, column) &&
    headerText(cells, run.row - 1, column) !== "" &&
    !cells.isBlank(run.row + 1, column);
  while (left > cells.area.left && isUpper(left - 1)) {
    left -= 1;
    top = run.row - 1;
  }
  while (right < cells.area.right && isUpper(right + 1)) {
    right += 1;
    top = run.row - 1;
  }
  for (let column = left; column <= right; column += 1) if (isUpper(column)) top = run.row - 1;
  return { top, headerRow: run.row, left, right, first: run.row + 1 };
}

function findPlainHeaders(cells: GridCells, isFree: (row: number, column: number) => boolean): Headers[] {
  const found: Headers[] = [];
  for (let row = cells.area.top; row <= cells.area.bottom; row += 1) {
    for (const span of runsOf(cells, row, isFree)) {
      const above = found.find((other) => other.first > row && overlaps(other, span));
      if (above) continue;
      const run =
        judgeHeaders(cells, row, span.left, span.right) ??
        judgeListHeaders(cells, row, span.left, span.right);
      if (!run) continue;
      const headers = joinUpperRow(cells, run, isFree);
      const next = judgeHeaders(cells, row + 1, headers.left, headers.right);
      const isSplit = next !== undefined && areSplit(cells, row, headers.left, headers.right);
      if (isSplit && headers.top === row) {
        found.push({
          ...headers,
          right: lastBeneath(cells, row, headers.right, isFree),
          headerRow: row + 1,
          first: row + 2,
        });
      }
      if (!isSplit || headers.top !== row)
        found.push(
          isUnitRow(cells, row + 1, headers.left, headers.right) ? { ...headers, first: row + 2 } : headers,
        );
    }
  }
  return found;
}

/** The last group's heading stands over its first column only: the columns beneath it go on. */
const lastBeneath = (
  cells: GridCells,
  row: number,
  right: number,
  isFree: (row: number, column: number) => boolean,
): number => {
  let last = right;
  while (
    last < cells.area.right &&
    isFree(row + 1, last + 1) &&
    cells.isBlank(row, last + 1) &&
    !cells.isBlank(row + 1, last + 1)
  )
    last += 1;
  return last;
};

/**
 * Whether two rows of header words are one header: the upper has gaps (beneath its groups), and the lower leaves out
 * what the upper names (a date merged over both rows). A complete lower row needs no line of a title above it.
 */
function areSplit(cells: GridCells, row: number, left: number, right: number): boolean {
  let upperGaps = 0;
  let lowerGaps = 0;
  for (let column = left; column <= right; column += 1) {
    const upper = cells.isBlank(row, column);
    const lower = cells.isBlank(row + 1, column);
    if (upper && !lower) upperGaps += 1;
    if (lower && !upper && !cells.isBlank(row + 2, column)) lowerGaps += 1;
  }
  return upperGaps > 0 && lowerGaps > 0;
}

/** Two runs of one row where the first has who and when and the second how it went are one block with a gap. */
function joinAcrossGap(cells: GridCells, headers: readonly Headers[]): Headers[] {
  const joined: Headers[] = [];
  for (const next of headers) {
    const before = joined.find(
      (other) => other.headerRow === next.headerRow && other.right === next.left - 2,
    );
    const holdsDate = (span: Headers): boolean => namesKind(cells, span, /\bdate\b|^dt\.?$|^day$|^when$/i);
    if (
      before &&
      holdsDate(before) &&
      !holdsDate(next) &&
      !namesKind(
        cells,
        before,
        /error|mistake|miscue|words|correct|score|rate|wpm|wcpm|%|accura|result|secs?\b|time/i,
      )
    ) {
      joined[joined.indexOf(before)] = { ...before, right: next.right };
    } else joined.push(next);
  }
  return joined;
}

const namesKind = (cells: GridCells, span: Headers, pattern: RegExp): boolean => {
  for (let column = span.left; column <= span.right; column += 1) {
    if (pattern.test(headerText(cells, span.headerRow, column))) return true;
  }
  return false;
};

/**
 * Finds header rows anywhere on a sheet: the host's own tables first, then runs of header words below title rows,
 * beside other blocks and under them. A region ends above the next header row in its columns.
 */
export function findHeaderRegions(cells: GridCells, tables: readonly TableOutline[]): HeaderRegion[] {
  const hostTables = tables.filter((table) => table.headerRow);
  const isFree = (row: number, column: number): boolean =>
    !hostTables.some((table) => inside(table.area, row, column));
  const regions: HeaderRegion[] = hostTables.map((table) => {
    const { top, left, right, bottom } = table.area;
    const headers = { top, headerRow: top, left, right, first: top + 1 };
    return {
      ...headers,
      ...describeHeaders(cells, headers),
      last: bottom - (table.totalsRow ? 1 : 0),
      table,
    };
  });
  const plain = joinAcrossGap(cells, findPlainHeaders(cells, isFree));
  for (const headers of plain) {
    const nextHeader = Math.min(
      ...plain
        .filter((other) => other.top > headers.headerRow && overlaps(other, headers))
        .map((other) => other.top),
      ...hostTables
        .filter(({ area }) => area.top > headers.headerRow && overlaps(area, headers))
        .map(({ area }) => area.top),
      cells.area.bottom + 1,
    );
    regions.push({ ...headers, ...describeHeaders(cells, headers), last: nextHeader - 1 });
  }
  return regions.sort((a, b) => a.top - b.top || a.left - b.left);
}
