import type { CellValue } from "../domain/cell-value";
import type { Area } from "../domain/area";

/** What a cell of the model holds. A cell that was never written is absent from its sheet. */
export interface Cell {
  readonly value: CellValue;
  /**
   * The formula as she would type it, without its `=`: `BRAILLE.CELLS(A2)`, `SUM(Probes[Words])`. The file's own
   * spelling (`_xldudf_…`, `_xlfn.…`) stays in the xlsx adapter.
   */
  readonly formula?: string;
  /** Index into {@link Workbook.styles}. */
  readonly style: number;
  /** For the anchor of an array formula: the area its result filled when last calculated. */
  readonly spill?: Area;
  /** `dynamic` spills as far as its result needs; `fixed` is an array formula of the file with a given area. */
  readonly array?: "dynamic" | "fixed";
  /** For a cell filled by a spill: the anchor's place. Such a cell has no formula of its own. */
  readonly spilledFrom?: { readonly row: number; readonly column: number };
  /** The formula uses a function outside the allow-list: the value is the file's, not recalculated. */
  readonly notRecalculated?: boolean;
}

/** How cells look, as far as the workbench draws it. Everything else stays untouched in the file. */
export interface CellStyle {
  readonly numberFormat: string;
  readonly font?: {
    readonly name?: string;
    readonly size?: number;
    readonly bold?: boolean;
    readonly italic?: boolean;
    readonly underline?: boolean;
    readonly strike?: boolean;
    readonly color?: string;
  };
  /** Solid fill, `#rrggbb`. */
  readonly fill?: string;
  readonly borders?: Partial<
    Record<"top" | "right" | "bottom" | "left", { readonly style: string; readonly color?: string }>
  >;
  readonly horizontal?: "left" | "center" | "right" | "fill" | "justify";
  readonly vertical?: "top" | "center" | "bottom";
  readonly wrap?: boolean;
  readonly indent?: number;
}

export interface TableColumn {
  readonly name: string;
  /** Calculated column: the formula that new rows get. */
  readonly formula?: string;
  readonly totalsLabel?: string;
}

export interface Table {
  readonly name: string;
  /** With header and totals row. */
  area: Area;
  readonly headerRow: boolean;
  readonly totalsRow: boolean;
  columns: readonly TableColumn[];
  /** Style name of the file, for banding. */
  readonly style?: string;
}

/** A chart, picture or drawing that the file has: kept as it is, drawn as a marked place. */
export interface PlacedObject {
  readonly kind: "chart" | "picture" | "shape";
  readonly title?: string;
  area: Area;
}

export interface Validation {
  areas: readonly Area[];
  /** `list`, `whole`, `decimal`, `date`, `time`, `textLength`, `custom` */
  readonly type: string;
  readonly operator?: string;
  readonly formula1?: string;
  readonly formula2?: string;
  readonly allowBlank: boolean;
  /** Whether an entry that breaks the rule is refused; otherwise the rule is only advice. */
  readonly refuses?: boolean;
  readonly errorMessage?: string;
  readonly promptMessage?: string;
}

export interface Comment {
  row: number;
  column: number;
  readonly author?: string;
  readonly text: string;
}

export interface DefinedName {
  readonly name: string;
  /** Sheet it is local to, or undefined for the whole workbook. */
  readonly sheet?: string;
  /** Formula without `=`, such as `'My sheet'!$A$1:$A$9`. */
  formula: string;
  readonly hidden: boolean;
}

/** One sheet. Rows and columns are zero-based throughout the model. */
export interface Worksheet {
  readonly name: string;
  readonly visibility: "visible" | "hidden" | "veryHidden";
  /** A chart sheet or another kind that has no cells: shown as a tab, not editable. */
  readonly kind: "cells" | "other";
  /** Cells that exist, keyed by {@link cellKey}. */
  readonly cells: ReadonlyMap<number, Cell>;
  readonly tables: readonly Table[];
  readonly merges: readonly Area[];
  readonly objects: readonly PlacedObject[];
  readonly validations: readonly Validation[];
  readonly comments: readonly Comment[];
  readonly frozen: { readonly rows: number; readonly columns: number };
  /** Width in characters of the default font by column; hidden columns are 0. */
  readonly columnWidths: ReadonlyMap<number, number>;
  readonly defaultColumnWidth: number;
  /** Height in points by row; hidden rows are 0. */
  readonly rowHeights: ReadonlyMap<number, number>;
  readonly defaultRowHeight: number;
  /** Whole-column and whole-row styles for cells that do not exist. */
  readonly columnStyles: ReadonlyMap<number, number>;
  readonly showGridLines: boolean;
  readonly isProtected: boolean;
}

/** Row and column of a cell as one number: sheets have at most 1,048,576 rows and 16,384 columns. */
export const cellKey = (row: number, column: number): number => row * 16384 + column;
/** The row of a {@link cellKey}. */
export const rowOf = (key: number): number => Math.floor(key / 16384);
/** The column of a {@link cellKey}. */
export const columnOf = (key: number): number => key % 16384;

/**
 * An edit of the workbook's structure, in the order made. A save applies them to the file as it was opened and
 * then writes the changed cells; undoing takes the last one off again. `row` positions are those at the moment of
 * the edit.
 */
export type StructuralEdit =
  | { readonly kind: "insert-rows"; readonly sheet: string; readonly at: number; readonly count: number }
  | { readonly kind: "delete-rows"; readonly sheet: string; readonly at: number; readonly count: number }
  /**
   * The table's area gets `rows` more rows at its end, and references that span exactly its data rows (in charts,
   * sparklines, names, formulas, validations) grow too. Room was made before where needed: an `insert-rows` below the
   * whole table comes first. A totals row goes down with the end: its cells, at the old and the new place, are
   * reported as changed cells, as are the new rows and every formula that grew.
   */
  | { readonly kind: "grow-table"; readonly sheet: string; readonly table: string; readonly rows: number }
  | { readonly kind: "add-sheet"; readonly sheet: string }
  /** A table at the top of an empty sheet, with its validations and widths; its cells are reported as changed. */
  | { readonly kind: "add-table"; readonly sheet: string; readonly table: NewTable }
  | { readonly kind: "add-chart"; readonly chart: NewChart };

/** A table that is to be made, its header in the first row of its sheet. */
export interface NewTable {
  readonly sheet: string;
  readonly name: string;
  /** how many rows it starts with, at least one */
  readonly rows: number;
  readonly columns: readonly {
    readonly name: string;
    readonly formula?: string;
    readonly numberFormat?: string;
    readonly font?: string;
    readonly width?: number;
    readonly validation?: Omit<Validation, "areas">;
  }[];
}

export interface NewChart {
  readonly sheet: string;
  readonly title: string;
  readonly xTitle: string;
  readonly yTitle: string;
  /** References such as `'My sheet'!$A$2:$A$20`. */
  readonly x: string;
  readonly series: readonly { readonly name: string; readonly y: string }[];
  readonly area: Area;
}

/** What changed, for those who draw or calculate. */
export type WorkbookChange =
  | { readonly kind: "cells"; readonly sheet: string; readonly keys: readonly number[] }
  | { readonly kind: "structure"; readonly edit: StructuralEdit; readonly undone: boolean };

/**
 * The open workbook. The xlsx adapter fills one from a file ({@link WorkbookContents}) and writes it back; the
 * grid and the calculation read and edit it. All edits go through its methods so that they can be undone, are
 * journalled for saving, and are told to listeners.
 */
export interface WorkbookContents {
  readonly sheets: readonly Worksheet[];
  readonly names: readonly DefinedName[];
  /** `styles[0]` is the default. */
  readonly styles: readonly CellStyle[];
  /** Serial numbers count from 1904 instead of 1900. */
  readonly date1904: boolean;
  /** Settings that Cellwright keeps in the document. */
  readonly settings: ReadonlyMap<string, string>;
}

/** What a save needs beside the bytes that were opened. */
export interface WorkbookDifference {
  readonly edits: readonly StructuralEdit[];
  /** Per sheet: keys, at their present place, of cells that differ from the opened file. */
  readonly changedCells: ReadonlyMap<string, ReadonlySet<number>>;
  /** Settings changed since the file was opened. */
  readonly changedSettings: ReadonlySet<string>;
}
