import type { Area } from "../../domain/area";
import type { WorkbookChange } from "../../spreadsheet/workbook";
import { columnOf, rowOf } from "../../spreadsheet/workbook";
import type { ModelChange } from "../grid/grid-model";

/** The workbook's changes as the grid wants them. */
export const modelChanges = (changes: readonly WorkbookChange[]): readonly ModelChange[] =>
  changes.map((change) => {
    if (change.kind === "cells") return { sheet: change.sheet, keys: change.keys };
    return { sheet: change.edit.kind === "add-chart" ? change.edit.chart.sheet : change.edit.sheet };
  });

/** Where changes happened: the first sheet touched, with the smallest area around its cells where there are any. */
export function touchedArea(
  changes: readonly WorkbookChange[],
): { readonly sheet: string; readonly area?: Area } | undefined {
  const touched = modelChanges(changes);
  const sheet = touched[0]?.sheet;
  if (sheet === undefined) return undefined;
  const keys = touched.filter((change) => change.sheet === sheet).flatMap((change) => change.keys ?? []);
  if (keys.length === 0) return { sheet };
  const rows = keys.map(rowOf);
  const columns = keys.map(columnOf);
  const least = (numbers: readonly number[]): number => numbers.reduce((a, b) => Math.min(a, b));
  const most = (numbers: readonly number[]): number => numbers.reduce((a, b) => Math.max(a, b));
  return {
    sheet,
    area: { top: least(rows), bottom: most(rows), left: least(columns), right: most(columns) },
  };
}
