import { parseCell } from "../../src/spreadsheet/address";
import {
  cellKey,
  type Cell,
  type Table,
  type WorkbookContents,
  type Worksheet,
} from "../../src/spreadsheet/workbook";
import { emptySheet } from "../../src/spreadsheet/workbook-state";
import type { CellValue } from "../../src/domain/cell-value";

/** A cell as tests write it: text beginning with `=` is a formula, everything else a value. */
export type TestCell = CellValue | Cell;

/** A sheet from its cells by address; `=` begins a formula that may spill. */
export function makeSheet(
  name: string,
  cells: Record<string, TestCell>,
  more: Partial<Worksheet> = {},
): Worksheet {
  const map = new Map<number, Cell>();
  for (const [address, content] of Object.entries(cells)) {
    const place = parseCell(address);
    if (!place) throw new RangeError(address);
    map.set(cellKey(place.row, place.column), makeCell(content));
  }
  return { ...emptySheet(name), cells: map, ...more };
}

function makeCell(content: TestCell): Cell {
  if (typeof content === "object" && content !== null && "style" in content) return content;
  return typeof content === "string" && content.startsWith("=")
    ? { value: null, formula: content.slice(1), style: 0, array: "dynamic" }
    : { value: content, style: 0 };
}

/** A table over an area, with its columns' names and calculated columns (`Name=formula`). */
export function makeTable(
  name: string,
  area: Table["area"],
  columns: readonly string[],
  totalsRow = false,
): Table {
  return {
    name,
    area,
    headerRow: true,
    totalsRow,
    columns: columns.map((column) => {
      const [title = "", formula] = column.split("=");
      return formula === undefined ? { name: title } : { name: title, formula };
    }),
  };
}

/** Workbook contents around these sheets. */
export function makeContents(
  sheets: readonly Worksheet[],
  more: Partial<WorkbookContents> = {},
): WorkbookContents {
  return {
    sheets,
    names: [],
    styles: [{ numberFormat: "General" }, { numberFormat: "dd/mm/yyyy" }],
    date1904: false,
    settings: new Map(),
    ...more,
  };
}
