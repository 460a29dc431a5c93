import type { Area } from "../../domain/area";
import { HostError } from "../../ports/sheet";
import type { NewColumn, NewTable } from "../../ports/sheet";
import { enterRows, enterText } from "./cell-content";
import { rangeOf } from "./cell-transfer";
import { refuseProtected } from "./sheet-protection";

const STYLE = "TableStyleLight1";

/** The width of a column in points, from characters of the default font (7 pixels each, 5 around them). */
const pointsOf = (characters: number): number => (7 * characters + 5) * 0.75;

/** Queues how the cells of a column look and what they take. */
function dressColumn(body: Excel.Range, { format, font, width, takes }: NewColumn, rows: number): void {
  if (format !== undefined) body.numberFormat = Array.from({ length: rows }, () => [format]);
  if (font !== undefined) body.format.font.name = font;
  if (width !== undefined) body.format.columnWidth = pointsOf(width);
  if (takes === "days") {
    body.dataValidation.rule = { date: { formula1: "1900-01-01", operator: "GreaterThanOrEqualTo" } };
    body.dataValidation.errorAlert = {
      showAlert: true,
      style: "Stop",
      title: "A date is needed",
      message: "Type a date, such as 2026-10-07.",
    };
  } else if (takes !== undefined) {
    body.dataValidation.rule = { list: { inCellDropDown: true, source: takes.choices.join(",") } };
    // Choices are offered; any other words are taken too.
    body.dataValidation.errorAlert = { showAlert: false, style: "Information", title: "", message: "" };
  }
}

/** Makes a table at the top of a sheet of its own; where a part is refused, the sheet that was made is taken away. */
export async function makeTable(
  context: Excel.RequestContext,
  onRefusal: (takeBack: () => Promise<void>) => void,
  { name, sheet: sheetName, columns, rows = [] }: NewTable,
): Promise<() => Area> {
  if (columns.length === 0) throw new HostError("A table needs at least one column. Name one.");
  const entered = enterRows(rows, columns.length);
  const { worksheets, tables } = context.workbook;
  worksheets.load("items/name,items/protection/protected");
  tables.load("items/name");
  await context.sync();
  if (tables.items.some((table) => table.name.toLowerCase() === name.toLowerCase()))
    throw new HostError(`There is a table named "${name}" already. Choose another name.`);
  const isNamed = (each: Excel.Worksheet): boolean => each.name.toLowerCase() === sheetName.toLowerCase();
  const found = worksheets.items.find(isNamed);
  if (found) {
    refuseProtected(found);
    const used = found.getUsedRangeOrNullObject(true);
    used.load("rowCount");
    await context.sync();
    if (!used.isNullObject)
      throw new HostError(`The sheet "${sheetName}" is not empty. Choose another name for the new sheet.`);
  }
  const sheet = found ?? worksheets.add(sheetName);
  const bottom = Math.max(1, rows.length);
  const area = { top: 0, left: 0, bottom, right: columns.length - 1 };
  onRefusal(async () => {
    worksheets.load("items/name");
    await context.sync();
    const made = worksheets.items.find(isNamed);
    if (!found) made?.delete();
    else made?.getRangeByIndexes(0, 0, bottom + 1, columns.length).clear("All");
    await context.sync();
  });
  rangeOf(sheet, { ...area, bottom: 0 }).formulas = [columns.map((column) => enterText(column.name))];
  const table = sheet.tables.add(rangeOf(sheet, area), true);
  table.name = name;
  table.style = STYLE;
  columns.forEach((column, place) => {
    const body = rangeOf(sheet, { top: 1, bottom, left: place, right: place });
    dressColumn(body, column, bottom);
    // Its own cells are named by the table: the formula is understood once the table has its name.
    if (column.formula !== undefined) body.formulas = Array.from({ length: bottom }, () => [column.formula]);
  });
  if (entered.length > 0) rangeOf(sheet, { ...area, top: 1 }).formulas = entered;
  return () => area;
}
