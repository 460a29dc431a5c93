import type { Area } from "../domain/area";
import type { CellValue } from "../domain/cell-value";
import type { Block } from "../ports/sheet";
import { isBlank } from "./cell-text";

/** The cells of one sheet by their place in the sheet; outside its area every cell is empty. */
export interface GridCells {
  readonly sheet: string;
  readonly area: Area;
  value(row: number, column: number): CellValue;
  format(row: number, column: number): string;
  formula(row: number, column: number): string | null;
  isBlank(row: number, column: number): boolean;
}

/** Reads a block of the Sheet port by places of the sheet. */
export function gridCells(block: Block): GridCells {
  const { top, left } = block.area;
  const value = (row: number, column: number): CellValue => block.values[row - top]?.[column - left] ?? null;
  return {
    sheet: block.sheet,
    area: block.area,
    value,
    format: (row, column) => block.formats[row - top]?.[column - left] ?? "General",
    formula: (row, column) => block.formulas[row - top]?.[column - left] ?? null,
    isBlank: (row, column) => isBlank(value(row, column)),
  };
}
