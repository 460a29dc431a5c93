import type { CellStyle, Worksheet } from "../../spreadsheet/workbook";
import { MAX_COLUMNS, MAX_ROWS } from "../../spreadsheet/address";
import { columnOf, rowOf } from "../../spreadsheet/workbook";
import type { Axis } from "./axis";
import { makeAxis } from "./axis";
import { fitRows } from "./row-fit";

/** Room to write below and beside what is there. */
const SPARE_ROWS = 200;
const SPARE_COLUMNS = 12;
const LEAST_ROWS = 500;
const LEAST_COLUMNS = 26;

/** Width of the digit 0 of the default font (Calibri 11) that column widths are counted in. */
const DIGIT_PIXELS = 7;
const PIXELS_PER_POINT = 4 / 3;

export interface SheetAxes {
  readonly rows: Axis;
  readonly columns: Axis;
}

/** How many rows and columns of a sheet hold something: cells, tables, merges or placed objects. */
export function measureExtent(sheet: Worksheet): { readonly rows: number; readonly columns: number } {
  let rows = 0;
  let columns = 0;
  for (const [key, cell] of sheet.cells) {
    if (cell.value === null && cell.formula === undefined) continue;
    rows = Math.max(rows, rowOf(key) + 1);
    columns = Math.max(columns, columnOf(key) + 1);
  }
  for (const { area } of [...sheet.tables, ...sheet.objects]) {
    rows = Math.max(rows, area.bottom + 1);
    columns = Math.max(columns, area.right + 1);
  }
  for (const area of sheet.merges) {
    rows = Math.max(rows, area.bottom + 1);
    columns = Math.max(columns, area.right + 1);
  }
  return { rows, columns };
}

/**
 * The axes of a sheet as far as the grid shows it: what is used, room beyond, and the place wanted.
 *
 * @param extent - rows and columns that hold something
 * @param wanted - a place that must be within, such as the active cell
 * @param styles - of the workbook: large and wrapped text makes rows without a height of their own higher
 */
export function layOutSheet(
  sheet: Worksheet,
  extent: { readonly rows: number; readonly columns: number },
  wanted: { readonly row: number; readonly column: number },
  styles: readonly CellStyle[],
): SheetAxes {
  const reach = (used: number, at: number, spare: number, least: number, most: number): number =>
    Math.min(most, Math.max(least, Math.ceil((Math.max(used, at + 1) + spare) / 50) * 50));
  const rowCount = reach(extent.rows, wanted.row, SPARE_ROWS, LEAST_ROWS, MAX_ROWS);
  const columnCount = Math.min(
    MAX_COLUMNS,
    Math.max(LEAST_COLUMNS, Math.max(extent.columns, wanted.column + 1) + SPARE_COLUMNS),
  );
  const heights = new Map(
    [...fitRows(sheet, styles), ...sheet.rowHeights].map(([row, points]) => [row, pointsToPixels(points)]),
  );
  const widths = new Map(
    [...sheet.columnWidths].map(([column, width]) => [column, charactersToPixels(width)]),
  );
  return {
    rows: makeAxis(rowCount, pointsToPixels(sheet.defaultRowHeight), heights),
    columns: makeAxis(columnCount, usualWidth(sheet.defaultColumnWidth), widths),
  };
}

const pointsToPixels = (points: number): number => Math.round(points * PIXELS_PER_POINT);
/**
 * A file without a default width means eight digits and padding, which the model gives as 8.43 digits; a width of
 * the file has the padding inside it (ECMA-376 part 1, 18.3.1.13 and 18.3.1.81).
 */
const usualWidth = (characters: number): number =>
  Math.abs((characters % 1) - 0.43) < 1e-6
    ? Math.round(characters * DIGIT_PIXELS) + 5
    : charactersToPixels(characters);
const charactersToPixels = (characters: number): number => Math.round(characters * DIGIT_PIXELS);
