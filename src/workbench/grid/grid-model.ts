import type { Area } from "../../domain/area";
import type { Result } from "../../domain/result";
import type { Cell, CellStyle, Worksheet } from "../../spreadsheet/workbook";
import type { Place } from "./selection";

/** Cells taken from one place to be put at another, as the clipboard of this window keeps them. */
export interface CopiedCells {
  readonly sheet: string;
  readonly area: Area;
  readonly rows: readonly (readonly (Cell | undefined)[])[];
}

/** Which cells changed (by key), or that a sheet's rows moved. */
export interface ModelChange {
  readonly sheet: string;
  /** Absent where rows, tables or the whole sheet changed. */
  readonly keys?: readonly number[];
}

/**
 * What the grid shows and edits. Every edit is one step to undo; a refused edit changes nothing and its fault says
 * what to do.
 */
export interface GridModel {
  readonly sheets: readonly Worksheet[];
  readonly styles: readonly CellStyle[];
  /** The text that a cell shows by its number format; "" for an empty cell. */
  shownText(sheet: Worksheet, place: Place): string;
  /** The text that editing starts with: a formula with its `=`, a date in her day order. */
  editText(sheet: Worksheet, place: Place): string;
  /** Enters texts as if typed, from this cell on right and down. */
  enter(sheet: Worksheet, at: Place, rows: readonly (readonly string[])[]): Result<Area>;
  copy(sheet: Worksheet, area: Area): CopiedCells;
  /** Puts copied cells, formulas adjusted, repeated where `into` is a whole multiple of what was copied. */
  paste(sheet: Worksheet, into: Area, copied: CopiedCells): Result<Area>;
  /** Moves cells: {@link paste} and clearing of where they were, as one step. */
  move(sheet: Worksheet, into: Area, copied: CopiedCells): Result<Area>;
  clear(sheet: Worksheet, area: Area): Result<Area>;
  /** Copies the first row of an area into the rows beneath it. */
  fillDown(sheet: Worksheet, area: Area): Result<Area>;
  insertRows(sheet: Worksheet, at: number, count: number): Result<Area>;
  deleteRows(sheet: Worksheet, at: number, count: number): Result<Area>;
  /** Takes back the last step, or undefined where there is none; returns where it happened. */
  undo(): { readonly sheet: string; readonly area?: Area } | undefined;
  redo(): { readonly sheet: string; readonly area?: Area } | undefined;
  onChange(listener: (changes: readonly ModelChange[]) => void): () => void;
  /** What a cell may hold where its validation offers a list. */
  choices(sheet: Worksheet, place: Place): readonly string[] | undefined;
}
