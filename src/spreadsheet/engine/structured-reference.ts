import type { ReferenceStruct } from "@borgar/fx";
import type { Area } from "../../domain/area";
import type { CellError } from "../../domain/cell-value";
import { areaHolds } from "../address";
import { dataRows } from "../row-edit";
import type { Table } from "../workbook";
import { makeError } from "./value";

/** A table and the sheet that it stands on. */
export interface PlacedTable {
  readonly sheet: string;
  readonly table: Table;
}

/**
 * The cells that a structured reference means.
 *
 * @param table - the table that it names, or that its cell stands in
 * @param place - the cell of the formula, for `[#This Row]` and `@`
 */
export function resolveStructure(
  reference: ReferenceStruct,
  { sheet, table }: PlacedTable,
  place: { readonly sheet: string; readonly row: number },
): Area | CellError {
  const columns = columnSpan(reference, table);
  if ("error" in columns) return columns;
  const rows = rowSpan(reference.sections ?? [], table, sheet === place.sheet ? place.row : undefined);
  return "error" in rows ? rows : { ...rows, ...columns };
}

function columnSpan(reference: ReferenceStruct, table: Table): { left: number; right: number } | CellError {
  const names = reference.columns ?? [];
  if (names.length === 0) return { left: table.area.left, right: table.area.right };
  const places: number[] = [];
  for (const name of names) {
    const index = columnIndex(table).get(name.toLowerCase());
    if (index === undefined) return makeError("#REF!", `The table ${table.name} has no column ${name}.`);
    places.push(table.area.left + index);
  }
  return { left: Math.min(...places), right: Math.max(...places) };
}

/** Where the columns of a table are, by name in lower case; kept as long as the table's columns are. */
const columnIndexes = new WeakMap<Table["columns"], ReadonlyMap<string, number>>();

function columnIndex({ columns }: Table): ReadonlyMap<string, number> {
  const known = columnIndexes.get(columns);
  if (known) return known;
  const index = new Map(columns.map(({ name }, at) => [name.toLowerCase(), at] as const));
  columnIndexes.set(columns, index);
  return index;
}

function rowSpan(
  sections: readonly string[],
  table: Table,
  row: number | undefined,
): { top: number; bottom: number } | CellError {
  const data = dataRows(table);
  const { top, bottom } = table.area;
  const has = (section: string): boolean => sections.includes(section);
  if (has("all")) return { top, bottom };
  if (has("this row")) {
    if (row !== undefined && row >= data.top && row <= data.bottom) return { top: row, bottom: row };
    return makeError(
      "#VALUE!",
      `This formula asks for its own row of ${table.name}, but stands beside no row of it.`,
    );
  }
  const header = has("headers");
  const totals = has("totals");
  if (header && !table.headerRow) return makeError("#REF!", `The table ${table.name} has no heading row.`);
  if (totals && !table.totalsRow) return makeError("#REF!", `The table ${table.name} has no totals row.`);
  if (header && !totals) return { top, bottom: has("data") ? data.bottom : top };
  if (totals && !header) return { top: has("data") ? data.top : bottom, bottom };
  return header ? { top, bottom } : { top: data.top, bottom: data.bottom };
}

/** The table that a cell stands in. */
export const tableAt = (tables: readonly Table[], row: number, column: number): Table | undefined =>
  tables.find((table) => areaHolds(table.area, row, column));
