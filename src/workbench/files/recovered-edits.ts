import type { OpenWorkbook } from "../../spreadsheet/open-workbook";
import type { CellContent } from "../../spreadsheet/open-workbook";
import type { Cell, StructuralEdit } from "../../spreadsheet/workbook";
import { columnOf, rowOf } from "../../spreadsheet/workbook";

/** One cell that she changed, at its present place. */
export interface RecoveredCell {
  readonly row: number;
  readonly column: number;
  readonly content: CellContent;
  readonly numberFormat: string;
}

/** Everything that differs from the opened file, as plain data that can be kept outside the page. */
export interface RecoveredEdits {
  readonly edits: readonly StructuralEdit[];
  readonly cells: readonly { readonly sheet: string; readonly cells: readonly RecoveredCell[] }[];
  readonly settings: readonly (readonly [key: string, value: string])[];
}

/** Takes down what differs from the opened file. Results of formulas are left out: they are calculated again. */
export function recordEdits(workbook: OpenWorkbook): RecoveredEdits {
  const { edits, changedCells, changedSettings } = workbook.difference();
  const cells = [...changedCells].map(([sheet, keys]) => ({
    sheet,
    cells: [...keys].flatMap((key) => {
      const cell = workbook.cell(sheet, rowOf(key), columnOf(key));
      if (cell?.spilledFrom !== undefined) return [];
      const numberFormat =
        workbook.styles[workbook.styleAt(sheet, rowOf(key), columnOf(key))]?.numberFormat ?? "General";
      return [{ row: rowOf(key), column: columnOf(key), content: contentOf(cell), numberFormat }];
    }),
  }));
  const settings = [...changedSettings].map((key) => [key, workbook.settings.get(key) ?? ""] as const);
  return { edits, cells, settings };
}

/**
 * Makes the recorded edits again in the workbook as it was opened, as one step.
 *
 * @returns the messages of edits that could not be made again, none where all is as it was
 */
export function replayEdits(workbook: OpenWorkbook, recovered: RecoveredEdits): readonly string[] {
  const refused: string[] = [];
  const note = (
    result: { readonly ok: true } | { readonly ok: false; readonly fault: { readonly message: string } },
  ): void => {
    if (!result.ok) refused.push(result.fault.message);
  };
  workbook.group("Recover", () => {
    for (const edit of recovered.edits) note(replayEdit(workbook, edit));
    for (const { sheet, cells } of recovered.cells) {
      for (const { row, column, content, numberFormat } of cells) {
        note(workbook.setCell(sheet, row, column, content, { numberFormat }));
      }
    }
  });
  for (const [key, value] of recovered.settings) workbook.keepSetting(key, value);
  return refused;
}

function replayEdit(
  workbook: OpenWorkbook,
  edit: StructuralEdit,
): ReturnType<OpenWorkbook["clear"]> | ReturnType<OpenWorkbook["addSheet"]> {
  switch (edit.kind) {
    case "insert-rows":
      return workbook.insertRows(edit.sheet, edit.at, edit.count);
    case "delete-rows":
      return workbook.deleteRows(edit.sheet, edit.at, edit.count);
    case "grow-table":
      return workbook.growTable(edit.table, edit.rows);
    case "add-sheet":
      return workbook.addSheet(edit.sheet);
    case "add-table":
      return workbook.addTable(edit.table);
    case "add-chart":
      return workbook.addChart(edit.chart);
  }
}

function contentOf(cell: Cell | undefined): CellContent {
  if (cell === undefined) return null;
  return cell.formula === undefined ? cell.value : { formula: cell.formula };
}
