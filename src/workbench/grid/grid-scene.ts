import type { Area } from "../../domain/area";
import type { Cell, Table, Worksheet } from "../../spreadsheet/workbook";
import { cellKey } from "../../spreadsheet/workbook";
import type { Axis } from "./axis";
import type { GridModel } from "./grid-model";
import type { Place } from "./selection";
import { holds, mergeAt } from "./selection";
import { layOutSheet, measureExtent } from "./sheet-axes";

/** One sheet of the model as the grid shows it now: its cells with their places. */
export class GridScene {
  readonly rows: Axis;
  readonly columns: Axis;
  readonly lastUsed: Place;

  constructor(
    readonly model: GridModel,
    private readonly name: string,
    active: Place,
  ) {
    const { sheet } = this;
    const extent = measureExtent(sheet);
    const axes = layOutSheet(sheet, extent, active, model.styles);
    this.rows = axes.rows;
    this.columns = axes.columns;
    this.lastUsed = { row: Math.max(0, extent.rows - 1), column: Math.max(0, extent.columns - 1) };
  }

  /** The sheet as it is now: an edit of its rows or tables replaces the object. */
  get sheet(): Worksheet {
    const sheet = this.model.sheets.find(({ name }) => name === this.name);
    if (sheet === undefined) throw new RangeError(`no sheet ${this.name}`);
    return sheet;
  }

  get merges(): readonly Area[] {
    return this.sheet.merges;
  }

  get frozen(): { readonly rows: number; readonly columns: number } {
    return {
      rows: Math.min(this.sheet.frozen.rows, this.rows.count - 1),
      columns: Math.min(this.sheet.frozen.columns, this.columns.count - 1),
    };
  }

  cellAt({ row, column }: Place): Cell | undefined {
    return this.sheet.cells.get(cellKey(row, column));
  }

  isFilled(row: number, column: number): boolean {
    const cell = this.cellAt({ row, column });
    return cell !== undefined && (cell.formula !== undefined || (cell.value !== null && cell.value !== ""));
  }

  /** Index of the style a cell is drawn with, whether it exists or not. */
  styleAt(place: Place): number {
    return this.cellAt(place)?.style ?? this.sheet.columnStyles.get(place.column) ?? 0;
  }

  tableAt(place: Place): Table | undefined {
    return this.sheet.tables.find(({ area }) => holds(area, place));
  }

  /** Width and height of a cell, of the whole merged area where it begins one; CSS pixels. */
  sizeOf(place: Place): { readonly width: number; readonly height: number } {
    const merge = mergeAt(place, this.merges);
    if (merge === undefined)
      return { width: this.columns.sizeOf(place.column), height: this.rows.sizeOf(place.row) };
    return {
      width: this.columns.startOf(merge.right + 1) - this.columns.startOf(merge.left),
      height: this.rows.startOf(merge.bottom + 1) - this.rows.startOf(merge.top),
    };
  }
}
