import { HostError } from "../../ports/sheet";
import { readFormula } from "./cell-content";
import { areaOf, PLACE, rangeOf } from "./cell-transfer";
import { loadProtection, refuseProtected } from "./sheet-protection";

/** Rows next to one another, from the bottom up: those above keep their place while the lower ones go. */
const runsOf = (rows: readonly number[]): { top: number; bottom: number }[] => {
  const runs: { top: number; bottom: number }[] = [];
  for (const row of [...new Set(rows)].sort((a, b) => b - a)) {
    const last = runs.at(-1);
    if (last && last.top === row + 1) last.top = row;
    else runs.push({ top: row, bottom: row });
  }
  return runs;
};

/**
 * Takes rows out of a table; what stands beneath moves up in its columns. The table keeps one row, blanked. Where Excel
 * breaks off between two places, the rows already gone are put back at the table's end.
 */
export async function removeTableRows(
  context: Excel.RequestContext,
  onRefusal: (takeBack: () => Promise<void>) => void,
  name: string,
  rows: readonly number[],
): Promise<() => void> {
  const table = context.workbook.tables.getItem(name);
  const sheet = table.worksheet;
  const whole = table.getRange();
  table.load("showHeaders,showTotals");
  whole.load(`${PLACE},formulas,values`);
  loadProtection(sheet);
  await context.sync();
  refuseProtected(sheet);
  const { top, left, bottom, right } = areaOf(whole);
  const first = top + (table.showHeaders ? 1 : 0);
  const last = bottom - (table.showTotals ? 1 : 0);
  if (rows.some((row) => row < first || row > last))
    throw new HostError(`The table "${name}" has no such row. Read it again and try once more.`);
  const all = new Set(rows).size === last - first + 1;
  const runs = runsOf(all ? rows.filter((row) => row !== first) : rows);
  const before: unknown[][] = whole.formulas;
  onRefusal(async () => {
    const now = table.getRange();
    now.load("rowCount");
    await context.sync();
    const gone = runs.flatMap((run) =>
      Array.from({ length: run.bottom - run.top + 1 }, (_, down) => before[run.top + down - top] ?? []),
    );
    const lost = gone.slice(0, whole.rowCount - now.rowCount);
    if (lost.length > 0) table.rows.add(-1, lost as (string | number | boolean)[][]);
    await context.sync();
  });
  for (const run of runs) rangeOf(sheet, { ...run, left, right }).delete("Up");
  if (all) {
    const values: unknown[][] = whole.values;
    rangeOf(sheet, { top: first, bottom: first, left, right }).formulas = [
      (before[first - top] ?? []).map((formula, column) =>
        readFormula(formula, values[first - top]?.[column]) === null ? "" : null,
      ),
    ];
  }
  return () => undefined;
}
