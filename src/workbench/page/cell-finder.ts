import type { GridModel } from "../grid/grid-model";
import type { Place } from "../grid/selection";
import type { Worksheet } from "../../spreadsheet/workbook";
import { columnOf, rowOf } from "../../spreadsheet/workbook";

/**
 * The cells of a sheet that show a text or have it in their formula, in reading order; case does not matter.
 * Cells of hidden rows and columns are left out.
 */
export function findCells(model: GridModel, sheet: Worksheet, wanted: string): readonly Place[] {
  const needle = wanted.toLocaleLowerCase();
  if (needle === "") return [];
  const found: Place[] = [];
  for (const [key, cell] of sheet.cells) {
    const place = { row: rowOf(key), column: columnOf(key) };
    if (cell.value === null && cell.formula === undefined) continue;
    if (sheet.rowHeights.get(place.row) === 0 || sheet.columnWidths.get(place.column) === 0) continue;
    const shown = typeof cell.value === "string" ? cell.value : model.shownText(sheet, place);
    const formula = cell.formula === undefined ? "" : `=${cell.formula}`;
    if (shown.toLocaleLowerCase().includes(needle) || formula.toLocaleLowerCase().includes(needle))
      found.push(place);
  }
  return found.sort((a, b) => a.row - b.row || a.column - b.column);
}

/**
 * The match after (or before) a place in reading order, going round at the ends.
 *
 * @param found - matches in reading order, at least one
 * @returns its position among the matches, from 0
 */
export function nextMatch(found: readonly Place[], from: Place, step: 1 | -1): number {
  const isAfter = (place: Place): boolean =>
    place.row > from.row || (place.row === from.row && place.column > from.column);
  const isBefore = (place: Place): boolean =>
    place.row < from.row || (place.row === from.row && place.column < from.column);
  if (step > 0) return Math.max(0, found.findIndex(isAfter));
  const before = found.findLastIndex(isBefore);
  return before < 0 ? found.length - 1 : before;
}
