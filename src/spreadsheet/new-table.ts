import { refusal, success, type Result } from "../domain/result";
import type { NewTable, Table, Validation } from "./workbook";
import type { SheetState, WorkbookState } from "./workbook-state";

/** A name that every spreadsheet program takes for a table: no spaces, and nothing that looks like a cell. */
const NAME = /^[\p{L}_\\][\p{L}\p{N}_.\\]{0,254}$/u;
const LIKE_A_CELL = /^(?:[a-z]{1,3}\d+|r\d*c?\d*|c\d*)$/i;
const STYLE = "TableStyleLight1";

/** Whether a table can be made: its name is free and allowed, and nothing stands on its sheet. */
export function checkNewTable(
  table: NewTable,
  names: ReadonlySet<string>,
  sheet: SheetState | undefined,
): Result<true> {
  if (table.columns.length === 0)
    return refusal("no-columns", "A table needs at least one column. Name one.");
  if (!NAME.test(table.name) || LIKE_A_CELL.test(table.name))
    return refusal("table-name", `"${table.name}" cannot be a table's name: use letters, digits and _.`);
  if (names.has(table.name.toLowerCase()))
    return refusal("table-exists", `There is a table named "${table.name}" already. Choose another name.`);
  const headings = new Set(table.columns.map(({ name }) => name.toLowerCase()));
  if (headings.size < table.columns.length || headings.has(""))
    return refusal("columns-alike", "Every column of a table needs a name of its own.");
  const isFilled =
    sheet !== undefined &&
    ([...sheet.cells.values()].some((cell) => cell.value !== null || cell.formula !== undefined) ||
      sheet.tables.length > 0 ||
      sheet.objects.length > 0 ||
      sheet.merges.length > 0);
  return isFilled
    ? refusal(
        "sheet-in-use",
        `The sheet "${sheet.name}" is not empty. Choose another name for the new sheet.`,
      )
    : success(true);
}

/** The workbook with the table on its sheet: its outline, validations and widths of columns; its cells are not written. */
export function addTableState(state: WorkbookState, added: NewTable): WorkbookState {
  const rows = Math.max(1, added.rows);
  const table: Table = {
    name: added.name,
    area: { top: 0, left: 0, bottom: rows, right: added.columns.length - 1 },
    headerRow: true,
    totalsRow: false,
    columns: added.columns.map(({ name, formula }) => ({
      name,
      ...(formula === undefined ? {} : { formula }),
    })),
    style: STYLE,
  };
  const validations = added.columns.flatMap(({ validation }, column): Validation[] =>
    validation ? [{ ...validation, areas: [{ top: 1, bottom: rows, left: column, right: column }] }] : [],
  );
  return {
    ...state,
    sheets: state.sheets.map((sheet) => {
      if (sheet.name !== added.sheet) return sheet;
      const widths = new Map(sheet.columnWidths);
      added.columns.forEach(({ width }, column) => {
        if (width !== undefined && !widths.has(column)) widths.set(column, width);
      });
      return {
        ...sheet,
        tables: [...sheet.tables, table],
        validations: [...sheet.validations, ...validations],
        columnWidths: widths,
      };
    }),
  };
}
