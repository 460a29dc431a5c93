import type { Area } from "../../domain/area";
import type { CellValue } from "../../domain/cell-value";
import type { Block } from "../../ports/sheet";
import { readCellValue, readFormula } from "./cell-content";
import { officeErrorCode } from "./refusal";

/**
 * Cells asked for at once. Excel on the web refuses answers over 5 MB and every Excel 5 million cells; a cell comes
 * as value, type, formula and format, about 60 bytes when short.
 */
const CELLS_A_READ = 30_000;

/** Characters sent at once: requests over 5 MB are refused, and a character takes up to 3 bytes, or 6 escaped. */
const CHARACTERS_A_WRITE = 700_000;

/** The range of an area; queued, not loaded. */
export const rangeOf = (sheet: Excel.Worksheet, area: Area): Excel.Range =>
  sheet.getRangeByIndexes(area.top, area.left, area.bottom - area.top + 1, area.right - area.left + 1);

/** The area of a range whose `rowIndex,columnIndex,rowCount,columnCount` are loaded. */
export const areaOf = (range: Excel.Range): Area => ({
  top: range.rowIndex,
  left: range.columnIndex,
  bottom: range.rowIndex + range.rowCount - 1,
  right: range.columnIndex + range.columnCount - 1,
});

/** What {@link areaOf} needs. */
export const PLACE = "rowIndex,columnIndex,rowCount,columnCount";

interface Rows {
  values: CellValue[][];
  formats: string[][];
  formulas: (string | null)[][];
}

async function readRows(context: Excel.RequestContext, sheet: Excel.Worksheet, area: Area): Promise<Rows> {
  const range = rangeOf(sheet, area);
  range.load("values,valueTypes,formulas,numberFormat");
  await context.sync();
  const values: unknown[][] = range.values;
  const types: string[][] = range.valueTypes;
  const formulas: unknown[][] = range.formulas;
  const formats: unknown[][] = range.numberFormat;
  return {
    values: values.map((row, down) =>
      row.map((value, across) => readCellValue(value, types[down]?.[across] ?? "Empty")),
    ),
    formats: formats.map((row) => row.map(String)),
    formulas: formulas.map((row, down) =>
      row.map((formula, across) => readFormula(formula, values[down]?.[across])),
    ),
  };
}

/** Reads an area in bands of rows that Excel can answer at once: one sync a band. */
export async function readBlock(
  context: Excel.RequestContext,
  sheetName: string,
  area: Area,
): Promise<Block> {
  const sheet = context.workbook.worksheets.getItem(sheetName);
  const all: Rows = { values: [], formats: [], formulas: [] };
  let band = Math.max(1, Math.floor(CELLS_A_READ / (area.right - area.left + 1)));
  for (let top = area.top; top <= area.bottom;) {
    const bottom = Math.min(area.bottom, top + band - 1);
    try {
      const rows = await readRows(context, sheet, { ...area, top, bottom });
      all.values.push(...rows.values);
      all.formats.push(...rows.formats);
      all.formulas.push(...rows.formulas);
      top = bottom + 1;
    } catch (error) {
      // Long texts in cells: fewer rows at once.
      if (officeErrorCode(error) !== "ResponsePayloadSizeLimitExceeded" || band === 1) throw error;
      band = Math.ceil(band / 4);
    }
  }
  return { sheet: sheetName, area, ...all };
}

/** Bands of rows whose text fits into one request: first row and row behind the last. */
export const bandsOf = (
  rows: readonly (readonly (string | number | boolean | null)[])[],
): readonly (readonly [number, number])[] => {
  const bands: [number, number][] = [];
  let size = 0;
  rows.forEach((row, index) => {
    const more = row.reduce<number>((sum, cell) => sum + 8 + (typeof cell === "string" ? cell.length : 8), 0);
    const last = bands.at(-1);
    if (last && size + more <= CHARACTERS_A_WRITE) {
      last[1] = index + 1;
      size += more;
    } else {
      bands.push([index, index + 1]);
      size = more;
    }
  });
  return bands;
};
