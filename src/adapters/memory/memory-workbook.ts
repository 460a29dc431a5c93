import type { Area } from "../../domain/area";
import type { CellValue } from "../../domain/cell-value";
import type { ChartRequest, NewColumn } from "../../ports/sheet";

/** A cell as a test describes it: a value, or a formula with the value that it is taken to have. */
export type DescribedCell = CellValue | { readonly formula: string; readonly value: CellValue };

/** A table as a test describes it; its cells stand in the sheet's rows. */
export interface DescribedTable {
  readonly name: string;
  /** with header and totals row */
  readonly area: Area;
  readonly totalsRow?: boolean;
  /** calculated columns: heading and formula */
  readonly calculated?: Readonly<Record<string, string>>;
}

/** A sheet as a test describes it: rows from A1 on. */
export interface DescribedSheet {
  readonly name: string;
  readonly hidden?: boolean;
  readonly rows: readonly (readonly DescribedCell[])[];
  readonly formats?: readonly { readonly area: Area; readonly format: string }[];
  readonly tables?: readonly DescribedTable[];
}

export interface MemoryCell {
  value: CellValue;
  formula: string | null;
  format: string;
}

export interface MemoryTable {
  name: string;
  area: Area;
  totalsRow: boolean;
  calculated: Readonly<Record<string, string>>;
  /** columns as they were asked for, where the table was made through the port */
  columns?: readonly NewColumn[];
}

export interface MemoryWorksheet {
  name: string;
  hidden: boolean;
  /** rows of cells, holes where nothing was ever written */
  rows: (MemoryCell | undefined)[][];
  tables: MemoryTable[];
}

/** Everything the memory host holds: plain data, so that a step back is a copy of it. */
export interface MemoryWorkbook {
  sheets: MemoryWorksheet[];
  settings: Record<string, string>;
  charts: ChartRequest[];
}

/** Finds the cell, making an empty one of format General where there is none. */
export const cellAt = (sheet: MemoryWorksheet, row: number, column: number): MemoryCell => {
  const cells = (sheet.rows[row] ??= []);
  return (cells[column] ??= { value: null, formula: null, format: "General" });
};

/** Whether the cell holds anything. */
export const isFilled = (cell: MemoryCell | undefined): boolean =>
  cell !== undefined && (cell.value !== null || cell.formula !== null);

/** The smallest area with every filled cell, or undefined for an empty sheet. */
export const usedArea = (sheet: MemoryWorksheet): Area | undefined => {
  let used: Area | undefined;
  sheet.rows.forEach((cells, row) => {
    cells.forEach((cell, column) => {
      if (!isFilled(cell)) return;
      used = {
        top: used?.top ?? row,
        left: Math.min(used?.left ?? column, column),
        bottom: row,
        right: Math.max(used?.right ?? column, column),
      };
    });
  });
  return used;
};

const describeSheet = (described: DescribedSheet): MemoryWorksheet => {
  const sheet: MemoryWorksheet = {
    name: described.name,
    hidden: described.hidden ?? false,
    rows: [],
    tables: (described.tables ?? []).map((table) => ({
      name: table.name,
      area: table.area,
      totalsRow: table.totalsRow ?? false,
      calculated: table.calculated ?? {},
    })),
  };
  described.rows.forEach((cells, row) => {
    cells.forEach((content, column) => {
      if (content === null) return;
      const cell = cellAt(sheet, row, column);
      const isFormula = typeof content === "object" && "formula" in content;
      cell.value = isFormula ? content.value : content;
      cell.formula = isFormula ? content.formula : null;
    });
  });
  for (const { area, format } of described.formats ?? []) {
    for (let row = area.top; row <= area.bottom; row++) {
      for (let column = area.left; column <= area.right; column++) cellAt(sheet, row, column).format = format;
    }
  }
  return sheet;
};

/** The workbook of a description. */
export const describeWorkbook = (sheets: readonly DescribedSheet[]): MemoryWorkbook => ({
  sheets: sheets.map(describeSheet),
  settings: {},
  charts: [],
});
