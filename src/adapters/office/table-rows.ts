import type { Area } from "../../domain/area";
import type { CellInput } from "../../ports/sheet";
import { enterRows, readFormula } from "./cell-content";
import { areaOf, bandsOf, PLACE, rangeOf } from "./cell-transfer";
import { loadProtection, refuseProtected } from "./sheet-protection";

/** Rows from the bottom that are looked at to tell a column's formula: one row may be the teacher's exception. */
const ROWS_LOOKED_AT = 20;

/** The formula of a calculated column as most of the last rows have it, in relative form (R1C1). */
const columnFormula = (range: Excel.Range, column: number): string | undefined => {
  const counts = new Map<string, number>();
  range.formulas.forEach((row: unknown[], index) => {
    if (readFormula(row[column], range.values[index]?.[column]) === null) return;
    const relative = String(range.formulasR1C1[index]?.[column]);
    counts.set(relative, (counts.get(relative) ?? 0) + 1);
  });
  const [best] = [...counts].sort((one, other) => other[1] - one[1]);
  return best && best[1] * 2 >= range.formulas.length ? best[0] : undefined;
};

/** Whether the only row of a new table is still blank: nothing in it but formulas. */
const isBlankRow = (range: Excel.Range): boolean =>
  (range.formulas.at(-1) ?? []).every(
    (cell: unknown, column: number) =>
      cell === "" || readFormula(cell, range.values.at(-1)?.[column]) !== null,
  );

/**
 * Appends rows to a table: one `rows.add` for as many rows as fit into a request, above the totals row. What stands
 * beneath the table moves down in its columns; where that would tear something, Excel refuses and nothing is written.
 *
 * Formulas of calculated columns and number formats are written with the rows, because Excel fills them in by itself
 * only where the teacher's own options say so.
 */
export async function appendToTable(
  context: Excel.RequestContext,
  onRefusal: (takeBack: () => Promise<void>) => void,
  name: string,
  rows: readonly (readonly CellInput[])[],
): Promise<() => { sheet: string; area: Area }> {
  const table = context.workbook.tables.getItem(name);
  const sheet = table.worksheet;
  const whole = table.getRange();
  table.load("showHeaders,showTotals");
  whole.load(PLACE);
  loadProtection(sheet);
  await context.sync();
  refuseProtected(sheet);

  const { top, left, bottom, right } = areaOf(whole);
  const entered = enterRows(rows, right - left + 1);
  const bodyTop = top + (table.showHeaders ? 1 : 0);
  const bodyBottom = bottom - (table.showTotals ? 1 : 0);
  // A table without any row is looked at in its header row: no formulas there, and no format of note.
  const lookedTop = Math.min(bodyBottom, Math.max(bodyTop, bodyBottom - ROWS_LOOKED_AT + 1));
  const ending = rangeOf(sheet, { top: lookedTop, left, bottom: bodyBottom, right });
  ending.load("values,formulas,formulasR1C1,numberFormat");
  await context.sync();

  // A new table has one blank row; the first record belongs there.
  const isBlank = bodyTop === bodyBottom && isBlankRow(ending);
  const first = isBlank ? bodyBottom : bodyBottom + 1;
  const last = first + rows.length - 1;

  onRefusal(async () => {
    const grown = table.getRange();
    grown.load("rowCount");
    await context.sync();
    const surplus = grown.rowCount - whole.rowCount;
    if (surplus > 0)
      rangeOf(sheet, { top: bodyBottom + 1, left, bottom: bodyBottom + surplus, right }).delete("Up");
    if (isBlank)
      rangeOf(sheet, { top: bodyBottom, left, bottom: bodyBottom, right }).formulas =
        ending.formulas.slice(-1);
    await context.sync();
  });

  const added = isBlank ? entered.slice(1) : entered;
  for (const [from, to] of bandsOf(added)) {
    if (from > 0) await context.sync();
    table.rows.add(
      -1,
      added.slice(from, to).map((row) => row.map((cell) => cell ?? "")),
    );
  }
  if (isBlank) rangeOf(sheet, { top: first, left, bottom: first, right }).formulas = entered.slice(0, 1);
  const formats = ending.numberFormat.at(-1) ?? [];
  rangeOf(sheet, { top: first, left, bottom: last, right }).numberFormat = rows.map(() => formats);
  for (let column = 0; column <= right - left; column++) {
    const formula = columnFormula(ending, column);
    if (formula === undefined || !rows.some((row) => row[column] === undefined)) continue;
    const cells = rangeOf(sheet, { top: first, left: left + column, bottom: last, right: left + column });
    cells.formulasR1C1 = rows.map((row) => [row[column] === undefined ? formula : null]);
  }
  return () => ({ sheet: sheet.name, area: { top: first, left, bottom: last, right } });
}
