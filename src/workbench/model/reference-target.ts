import type { Area } from "../../domain/area";
import { parseArea } from "../../spreadsheet/address";
import type { OpenWorkbook } from "../../spreadsheet/open-workbook";
import type { Table } from "../../spreadsheet/workbook";

/** Cells on a sheet. */
export interface Target {
  readonly sheet: string;
  readonly area: Area;
}

/**
 * The cells that a plain reference names: `B2:B9`, `'My sheet'!A1`, a table, a table's column `Taught[Sign]`, or a
 * defined name for one of these. Undefined where it is none of them or a computed one.
 *
 * @param home - sheet that an address without a sheet is on
 */
export function findTarget(workbook: OpenWorkbook, reference: string, home: string): Target | undefined {
  const text = reference.trim().replace(/^=/, "");
  const sheeted = /^(?:'((?:[^']|'')+)'|([^'!]+))!(.+)$/.exec(text);
  const named = sheeted?.[1]?.replaceAll("''", "'") ?? sheeted?.[2] ?? home;
  const sheet = workbook.sheet(named)?.name;
  const area = parseArea(sheeted?.[3] ?? text);
  if (area !== undefined) return sheet === undefined ? undefined : { sheet, area };
  return findTablePart(workbook, text) ?? findName(workbook, text, home);
}

function findTablePart(workbook: OpenWorkbook, text: string): Target | undefined {
  const match = /^([\p{L}_][\p{L}\p{N}_.]*)(?:\[([^[\]#]+)\])?$/u.exec(text);
  const found = workbook.table(match?.[1] ?? "");
  if (found === undefined) return undefined;
  const { table, sheet } = found;
  if (match?.[2] === undefined) return { sheet: sheet.name, area: table.area };
  const wanted = match[2].toLowerCase();
  const index = table.columns.findIndex((column) => column.name.toLowerCase() === wanted);
  if (index < 0) return undefined;
  const column = table.area.left + index;
  return { sheet: sheet.name, area: { ...dataOf(table), left: column, right: column } };
}

function findName(workbook: OpenWorkbook, text: string, home: string): Target | undefined {
  const wanted = text.toLowerCase();
  const matches = workbook.names.filter((name) => name.name.toLowerCase() === wanted);
  const name =
    matches.find((match) => match.sheet === home) ?? matches.find((match) => match.sheet === undefined);
  if (name === undefined || name.formula.toLowerCase() === wanted) return undefined;
  return findTarget(workbook, name.formula, home);
}

/** The rows of a table between header and totals. */
const dataOf = ({ area, headerRow, totalsRow }: Table): Area => ({
  ...area,
  top: area.top + (headerRow ? 1 : 0),
  bottom: area.bottom - (totalsRow ? 1 : 0),
});
