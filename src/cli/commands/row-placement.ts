import type { Area } from "../../domain/area";
import { HostError } from "../../ports/sheet";
import type { CellInput, SheetOutline } from "../../ports/sheet";
import type { FoundBlock, ProbeBlock } from "../../records/found-block";
import { gridCells } from "../../records/grid-cells";
import type { GridCells } from "../../records/grid-cells";
import { isPreparedRow } from "../../records/prepared-rows";
import type { OpenedWorkbook } from "./opened-workbook";

/** Rows beneath a table in which its totals are looked for. */
const TOTALS_ROWS = 6;

const isEmptyRow = (block: ProbeBlock, cells: GridCells, row: number): boolean =>
  block.columns.every(({ column }) => cells.isBlank(row, column) && cells.formula(row, column) === null);

const crosses = (area: Area, row: number): boolean => area.top <= row && area.bottom >= row;

/** Makes room above totals that stand right beneath a plain table: a sheet row is inserted, where that cuts nothing. */
async function insertAboveTotals(
  opened: OpenedWorkbook,
  blocks: readonly FoundBlock[],
  block: ProbeBlock,
  outlines: readonly SheetOutline[],
): Promise<void> {
  const next = block.area.bottom + 1;
  const outline = outlines.find(({ name }) => name === block.sheet);
  const cutsBlock = blocks.some(
    (other) =>
      other !== block && other.sheet === block.sheet && crosses(other.area, next) && other.area.top < next,
  );
  const cutsTable = outline?.tables.some(({ area }) => crosses(area, next) && area.top < next) ?? false;
  if (!opened.insertRow || cutsBlock || cutsTable) {
    throw new HostError(
      "The row beneath the table is not empty, and another table beside it would be cut. Insert cells there in the spreadsheet program and try again.",
    );
  }
  const inserted = opened.insertRow(block.sheet, next);
  if (!inserted.ok) throw new HostError(inserted.fault.message);
}

/** A formula that sums a column down to the old last row, made to reach the new one. */
const reachFurther = (formula: string, last: number): string =>
  formula.replace(
    /(\$?[A-Z]{1,3}\$?)(\d+)(:\$?[A-Z]{1,3}\$?)(\d+)(?!\d)/gi,
    (whole: string, start: string, from: string, middle: string, to: string) =>
      Number(to) === last && Number(from) < last ? `${start}${from}${middle}${last + 1}` : whole,
  );

/** Lets the totals beneath the new row count it too, as Excel does when a row is typed above them. */
async function extendTotals({ sheet }: OpenedWorkbook, block: ProbeBlock, added: number): Promise<void> {
  const area = { ...block.area, top: added + 1, bottom: added + TOTALS_ROWS };
  const cells = gridCells(await sheet.read(block.sheet, area));
  for (let row = area.top; row <= area.bottom; row += 1) {
    for (let column = area.left; column <= area.right; column += 1) {
      const formula = cells.formula(row, column);
      // Rows count from 1 in formulas: the old last row is the number of the new one counted from 0.
      const longer = formula === null ? null : reachFurther(formula, added);
      if (longer !== null && longer !== formula) {
        await sheet.writeBlock(block.sheet, { row, column }, [[{ formula: longer }]]);
      }
    }
  }
}

/**
 * Puts a row at the end of a block: into a row prepared for it, else appended by the host, else above the totals that
 * stand right beneath a plain table.
 *
 * @returns the area of the row
 * @throws {HostError} where there is no room
 */
export async function placeRow(
  opened: OpenedWorkbook,
  blocks: readonly FoundBlock[],
  block: ProbeBlock,
  row: readonly CellInput[],
  cells: GridCells,
): Promise<Area> {
  const { sheet } = opened;
  const outlines = await sheet.outline();
  if (isPreparedRow(block, cells, outlines)) {
    return sheet.writeBlock(block.sheet, { row: block.area.bottom + 1, column: block.area.left }, [row]);
  }
  if (block.table !== undefined) return (await sheet.appendRows({ table: block.table }, [row])).area;
  const target = { sheet: block.sheet, area: block.area };
  if (isEmptyRow(block, cells, block.area.bottom + 1)) return (await sheet.appendRows(target, [row])).area;
  await insertAboveTotals(opened, blocks, block, outlines);
  const { area } = await sheet.appendRows(target, [row]);
  await extendTotals(opened, block, area.top);
  return area;
}
