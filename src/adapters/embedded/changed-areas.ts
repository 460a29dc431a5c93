import type { Area } from "../../domain/area";
import type { SheetChange } from "../../ports/sheet";
import type { WorkbookChange } from "../../spreadsheet/workbook";
import { columnOf, rowOf } from "../../spreadsheet/workbook";

/** One change a sheet: the smallest area around its changed cells, or no area where its structure changed. */
export function changesBySheet(changes: readonly WorkbookChange[]): readonly SheetChange[] {
  const areas = new Map<string, Area | undefined>();
  for (const change of changes) {
    if (change.kind === "structure") {
      areas.set(change.edit.kind === "add-chart" ? change.edit.chart.sheet : change.edit.sheet, undefined);
      continue;
    }
    const known = areas.get(change.sheet);
    if (areas.has(change.sheet) && known === undefined) continue;
    areas.set(change.sheet, around(change.keys, known));
  }
  return [...areas].map(([sheet, area]) => (area === undefined ? { sheet } : { sheet, area }));
}

function around(keys: readonly number[], start: Area | undefined): Area | undefined {
  let area = start;
  for (const key of keys) {
    const row = rowOf(key);
    const column = columnOf(key);
    area = {
      top: Math.min(area?.top ?? row, row),
      left: Math.min(area?.left ?? column, column),
      bottom: Math.max(area?.bottom ?? row, row),
      right: Math.max(area?.right ?? column, column),
    };
  }
  return area;
}
