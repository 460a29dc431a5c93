import type { Area } from "../../domain/area";
import type { Table, Worksheet } from "../../spreadsheet/workbook";
import { cellKey } from "../../spreadsheet/workbook";

/**
 * The table that typing into an area extends: the area begins right below its last row, stays within its columns,
 * and nothing stands in the new rows. A table with a totals row is not extended by typing.
 */
export function tableToExtend(sheet: Worksheet, typed: Area): Table | undefined {
  return sheet.tables.find((table) => {
    const { area } = table;
    const isBelow = typed.top === area.bottom + 1 && typed.left >= area.left && typed.right <= area.right;
    return isBelow && !table.totalsRow && isFree(sheet, { ...area, top: typed.top, bottom: typed.bottom });
  });
}

function isFree(sheet: Worksheet, area: Area): boolean {
  for (let row = area.top; row <= area.bottom; row += 1) {
    for (let column = area.left; column <= area.right; column += 1) {
      const cell = sheet.cells.get(cellKey(row, column));
      if (cell !== undefined && (cell.value !== null || cell.formula !== undefined)) return false;
    }
  }
  return true;
}
