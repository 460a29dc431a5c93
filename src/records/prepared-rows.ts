import type { SheetOutline } from "../ports/sheet";
import { sumsUp } from "./cell-text";
import type { FoundBlock } from "./found-block";
import type { GridCells } from "./grid-cells";

/**
 * Whether a row beneath the last data row is prepared for data: blank but for formulas, and inside her table or with the
 * formulas of the last data row.
 */
export function isPreparedRow(
  block: FoundBlock,
  cells: GridCells,
  outlines: readonly SheetOutline[],
  row = block.area.bottom + 1,
): boolean {
  const formulas = block.columns.map(({ column }) => cells.formula(row, column));
  const holdsTyped = block.columns.some(
    ({ column }, place) => !cells.isBlank(row, column) && formulas[place] === null,
  );
  if (holdsTyped) return false;
  const table = outlines
    .find(({ name }) => name === block.sheet)
    ?.tables.find(({ name }) => name === block.table);
  if (table) return row <= table.area.bottom - (table.totalsRow ? 1 : 0);
  if (formulas.some(sumsUp)) return false;
  return block.columns.some(
    ({ column }, place) => formulas[place] !== null && cells.formula(block.area.bottom, column) !== null,
  );
}
