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

/** A column of a table that is to be made. */
export interface NewColumn {
  readonly name: string;
  /** number format of its cells; `General` unless given */
  readonly format?: string;
  /** calculated column: with leading `=`, its own cells named as `Probes[[#This Row],[Words]]` */
  readonly formula?: string;
  /** name of the font of its cells, such as one that has braille */
  readonly font?: string;
  /** in characters, as far as the host takes it */
  readonly width?: number;
  /** what is offered to choose from (other words are taken too), or that only days are taken */
  readonly takes?: { readonly choices: readonly string[] } | "days";
}

/** A table with its header row in the first row of a sheet of its own. */
export interface NewTable {
  readonly name: string;
  /** made behind the others where there is none of that name; an empty one is used */
  readonly sheet: string;
  readonly columns: readonly NewColumn[];
  /** its first rows; `undefined` leaves a cell to its calculated column. None: one blank row, which appending fills. */
  readonly rows?: readonly (readonly CellInput[])[];
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
   * Where the only row of a table is blank but for its calculated columns, the first row goes there.
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
  /**
   * Makes a table on a sheet of its own. Refused where a table has that name, or where something stands on the sheet.
   * @returns its area with the header row
   */
  addTable(table: NewTable): Promise<Area>;
  /**
   * Takes rows out of a table; what stands beneath it in its columns moves up. Cells beside the table stay, or the host
   * refuses. A table keeps one row: where all are taken out, the last is left blank.
   *
   * @param rows - rows of the sheet, from 0, all of them rows of data
   */
  removeRows(table: string, rows: readonly number[]): Promise<void>;
  /** Takes out a sheet with all that stands on it, where a host without `undo` can. */
  readonly removeSheet?: (name: string) => Promise<void>;
  /** Adds a native chart; refuses with HostError where the host has none. */
  addChart(request: ChartRequest): Promise<void>;
  /** A setting kept inside the document under this key, or undefined. JSON-like text. */
  readSetting(key: string): Promise<string | undefined>;
  keepSetting(key: string, value: string): Promise<void>;
  /** Tells of every change of cells; returns the way to stop. */
  onChange(listener: (change: SheetChange) => void): () => void;
  /** Undoes what this port last wrote, where the host can. */
  readonly undo?: () => Promise<void>;
  /**
   * Makes several writes one for `undo`, where the host has it: one undo takes all of them back. Where one of them is
   * refused, those before it are taken back at once.
   */
  readonly group?: <T>(writes: () => Promise<T>) => Promise<T>;
}
