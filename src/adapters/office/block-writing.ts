import type { Area } from "../../domain/area";
import { HostError } from "../../ports/sheet";
import type { CellInput } from "../../ports/sheet";
import { enterRows } from "./cell-content";
import { bandsOf, rangeOf } from "./cell-transfer";
import { refuseProtected } from "./sheet-protection";

/**
 * Writes a block with its upper left corner there, making the sheet behind the others where there is none of that
 * name. One write a request; a block that needs several is taken back if one of them is refused.
 */
export async function writeCells(
  context: Excel.RequestContext,
  onRefusal: (takeBack: () => Promise<void>) => void,
  sheetName: string,
  at: { readonly row: number; readonly column: number },
  rows: readonly (readonly CellInput[])[],
): Promise<() => Area> {
  const width = rows[0]?.length ?? 0;
  if (width === 0) throw new HostError("There is nothing to write: give at least one row with one cell.");
  const entered = enterRows(rows, width);
  const area = {
    top: at.row,
    left: at.column,
    bottom: at.row + rows.length - 1,
    right: at.column + width - 1,
  };

  const sheets = context.workbook.worksheets;
  sheets.load("items/name,items/protection/protected");
  await context.sync();
  // Excel takes "probes" and "Probes" for one sheet.
  const found = sheets.items.find((each) => each.name.toLowerCase() === sheetName.toLowerCase());
  if (found) refuseProtected(found);
  const sheet = found ?? sheets.add(sheetName);

  const bands = bandsOf(entered);
  const before: unknown[][] = [];
  if (found && bands.length > 1) {
    for (const [from, to] of bands) {
      const range = rangeOf(sheet, { ...area, top: area.top + from, bottom: area.top + to - 1 });
      range.load("formulas");
      await context.sync();
      before.push(...range.formulas);
    }
  }
  onRefusal(async () => {
    if (!found) {
      sheets.load("items/name");
      await context.sync();
      sheets.items.find((each) => each.name.toLowerCase() === sheetName.toLowerCase())?.delete();
    }
    for (const [from, to] of before.length > 0 ? bands : []) {
      const range = rangeOf(sheet, { ...area, top: area.top + from, bottom: area.top + to - 1 });
      range.formulas = before.slice(from, to);
      await context.sync();
    }
    await context.sync();
  });
  for (const [from, to] of bands) {
    if (from > 0) await context.sync();
    rangeOf(sheet, { ...area, top: area.top + from, bottom: area.top + to - 1 }).formulas = entered.slice(
      from,
      to,
    );
  }
  return () => area;
}
