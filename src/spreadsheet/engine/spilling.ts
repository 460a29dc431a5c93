import type { Area } from "../../domain/area";
import type { CellValue } from "../../domain/cell-value";
import { areaHolds, areasMeet, formatCell, MAX_COLUMNS, MAX_ROWS } from "../address";
import type { OpenWorkbook } from "../open-workbook";
import { cellKey, columnOf, rowOf, type Cell } from "../workbook";
import { sameValue, styleOnly } from "../workbook-state";
import type { FormulaNode } from "./formula-node";
import { tableAt } from "./structured-reference";
import { makeError, type Rows } from "./value";
import type { CellError } from "../../domain/cell-value";

/** Whether a block finds room to the right of and below its formula, or the error that says what is in the way. */
export function findRoom(workbook: OpenWorkbook, node: FormulaNode, rows: Rows): Area | CellError {
  const area: Area = {
    top: node.row,
    left: node.column,
    bottom: node.row + rows.length - 1,
    right: node.column + (rows[0]?.length ?? 1) - 1,
  };
  const size = `${rows.length} rows and ${rows[0]?.length ?? 0} columns`;
  if (area.bottom >= MAX_ROWS || area.right >= MAX_COLUMNS) {
    return makeError("#SPILL!", `The result of ${size} runs over the edge of the sheet.`);
  }
  const sheet = workbook.sheet(node.sheet.name);
  if (sheet && tableAt(sheet.tables, node.row, node.column)) {
    return makeError(
      "#SPILL!",
      `The result has ${size}; inside a table a formula can fill only its own cell.`,
    );
  }
  if (sheet?.merges.some((merge) => areasMeet(merge, area))) {
    return makeError("#SPILL!", `The result of ${size} would run into merged cells.`);
  }
  for (let row = area.top; row <= area.bottom; row++) {
    for (let column = area.left; column <= area.right; column++) {
      if (row === node.row && column === node.column) continue;
      const key = cellKey(row, column);
      const cell = node.sheet.cells.get(key);
      const owned = cell?.spilledFrom?.row === node.row && cell.spilledFrom.column === node.column;
      if (!cell || owned || (cell.value === null && cell.formula === undefined)) continue;
      return makeError("#SPILL!", `The result of ${size} has no room: empty ${formatCell(row, column)}.`);
    }
  }
  return area;
}

/**
 * Writes a block into the cells beside its formula, the formula's own cell excepted, and empties those that an
 * earlier result filled and this one does not.
 *
 * @returns keys of the cells whose values changed
 */
export function writeSpill(
  workbook: OpenWorkbook,
  node: FormulaNode,
  area: Area | undefined,
  rows: Rows,
): number[] {
  const { sheet } = node;
  const changed: number[] = [];
  for (const key of ownedKeys(node)) {
    if (area && areaHolds(area, rowOf(key), columnOf(key))) continue;
    sheet.spillOwners.delete(key);
    const cell = sheet.cells.get(key);
    // What she typed over a spilled cell is hers.
    if (!cell?.spilledFrom) continue;
    workbook.storeResult(sheet.name, key, styleOnly(cell.style));
    changed.push(key);
  }
  for (let row = area?.top ?? 0; area && row <= area.bottom; row++) {
    for (let column = area.left; column <= area.right; column++) {
      if (row === node.row && column === node.column) continue;
      const key = cellKey(row, column);
      const value = shown(rows[row - area.top]?.[column - area.left] ?? null);
      const before = sheet.cells.get(key);
      sheet.spillOwners.set(key, node);
      if (before?.spilledFrom && sameValue(before.value, value)) continue;
      const cell: Cell = {
        value,
        style: before?.style ?? workbook.styleAt(sheet.name, row, column),
        spilledFrom: { row: node.row, column: node.column },
      };
      workbook.storeResult(sheet.name, key, cell);
      sheet.reach(key);
      changed.push(key);
    }
  }
  return changed;
}

function ownedKeys(node: FormulaNode): number[] {
  const keys: number[] = [];
  const { spill } = node;
  for (let row = spill?.top ?? 0; spill && row <= spill.bottom; row++) {
    for (let column = spill.left; column <= spill.right; column++) {
      const key = cellKey(row, column);
      if (node.sheet.spillOwners.get(key) === node) keys.push(key);
    }
  }
  return keys;
}

/** A value as a cell shows it: an empty one is 0, as where a formula refers to an empty cell. */
export const shown = (value: CellValue): CellValue => (value === null ? 0 : value);

/** A block fitted into the given area of an array formula: repeated where single, #N/A beyond. */
export function fitBlock(value: CellValue | Rows, area: Area): Rows {
  const rows: Rows = Array.isArray(value) ? (value as Rows) : [[value as CellValue]];
  return Array.from({ length: area.bottom - area.top + 1 }, (_, row) =>
    Array.from({ length: area.right - area.left + 1 }, (__, column) => {
      const line = rows.length === 1 ? rows[0] : rows[row];
      const cell = line?.length === 1 ? line[0] : line?.[column];
      return cell === undefined ? makeError("#N/A") : cell;
    }),
  );
}
