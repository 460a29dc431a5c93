import { translateFormulaToA1, translateFormulaToR1C1, stringifyA1Ref } from "@borgar/fx";
import { cellAt, isFilled, usedArea } from "../../../../src/adapters/memory/memory-workbook";
import type {
  MemoryTable,
  MemoryWorkbook,
  MemoryWorksheet,
} from "../../../../src/adapters/memory/memory-workbook";
import type { Area } from "../../../../src/domain/area";
import { ERROR_CODES, isCellError } from "../../../../src/domain/cell-value";
import type { ErrorCode } from "../../../../src/domain/cell-value";
import { OfficeError } from "./office-error";

/** Where a range stands. */
export interface RangeTarget {
  readonly sheet: MemoryWorksheet;
  readonly area: Area;
}

export interface TableTarget {
  readonly sheet: MemoryWorksheet;
  readonly table: MemoryTable;
}

export interface ModelSeries {
  name: string;
  x?: RangeTarget;
  y?: RangeTarget;
}

export interface ModelChart {
  readonly sheet: MemoryWorksheet;
  name: string;
  type: string;
  title: string;
  xTitle: string;
  yTitle: string;
  minimum?: number;
  dateFormat?: string;
  legend: boolean;
  place?: Area;
  series: ModelSeries[];
}

export interface ModelPart {
  readonly id: string;
  xml: string;
}

/** A change of cells as Excel tells of it. */
export interface ModelChange {
  readonly sheet: MemoryWorksheet;
  readonly area: Area;
}

/** What one column of cells was given beside its contents. */
export interface ModelDress {
  font?: string;
  width?: number;
  rule?: unknown;
  alert?: unknown;
}

/** The workbook of the stand-in, and how Excel enters, moves and protects cells. It does not calculate. */
export class ExcelModel {
  charts: ModelChart[] = [];
  parts: ModelPart[] = [];
  enableEvents = true;
  /** fonts, widths and validations by sheet and area */
  readonly dress = new Map<string, ModelDress>();
  /** The active sheet and the selection. */
  shown = "";
  selected: Area | undefined;
  readonly protectedSheets = new Set<MemoryWorksheet>();
  readonly changed: (change: ModelChange) => void;
  readonly workbook: MemoryWorkbook;

  constructor(workbook: MemoryWorkbook, changed: (change: ModelChange) => void) {
    this.workbook = workbook;
    this.changed = changed;
  }

  sheet(key: string): MemoryWorksheet | null {
    return (
      this.workbook.sheets.find(
        (each) => each.name.toLowerCase() === key.toLowerCase() || this.idOf(each) === key,
      ) ?? null
    );
  }

  idOf(sheet: MemoryWorksheet): string {
    return `{sheet-${this.workbook.sheets.indexOf(sheet)}}`;
  }

  addSheet(name: string): MemoryWorksheet {
    if (name === "" || name.length > 31 || /[[\]:*?/\\]/.test(name)) throw new OfficeError("InvalidArgument");
    if (this.sheet(name)) throw new OfficeError("ItemAlreadyExists");
    const sheet: MemoryWorksheet = { name, hidden: false, rows: [], tables: [] };
    this.workbook.sheets.push(sheet);
    return sheet;
  }

  /** What cells were given beside their contents, to be added to. */
  dressOf({ sheet, area }: RangeTarget): ModelDress {
    const key = `${sheet.name}!${area.top}:${area.left}:${area.bottom}:${area.right}`;
    const known = this.dress.get(key) ?? {};
    this.dress.set(key, known);
    return known;
  }

  requireWritable(sheet: MemoryWorksheet): void {
    if (this.protectedSheets.has(sheet)) throw new OfficeError("AccessDenied");
  }

  tell(sheet: MemoryWorksheet, area: Area): void {
    if (this.enableEvents) this.changed({ sheet, area });
  }

  /** Enters what an add-in gave: `null` leaves the cell, text is read as if typed. */
  enter(sheet: MemoryWorksheet, row: number, column: number, entry: unknown): void {
    if (entry === null) return;
    const cell = cellAt(sheet, row, column);
    cell.formula = null;
    cell.value = null;
    if (typeof entry === "number" || typeof entry === "boolean") cell.value = entry;
    else if (typeof entry !== "string")
      throw new OfficeError("InvalidArgument", "A cell takes text, numbers, truth values.");
    else if (entry.startsWith("'")) cell.value = entry.slice(1);
    // A formula typed with + or @ becomes one with =.
    else if (/^[=+@-]./.test(entry) && Number.isNaN(Number(entry))) cell.formula = entry;
    else if (entry !== "") cell.value = readTyped(entry);
  }

  pushDown(sheet: MemoryWorksheet, columns: Area, count: number): void {
    for (let row = sheet.rows.length - 1; row >= columns.top; row--)
      this.#move(sheet, columns, row, row + count);
  }

  pullUp(sheet: MemoryWorksheet, area: Area): void {
    const count = area.bottom - area.top + 1;
    this.clear(sheet, area);
    for (let row = area.bottom + 1; row < sheet.rows.length; row++) this.#move(sheet, area, row, row - count);
    for (const table of sheet.tables) {
      if (table.area.top <= area.top && table.area.bottom >= area.bottom && table.area.left === area.left) {
        table.area = { ...table.area, bottom: table.area.bottom - count };
      }
    }
  }

  clear(sheet: MemoryWorksheet, area: Area): void {
    for (let row = area.top; row <= area.bottom; row++) {
      for (let column = area.left; column <= area.right; column++) {
        Object.assign(cellAt(sheet, row, column), { value: null, formula: null, format: "General" });
      }
    }
  }

  usedWithin({ sheet, area }: RangeTarget): RangeTarget | null {
    const rows: MemoryWorksheet["rows"] = [];
    for (let row = area.top; row <= Math.min(area.bottom, sheet.rows.length - 1); row++) {
      rows[row] = (sheet.rows[row] ?? []).map((cell, column) =>
        column >= area.left && column <= area.right ? cell : undefined,
      );
    }
    const used = usedArea({ ...sheet, rows });
    return used ? { sheet, area: used } : null;
  }

  #move(sheet: MemoryWorksheet, columns: Area, from: number, to: number): void {
    for (let column = columns.left; column <= columns.right; column++) {
      const cell = sheet.rows[from]?.[column];
      if (!cell || (!isFilled(cell) && cell.format === "General")) continue;
      Object.assign(cellAt(sheet, to, column), cell);
      Object.assign(cell, { value: null, formula: null, format: "General" });
    }
  }
}

const isErrorCode = (text: string): text is ErrorCode => (ERROR_CODES as readonly string[]).includes(text);

/** What Excel makes of typed text: a number, a share, a date, a time, a truth value, an error, or text. */
const readTyped = (text: string): number | boolean | string | { error: ErrorCode } => {
  if (isErrorCode(text)) return { error: text };
  if (/^(true|false)$/i.test(text)) return text.toLowerCase() === "true";
  if (/^\d+(\.\d+)?%$/.test(text)) return Number.parseFloat(text) / 100;
  if (/^\d{1,2}\/\d{1,2}(\/\d{2,4})?$/.test(text)) return 46302;
  if (/^\d{1,2}:\d{2}$/.test(text)) return 0.0625;
  return text.trim() !== "" && !Number.isNaN(Number(text)) ? Number(text) : text;
};

/** The cells of a range, row by row. */
const cellsOf = <T>(
  { sheet, area }: RangeTarget,
  look: (cell: MemoryWorksheet["rows"][number][number], row: number, column: number) => T,
): T[][] =>
  Array.from({ length: area.bottom - area.top + 1 }, (_, down) =>
    Array.from({ length: area.right - area.left + 1 }, (__, across) => {
      const [row, column] = [area.top + down, area.left + across];
      return look(sheet.rows[row]?.[column], row, column);
    }),
  );

const shown = (value: unknown): unknown => (isCellError(value) ? value.error : (value ?? ""));

/** Range.values: an empty cell is "", an error its text. A formula without a value counts as 0. */
export const valuesOf = (range: RangeTarget): unknown[][] =>
  cellsOf(range, (cell) => (cell?.formula && cell.value === null ? 0 : shown(cell?.value ?? null)));

export const valueTypesOf = (range: RangeTarget): string[][] =>
  cellsOf(range, (cell) => {
    if (!cell || !isFilled(cell)) return "Empty";
    if (isCellError(cell.value)) return "Error";
    return typeof cell.value === "string" ? "String" : typeof cell.value === "boolean" ? "Boolean" : "Double";
  });

export const formulasOf = (range: RangeTarget): unknown[][] =>
  cellsOf(range, (cell) => cell?.formula ?? shown(cell?.value ?? null));

const addressOf = (row: number, column: number): string =>
  stringifyA1Ref({ range: { top: row, left: column, bottom: row, right: column } });

export const relativeFormulasOf = (range: RangeTarget): unknown[][] =>
  cellsOf(range, (cell, row, column) =>
    cell?.formula ? translateFormulaToR1C1(cell.formula, addressOf(row, column)) : shown(cell?.value ?? null),
  );

/** A relative formula as it reads in this cell; anything else as it is. */
export const placeFormula = (entry: unknown, row: number, column: number): unknown =>
  typeof entry === "string" && entry.startsWith("=")
    ? translateFormulaToA1(entry, addressOf(row, column))
    : entry;
