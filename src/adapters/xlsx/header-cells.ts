import { isCellError } from "../../domain/cell-value";
import {
  cellKey,
  type Table,
  type WorkbookContents,
  type WorkbookDifference,
} from "../../spreadsheet/workbook";
import type { ColumnRenaming, EditPlan } from "./edit-plan";
import { XlsxRefusal } from "./xlsx-refusal";

/**
 * The columns whose heading was typed over: a table's part must name its columns as the cells do, or spreadsheet
 * programs call the file damaged.
 *
 * @param opened - sheets of the opened file with their tables
 * @throws {XlsxRefusal} `table-heading` where a heading is empty, no text, or there twice
 */
export const findRenamedColumns = (
  opened: readonly { readonly name: string; readonly tables: readonly Table[] }[],
  plan: EditPlan,
  workbook: WorkbookContents,
  changedCells: WorkbookDifference["changedCells"],
): ColumnRenaming[] =>
  opened.flatMap(({ name, tables }) => {
    const changed = changedCells.get(name);
    const sheet = workbook.sheets.find((candidate) => candidate.name === name);
    if (!changed || !sheet) return [];
    return tables.flatMap((table): ColumnRenaming[] => {
      const area = plan.tableArea(table.name);
      if (!table.headerRow || !area) return [];
      const headings = table.columns.map((column, index) => {
        const key = cellKey(area.top, area.left + index);
        return changed.has(key) ? headingText(table, sheet.cells.get(key)?.value ?? null) : column.name;
      });
      if (new Set(headings.map((heading) => heading.toLowerCase())).size < headings.length) {
        throw new XlsxRefusal(
          "table-heading",
          `Two columns of the table ${table.name} have the same heading: give each a heading of its own.`,
        );
      }
      const names = new Map<string, string>();
      table.columns.forEach((column, index) => {
        const now = headings[index];
        if (now !== undefined && now !== column.name) names.set(column.name.toLowerCase(), now);
      });
      return names.size > 0 ? [{ table: table.name, names }] : [];
    });
  });

const headingText = (table: Table, value: unknown): string => {
  if (typeof value === "string" && value !== "") return value;
  const what = value === null || value === "" ? "empty" : isCellError(value) ? "an error" : "no text";
  throw new XlsxRefusal(
    "table-heading",
    `A heading of the table ${table.name} is ${what}: type its heading as text, with an apostrophe before it if it is a number.`,
  );
};
