import type { Area } from "../../domain/area";
import { HostError } from "../../ports/sheet";
import type { CellInput } from "../../ports/sheet";
import { enterRows, readFormula } from "./cell-content";
import { areaOf, bandsOf, PLACE, rangeOf } from "./cell-transfer";
import { loadProtection, refuseProtected } from "./sheet-protection";

/**
 * Appends rows beneath a plain range, with the formats and filled-down formulas of its last row. Refused where
 * anything stands beneath: moving it would leave totals that do not count the new rows.
 *
 * @param area - the header row and all rows so far
 */
export async function appendToRange(
  context: Excel.RequestContext,
  onRefusal: (takeBack: () => Promise<void>) => void,
  sheetName: string,
  area: Area,
  rows: readonly (readonly CellInput[])[],
): Promise<() => { sheet: string; area: Area }> {
  const entered = enterRows(rows, area.right - area.left + 1);
  const sheet = context.workbook.worksheets.getItem(sheetName);
  const beneath = { ...area, top: area.bottom + 1, bottom: area.bottom + rows.length };
  const target = rangeOf(sheet, beneath);
  const standing = target.getUsedRangeOrNullObject(true);
  const above = rangeOf(sheet, { ...area, top: area.bottom });
  loadProtection(sheet);
  standing.load(PLACE);
  above.load("values,formulas,formulasR1C1");
  await context.sync();
  refuseProtected(sheet);
  if (!standing.isNullObject) {
    throw new HostError(
      `Row ${areaOf(standing).top + 1} of "${sheet.name}", beneath the last row, is not empty. Insert empty rows there, then try again.`,
    );
  }

  onRefusal(async () => {
    target.clear("All");
    await context.sync();
  });
  // A header row alone is no model for the rows beneath it.
  const hasModel = area.bottom > area.top;
  if (hasModel) target.copyFrom(above, "Formats");
  for (const [from, to] of bandsOf(entered)) {
    if (from > 0) await context.sync();
    rangeOf(sheet, { ...beneath, top: beneath.top + from, bottom: beneath.top + to - 1 }).formulas =
      entered.slice(from, to);
  }
  const formulas: unknown[] = hasModel ? (above.formulas[0] ?? []) : [];
  formulas.forEach((formula, column) => {
    if (readFormula(formula, above.values[0]?.[column]) === null) return;
    if (!rows.some((row) => row[column] === undefined)) return;
    const relative: unknown = above.formulasR1C1[0]?.[column];
    const cells = rangeOf(sheet, { ...beneath, left: area.left + column, right: area.left + column });
    cells.formulasR1C1 = rows.map((row) => [row[column] === undefined ? relative : null]);
  });
  return () => ({ sheet: sheet.name, area: beneath });
}
