import type { Area } from "../domain/area";
import type { CellValue } from "../domain/cell-value";

/** A spreadsheet table (the host's own kind, with a header row). `area` includes header and totals row. */
export interface TableOutline {
  readonly name: string;
  readonly area: Area;
  readonly headerRow: boolean;
  readonly totalsRow: boolean;
}

/** One sheet of the open workbook, in tab order. `used` spans the cells that hold something; absent if none does. */
export interface SheetOutline {
  readonly name: string;
  readonly hidden: boolean;
  readonly used?: Area;
  readonly tables: readonly TableOutline[];
}

/** Cells as they stand: same shape for all three; `formulas` holds text with its leading `=`, or null. */
export interface Block {
  readonly sheet: string;
  readonly area: Area;
  readonly values: readonly (readonly CellValue[])[];
  /** number formats, such as `General`, `dd/mm/yyyy`, `0%`, `mm:ss` */
  readonly formats: readonly (readonly string[])[];
  readonly formulas: readonly (readonly (string | null)[])[];
}

/**
 * What goes into a cell. A string is text, whatever it begins with; only `{ formula }` is a formula. In
 * {@link Sheet.appendRows} `undefined` leaves the cell to the host: a table's calculated column, or the formula
 * of the row above filled down, or empty. In {@link Sheet.writeBlock} `undefined` leaves the cell as it is, and
 * `null` empties it. Hosts cannot tell the text "" from an empty cell: it empties.
 */
export type CellInput = CellValue | { readonly formula: string } | undefined;

/** Rows beneath a header row: a host's table by name, or a plain range by its sheet and area (header row first). */
export type RowsTarget = { readonly table: string } | { readonly sheet: string; readonly area: Area };

/** A native chart of one or more columns of numbers over a column of dates. */
export interface ChartRequest {
  readonly sheet: string;
  readonly title: string;
  readonly xTitle: string;
  readonly yTitle: string;
  /** Dates column without header. */
  readonly x: Area;
  readonly series: readonly { readonly name: string; readonly y: Area }[];
  /** Where the upper left corner goes. */
  readonly at: { readonly row: number; readonly column: number };
  /** Written into the cell beneath, because a chart's alternative text cannot be set in every host. */
  readonly summary: string;
}

/** Which sheet changed; `area` absent where the host cannot say. */
export interface SheetChange {
  readonly sheet: string;
  readonly area?: Area;
}

/** The host refused or broke its promise; the message says what the teacher can do. */
export class HostError extends Error {
  override readonly name = "HostError";
}

/**
 * What a spreadsheet host must offer. Traps: areas are zero-based; a host may report its own writes as changes
 * unless it can suppress them, so listeners must not write in answer to a change; every method rejects with
 * {@link HostError} and never half-writes.
 */
export interface Sheet {
  /** Sheets and their tables, hidden ones included. */
  outline(): Promise<readonly SheetOutline[]>;
  /** The cells of an area. */
  read(sheet: string, area: Area): Promise<Block>;
  /**
   * Adds rows at the end (above a totals row), with the formats of the row above, calculated columns filled.
   * Every row is as wide as the target, otherwise it is refused. What stands beneath moves down or the host refuses.
   * @returns the area written, without the header
   */
  appendRows(
    target: RowsTarget,
    rows: readonly (readonly CellInput[])[],
  ): Promise<{ sheet: string; area: Area }>;
  /**
   * Writes a block with its upper left corner there, formats left alone; makes the sheet, behind the others, where
   * there is none of that name. Rows are equally wide.
   */
  writeBlock(
    sheet: string,
    at: { readonly row: number; readonly column: number },
    rows: readonly (readonly CellInput[])[],
  ): Promise<Area>;
  /** Adds a native chart; refuses with HostError where the host has none. */
  addChart(request: ChartRequest): Promise<void>;
  /** A setting kept inside the document under this key, or undefined. JSON-like text. */
  readSetting(key: string): Promise<string | undefined>;
  keepSetting(key: string, value: string): Promise<void>;
  /** Tells of every change of cells; returns the way to stop. */
  onChange(listener: (change: SheetChange) => void): () => void;
  /** Undoes what this port last wrote, where the host can. */
  readonly undo?: () => Promise<void>;
}
