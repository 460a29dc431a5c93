import type { Area } from "../domain/area";
import { refusal, success, type Result } from "../domain/result";
import { shiftFormula } from "./formula-rewriting";
import { shiftArea, shiftRow, shiftRows, type RowShift } from "./row-shift";
import {
  cellKey,
  columnOf,
  rowOf,
  type Cell,
  type PlacedObject,
  type Table,
  type Validation,
} from "./workbook";
import { styleOnly, type SheetState, type WorkbookState } from "./workbook-state";

/** Whether these rows may be put in or taken out, or the reason why not. */
export function checkRowEdit(sheet: SheetState, shift: RowShift): Result<true> {
  const last = shift.at + shift.count - 1;
  for (const cell of sheet.cells.values()) {
    if (cell.array !== "fixed" || !cell.spill) continue;
    const rows = shiftRows(cell.spill.top, cell.spill.bottom, shift);
    if (rows && rows.bottom - rows.top !== cell.spill.bottom - cell.spill.top) {
      return refusal("array-cut", "These rows cut through an array formula: clear the array formula first.");
    }
  }
  if (shift.kind === "insert-rows") return success(true);
  for (const table of sheet.tables) {
    const { top, bottom } = table.area;
    if (last < top || shift.at > bottom || (shift.at <= top && last >= bottom)) continue;
    if (table.headerRow && shift.at <= top) {
      return refusal(
        "header-row",
        `Row ${top + 1} holds the headings of the table ${table.name}: delete rows below it.`,
      );
    }
    const data = dataRows(table);
    if (shift.at <= data.top && last >= data.bottom) {
      return refusal("last-row", `The table ${table.name} keeps at least one row: clear its cells instead.`);
    }
  }
  return success(true);
}

/** A table's data rows, without header and totals. */
export function dataRows(table: Table): Area {
  return {
    ...table.area,
    top: table.area.top + (table.headerRow ? 1 : 0),
    bottom: table.area.bottom - (table.totalsRow ? 1 : 0),
  };
}

/** The workbook after rows of one sheet moved: cells, references everywhere, and all that is placed by row. */
export function shiftWorkbookRows(state: WorkbookState, sheetName: string, shift: RowShift): WorkbookState {
  return {
    sheets: state.sheets.map((sheet) =>
      sheet.name === sheetName ? shiftSheet(sheet, shift) : followSheet(sheet, sheetName, shift),
    ),
    names: state.names.map((name) => {
      const formula = shiftFormula(name.formula, name.sheet, sheetName, shift);
      return formula === name.formula ? name : { ...name, formula };
    }),
  };
}

/** Another sheet, whose formulas follow the rows that moved. */
function followSheet(sheet: SheetState, edited: string, shift: RowShift): SheetState {
  const follow = (formula: string): string => shiftFormula(formula, sheet.name, edited, shift);
  let cells: Map<number, Cell> | undefined;
  const baseline = new Map(sheet.baseline);
  for (const key of sheet.formulas) {
    const cell = sheet.cells.get(key);
    if (!cell?.formula?.includes("!")) continue;
    const formula = follow(cell.formula);
    if (formula === cell.formula) continue;
    cells ??= new Map(sheet.cells);
    cells.set(key, { ...cell, formula });
    const before = baseline.get(key);
    if (before?.formula !== undefined) baseline.set(key, { ...before, formula: follow(before.formula) });
  }
  const tables = sheet.tables.map((table) => shiftTable(table, table.area, follow));
  const validations = sheet.validations.map((validation) => followValidation(validation, follow));
  return { ...sheet, cells: cells ?? sheet.cells, baseline, tables, validations };
}

function shiftSheet(sheet: SheetState, shift: RowShift): SheetState {
  const follow = (formula: string): string => shiftFormula(formula, sheet.name, sheet.name, shift);
  const area = (before: Area): Area | undefined => shiftArea(before, shift);
  const torn = tornSpills(sheet, shift);
  const shiftCells = <C extends Cell | undefined>(
    cells: ReadonlyMap<number, C>,
  ): Map<number, Cell | undefined> => {
    const shifted = new Map<number, Cell | undefined>();
    for (const [key, cell] of cells) {
      const row = shiftRow(rowOf(key), shift);
      if (row === undefined) continue;
      shifted.set(cellKey(row, columnOf(key)), cell && shiftCell(cell, key, torn, shift, follow));
    }
    return shifted;
  };
  const cells = new Map<number, Cell>();
  for (const [key, cell] of shiftCells(sheet.cells)) if (cell) cells.set(key, cell);
  const baseline = shiftCells(sheet.baseline);
  for (const [key, cell] of sheet.cells) {
    const row = cell.spilledFrom && shiftRow(rowOf(key), shift);
    if (row === undefined) continue;
    // A cell that a torn spill leaves behind is emptied: the file still has its value there.
    const place = cellKey(row, columnOf(key));
    if (!baseline.has(place) && cells.get(place)?.value !== cell.value) baseline.set(place, cell);
  }
  const formulas = new Set<number>();
  for (const [key, cell] of cells) if (cell.formula !== undefined) formulas.add(key);
  return {
    ...sheet,
    cells,
    formulas,
    baseline,
    tables: sheet.tables.flatMap((table) => {
      const place = area(table.area);
      return place ? [shiftTable(table, place, follow)] : [];
    }),
    merges: sheet.merges.flatMap((merge) => area(merge) ?? []),
    objects: sheet.objects.map((object) => shiftObject(object, shift)),
    validations: sheet.validations.flatMap((validation) => {
      const areas = validation.areas.flatMap((before) => area(before) ?? []);
      return areas.length > 0 ? [followValidation({ ...validation, areas }, follow)] : [];
    }),
    comments: sheet.comments.flatMap((comment) => {
      const row = shiftRow(comment.row, shift);
      return row === undefined ? [] : [{ ...comment, row }];
    }),
    frozen: { ...sheet.frozen, rows: shiftFrozen(sheet.frozen.rows, shift) },
    rowHeights: new Map(
      [...sheet.rowHeights].flatMap(([before, height]) => {
        const row = shiftRow(before, shift);
        return row === undefined ? [] : [[row, height] as const];
      }),
    ),
  };
}

/** Anchors whose spill the edit reaches into: they spill anew when calculated. */
function tornSpills(sheet: SheetState, shift: RowShift): Set<number> {
  const torn = new Set<number>();
  for (const [key, cell] of sheet.cells) {
    if (!cell.spill || cell.array === "fixed") continue;
    const after = shiftArea(cell.spill, shift);
    if (!after || after.bottom - after.top !== cell.spill.bottom - cell.spill.top) torn.add(key);
  }
  return torn;
}

function shiftCell(
  cell: Cell,
  key: number,
  torn: ReadonlySet<number>,
  shift: RowShift,
  follow: (formula: string) => string,
): Cell | undefined {
  if (cell.spilledFrom) {
    const { row, column } = cell.spilledFrom;
    if (torn.has(cellKey(row, column))) return styleOnly(cell.style);
    const anchorRow = shiftRow(row, shift);
    return anchorRow === undefined
      ? styleOnly(cell.style)
      : { ...cell, spilledFrom: { row: anchorRow, column } };
  }
  if (cell.formula === undefined) return cell;
  const formula = follow(cell.formula);
  if (!cell.spill) return formula === cell.formula ? cell : { ...cell, formula };
  const { spill, ...rest } = cell;
  const place = torn.has(key) ? undefined : shiftArea(spill, shift);
  return place ? { ...rest, formula, spill: place } : { ...rest, formula };
}

function shiftTable(table: Table, area: Area, follow: (formula: string) => string): Table {
  const columns = table.columns.map((column) =>
    column.formula === undefined ? column : { ...column, formula: follow(column.formula) },
  );
  return { ...table, area, columns };
}

function followValidation(validation: Validation, follow: (formula: string) => string): Validation {
  return {
    ...validation,
    ...(validation.formula1 !== undefined && { formula1: follow(validation.formula1) }),
    ...(validation.formula2 !== undefined && { formula2: follow(validation.formula2) }),
  };
}

/** A chart or picture stays on the sheet even where all the rows under it are deleted, as thin as a line. */
function shiftObject(object: PlacedObject, shift: RowShift): PlacedObject {
  const place = shiftArea(object.area, shift);
  return { ...object, area: place ?? { ...object.area, top: shift.at, bottom: shift.at } };
}

function shiftFrozen(rows: number, shift: RowShift): number {
  if (shift.at >= rows) return rows;
  return shift.kind === "insert-rows" ? rows + shift.count : rows - Math.min(shift.count, rows - shift.at);
}
