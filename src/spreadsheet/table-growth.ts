import type { Area } from "../domain/area";
import { refusal, success, type Result } from "../domain/result";
import { areasMeet, MAX_ROWS } from "./address";
import { followMovedCells, growFormula } from "./formula-rewriting";
import { dataRows } from "./row-edit";
import { cellKey, type Cell, type Table } from "./workbook";
import type { SheetState, WorkbookState } from "./workbook-state";

/**
 * Whether rows must be put in below a table before it can grow: `0`, or how many; refused where those rows would
 * run through another table beside it, or where the sheet ends.
 */
export function makeRoomBelow(sheet: SheetState, table: Table, count: number): Result<number> {
  const { left, right, bottom } = table.area;
  if (bottom + count >= MAX_ROWS) return refusal("sheet-full", "The sheet has no more rows.");
  const needed: Area = { top: bottom + 1, bottom: bottom + count, left, right };
  const occupied =
    sheet.merges.some((merge) => areasMeet(merge, needed)) ||
    sheet.tables.some((other) => areasMeet(other.area, needed)) ||
    hasContent(sheet, needed);
  if (!occupied) return success(0);
  const torn = sheet.tables.find((other) => other.area.top <= bottom && other.area.bottom > bottom);
  if (torn) {
    return refusal(
      "no-room",
      `There is something below the table ${table.name}, and new rows would run through the table ${torn.name} ` +
        "beside it: move what is below first.",
    );
  }
  return success(count);
}

function hasContent(sheet: SheetState, area: Area): boolean {
  for (let row = area.top; row <= area.bottom; row++) {
    for (let column = area.left; column <= area.right; column++) {
      const cell = sheet.cells.get(cellKey(row, column));
      if (cell && (cell.formula !== undefined || cell.value !== null)) return true;
    }
  }
  return false;
}

/** The workbook after a table got `count` rows at its end: its area, and names and validations over whole columns. */
export function growTableState(
  state: WorkbookState,
  sheetName: string,
  tableName: string,
  count: number,
): WorkbookState {
  const home = state.sheets.find((sheet) => sheet.name === sheetName);
  const table = home?.tables.find((candidate) => candidate.name === tableName);
  if (!table) throw new RangeError(`no table ${tableName} on the sheet ${sheetName}`);
  const data = dataRows(table);
  const grow = (formula: string, sheet: string | undefined): string =>
    growFormula(formula, sheet, sheetName, data, count);
  return {
    sheets: state.sheets.map((sheet) => ({
      ...sheet,
      tables: sheet.tables.map((other) => ({
        ...other,
        area: other === table ? { ...table.area, bottom: table.area.bottom + count } : other.area,
        columns: other.columns.map((column) =>
          column.formula === undefined ? column : { ...column, formula: grow(column.formula, sheet.name) },
        ),
      })),
      validations: sheet.validations.map((validation) => ({
        ...validation,
        areas:
          sheet === home ? validation.areas.map((area) => growArea(area, data, count)) : validation.areas,
        ...(validation.formula1 !== undefined && { formula1: grow(validation.formula1, sheet.name) }),
        ...(validation.formula2 !== undefined && { formula2: grow(validation.formula2, sheet.name) }),
      })),
    })),
    names: state.names.map((name) => ({ ...name, formula: grow(name.formula, name.sheet) })),
  };
}

const growArea = (area: Area, data: Area, count: number): Area =>
  area.top === data.top && area.bottom === data.bottom && area.left >= data.left && area.right <= data.right
    ? { ...area, bottom: area.bottom + count }
    : area;

/**
 * The formulas that change because a table grew: they span a whole column of its data, or refer to its totals row,
 * which moves down.
 */
export function formulasThatGrow(
  sheets: readonly SheetState[],
  sheetName: string,
  table: Table,
  count: number,
): { readonly sheet: string; readonly key: number; readonly cell: Cell }[] {
  const data = dataRows(table);
  const grown: { sheet: string; key: number; cell: Cell }[] = [];
  const first = String(data.top + 1);
  const last = String(data.bottom + 1);
  const totals = { ...table.area, top: table.area.bottom };
  const totalsRow = String(totals.top + 1);
  for (const sheet of sheets) {
    for (const key of sheet.formulas) {
      const cell = sheet.cells.get(key);
      let formula = cell?.formula;
      if (!cell || formula === undefined) continue;
      if (formula.includes(":") && formula.includes(last) && formula.includes(first)) {
        formula = growFormula(formula, sheet.name, sheetName, data, count);
      }
      if (table.totalsRow && formula.includes(totalsRow)) {
        formula = followMovedCells(formula, sheet.name, sheetName, totals, count);
      }
      if (formula !== cell.formula) grown.push({ sheet: sheet.name, key, cell: { ...cell, formula } });
    }
  }
  return grown;
}
