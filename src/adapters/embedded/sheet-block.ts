import type { Area } from "../../domain/area";
import type { CellValue } from "../../domain/cell-value";
import type { Block, CellInput } from "../../ports/sheet";
import type { CellContent, OpenWorkbook } from "../../spreadsheet/open-workbook";
import type { CellStyle, Worksheet } from "../../spreadsheet/workbook";
import { cellKey } from "../../spreadsheet/workbook";

/** Days between the two date systems: 1 January 1904 is serial 1462 of the system that begins in 1900. */
const DAYS_TO_1904 = 1462;

/**
 * The cells of an area as the port gives them. Dates of a workbook that counts from 1904 are given as serials of
 * the 1900 system, so that everyone behind the port counts one way.
 */
export function readBlock(workbook: OpenWorkbook, sheet: Worksheet, area: Area): Block {
  const values: CellValue[][] = [];
  const formats: string[][] = [];
  const formulas: (string | null)[][] = [];
  for (let row = area.top; row <= area.bottom; row += 1) {
    const [rowValues, rowFormats, rowFormulas]: [CellValue[], string[], (string | null)[]] = [[], [], []];
    for (let column = area.left; column <= area.right; column += 1) {
      const cell = sheet.cells.get(cellKey(row, column));
      const style = workbook.styles[cell?.style ?? sheet.columnStyles.get(column) ?? 0];
      const format = style?.numberFormat ?? "General";
      const value = cell?.value ?? null;
      const isLate = workbook.date1904 && typeof value === "number" && value >= 1 && showsDate(format);
      rowValues.push(isLate ? value + DAYS_TO_1904 : value);
      rowFormats.push(format);
      rowFormulas.push(cell?.formula === undefined ? null : `=${cell.formula}`);
    }
    values.push(rowValues);
    formats.push(rowFormats);
    formulas.push(rowFormulas);
  }
  return { sheet: sheet.name, area, values, formats, formulas };
}

/** What the workbook stores for an input: `""` is an empty cell, dates are counted its own way. */
export function storedContent(
  workbook: OpenWorkbook,
  input: CellInput,
  style: CellStyle | undefined,
): CellContent | undefined {
  if (input === "") return null;
  const isLate =
    workbook.date1904 && typeof input === "number" && showsDate(style?.numberFormat ?? "General");
  return isLate && input > DAYS_TO_1904 ? input - DAYS_TO_1904 : input;
}

/** Whether a number format shows a calendar day: `d` or `y` outside quotation marks and brackets. */
const showsDate = (format: string): boolean =>
  /[dy]/i.test(format.replaceAll(/"[^"]*"|\[[^\]]*\]|\\.|_.|\*./g, ""));
