import type { NewColumn, NewTable } from "../../ports/sheet";
import { dataRows } from "../../spreadsheet/row-edit";
import type { NewTable as ModelTable, Table, Validation, Worksheet } from "../../spreadsheet/workbook";
import { cellKey } from "../../spreadsheet/workbook";

/** Between choices of a list that is written into the rule itself. */
const BETWEEN = ",";

/** What a column takes as a rule of the workbook: choices are advice, a day is asked for. */
function validationOf({ takes }: NewColumn): Omit<Validation, "areas"> | undefined {
  if (takes === undefined) return undefined;
  if (takes === "days") {
    return {
      type: "date",
      operator: "greaterThanOrEqual",
      formula1: "1",
      allowBlank: true,
      refuses: true,
      errorMessage: "Type a date, such as 2026-10-07.",
    };
  }
  const list = takes.choices.join(BETWEEN).replaceAll('"', '""');
  return { type: "list", formula1: `"${list}"`, allowBlank: true, refuses: false };
}

/** A table that was asked for, in the words of the workbook's model. */
export const describeTable = ({ name, sheet, columns, rows = [] }: NewTable): ModelTable => ({
  name,
  sheet,
  rows: Math.max(1, rows.length),
  columns: columns.map((column) => {
    const validation = validationOf(column);
    return {
      name: column.name,
      ...(column.formula === undefined ? {} : { formula: column.formula.replace(/^=/, "") }),
      ...(column.format === undefined ? {} : { numberFormat: column.format }),
      ...(column.font === undefined ? {} : { font: column.font }),
      ...(column.width === undefined ? {} : { width: column.width }),
      ...(validation === undefined ? {} : { validation }),
    };
  }),
});

/** Whether a table has one row, with nothing in it but formulas. */
export function isBlankTable(sheet: Worksheet, table: Table): boolean {
  const data = dataRows(table);
  if (data.top !== data.bottom) return false;
  for (let column = data.left; column <= data.right; column += 1) {
    const cell = sheet.cells.get(cellKey(data.top, column));
    if (cell !== undefined && cell.value !== null && cell.formula === undefined) return false;
  }
  return true;
}
