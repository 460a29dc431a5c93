import type { SheetOutline } from "../../ports/sheet";
import { areaOf, PLACE } from "./cell-transfer";

/** Sheets in tab order with their tables: two syncs, however many there are. */
export async function readOutline(context: Excel.RequestContext): Promise<readonly SheetOutline[]> {
  const sheets = context.workbook.worksheets;
  sheets.load(
    "items/name,items/visibility,items/tables/items/name,items/tables/items/showHeaders,items/tables/items/showTotals",
  );
  await context.sync();
  const asked = sheets.items.map((sheet) => {
    // Cells that hold something: formats alone do not make a sheet used.
    const used = sheet.getUsedRangeOrNullObject(true);
    used.load(PLACE);
    const tables = sheet.tables.items.map((table) => {
      const range = table.getRange();
      range.load(PLACE);
      return { table, range };
    });
    return { sheet, used, tables };
  });
  await context.sync();
  return asked.map(({ sheet, used, tables }) => ({
    name: sheet.name,
    hidden: sheet.visibility !== "Visible",
    ...(used.isNullObject ? {} : { used: areaOf(used) }),
    tables: tables.map(({ table, range }) => ({
      name: table.name,
      area: areaOf(range),
      headerRow: table.showHeaders,
      totalsRow: table.showTotals,
    })),
  }));
}
