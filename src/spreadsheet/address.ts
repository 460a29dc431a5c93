import type { Area } from "../domain/area";

/** The largest sheet that a workbook may hold. */
export const MAX_ROWS = 1_048_576;
export const MAX_COLUMNS = 16_384;

/** Column letters of a zero-based column: 0 is `A`, 26 is `AA`. */
export function formatColumn(column: number): string {
  let letters = "";
  for (let rest = column; rest >= 0; rest = Math.floor(rest / 26) - 1) {
    letters = String.fromCharCode(65 + (rest % 26)) + letters;
  }
  return letters;
}

/** The zero-based column of its letters, or undefined where there is no such column. */
export function parseColumn(letters: string): number | undefined {
  if (!/^[A-Za-z]{1,3}$/.test(letters)) return undefined;
  let column = 0;
  for (const letter of letters.toUpperCase()) column = column * 26 + letter.charCodeAt(0) - 64;
  return column <= MAX_COLUMNS ? column - 1 : undefined;
}

/** A cell's address, such as `B7`, from its zero-based place. */
export const formatCell = (row: number, column: number): string => `${formatColumn(column)}${row + 1}`;

/** The zero-based place of an address such as `B7` or `$B$7`, or undefined. */
export function parseCell(text: string): { row: number; column: number } | undefined {
  const match = /^\$?([A-Za-z]{1,3})\$?([1-9]\d{0,6})$/.exec(text.trim());
  if (!match) return undefined;
  const column = parseColumn(match[1] ?? "");
  const row = Number(match[2]) - 1;
  return column === undefined || row >= MAX_ROWS ? undefined : { row, column };
}

/** An area's address: `A3:H120`, or `A3` for a single cell. */
export function formatArea(area: Area): string {
  const first = formatCell(area.top, area.left);
  return area.top === area.bottom && area.left === area.right
    ? first
    : `${first}:${formatCell(area.bottom, area.right)}`;
}

/** The area of an address such as `A3:H120`, `A3`, `B:B` or `3:4`; corners in any order. */
export function parseArea(text: string): Area | undefined {
  const [first = "", second = first, more] = text.trim().replaceAll("$", "").split(":");
  if (more !== undefined) return undefined;
  const from = parseCorner(first);
  const to = parseCorner(second);
  if (!from || !to) return undefined;
  const wholeColumn = from.row === undefined && to.row === undefined && second !== first;
  const wholeRow = from.column === undefined && to.column === undefined && second !== first;
  const isCells = [from, to].every((corner) => corner.row !== undefined && corner.column !== undefined);
  if (!wholeColumn && !wholeRow && !isCells && first !== second) return undefined;
  if (!wholeColumn && !wholeRow && !isCells) return undefined;
  const rows = [from.row ?? 0, to.row ?? MAX_ROWS - 1];
  const columns = [from.column ?? 0, to.column ?? MAX_COLUMNS - 1];
  return {
    top: Math.min(...rows),
    left: Math.min(...columns),
    bottom: Math.max(...rows),
    right: Math.max(...columns),
  };
}

function parseCorner(text: string): { row?: number; column?: number } | undefined {
  const cell = parseCell(text);
  if (cell) return cell;
  const column = parseColumn(text);
  if (column !== undefined) return { column };
  const row = Number(text);
  return /^[1-9]\d{0,6}$/.test(text) && row <= MAX_ROWS ? { row: row - 1 } : undefined;
}

/** A sheet's name as formulas write it: quoted unless it is a plain word that cannot be taken for a cell. */
export function formatSheetName(name: string): string {
  const plain =
    /^[\p{L}_][\p{L}\p{N}_.]*$/u.test(name) &&
    !parseCell(name) &&
    !/^(?:true|false|r|c|r\d*c\d*)$/i.test(name);
  return plain ? name : `'${name.replaceAll("'", "''")}'`;
}

/** Whether an area holds a cell. */
export const areaHolds = (area: Area, row: number, column: number): boolean =>
  row >= area.top && row <= area.bottom && column >= area.left && column <= area.right;

/** Whether two areas share a cell. */
export const areasMeet = (a: Area, b: Area): boolean =>
  a.top <= b.bottom && b.top <= a.bottom && a.left <= b.right && b.left <= a.right;
