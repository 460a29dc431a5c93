import type { Cell, DefinedName, Worksheet } from "./workbook";

/**
 * One sheet as the model keeps it. Everything but the two maps and the set is replaced, never changed in place, so
 * that an undo can put the earlier state back.
 */
export interface SheetState extends Worksheet {
  readonly cells: Map<number, Cell>;
  /** Keys of the cells that hold a formula. */
  readonly formulas: Set<number>;
  /** What the opened file holds at each present place that was written since; undefined for a cell it lacks. */
  readonly baseline: Map<number, Cell | undefined>;
}

/** The workbook at one moment. */
export interface WorkbookState {
  readonly sheets: readonly SheetState[];
  readonly names: readonly DefinedName[];
}

/** A sheet of the opened file, ready to be edited. */
export function openSheet(sheet: Worksheet): SheetState {
  const cells = new Map(sheet.cells);
  const formulas = new Set<number>();
  for (const [key, cell] of cells) if (cell.formula !== undefined) formulas.add(key);
  return { ...sheet, cells, formulas, baseline: new Map() };
}

/** A new empty sheet. */
export function emptySheet(name: string): SheetState {
  return openSheet({
    name,
    visibility: "visible",
    kind: "cells",
    cells: new Map(),
    tables: [],
    merges: [],
    objects: [],
    validations: [],
    comments: [],
    frozen: { rows: 0, columns: 0 },
    columnWidths: new Map(),
    defaultColumnWidth: 8.43,
    rowHeights: new Map(),
    defaultRowHeight: 15,
    columnStyles: new Map(),
    showGridLines: true,
    isProtected: false,
  });
}

/** Puts a cell into a sheet, or takes it out, and remembers what the file had there. */
export function storeCell(sheet: SheetState, key: number, cell: Cell | undefined): void {
  if (!sheet.baseline.has(key)) sheet.baseline.set(key, sheet.cells.get(key));
  if (cell) sheet.cells.set(key, cell);
  else sheet.cells.delete(key);
  if (cell?.formula === undefined) sheet.formulas.delete(key);
  else sheet.formulas.add(key);
}

/** A cell that keeps only its style; undefined where that is the default one. */
export const styleOnly = (style: number): Cell | undefined =>
  style === 0 ? undefined : { value: null, style };

/** Whether two cells would be saved alike. */
export function sameCell(a: Cell | undefined, b: Cell | undefined): boolean {
  if (a === b) return true;
  if (!a || !b) return false;
  return (
    a.formula === b.formula &&
    a.style === b.style &&
    a.array === b.array &&
    sameValue(a.value, b.value) &&
    sameArea(a.spill, b.spill)
  );
}

/** Whether two cell values are the same; two errors are where their codes are. */
export function sameValue(a: Cell["value"], b: Cell["value"]): boolean {
  if (a === b) return true;
  return typeof a === "object" && typeof b === "object" && a !== null && b !== null && a.error === b.error;
}

function sameArea(a: Cell["spill"], b: Cell["spill"]): boolean {
  if (a === b) return true;
  if (!a || !b) return false;
  return a.top === b.top && a.left === b.left && a.bottom === b.bottom && a.right === b.right;
}
