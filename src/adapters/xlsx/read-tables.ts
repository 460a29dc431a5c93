import { parseArea } from "../../spreadsheet/address";
import type { Table } from "../../spreadsheet/workbook";
import { parseFileText } from "./cell-text";
import type { FormulaSpelling } from "./formula-spelling";
import type { WorkbookPackage } from "./workbook-package";
import { childOf, childrenOf } from "./xml-source";

/** The tables of a sheet, in the order of its relationships. */
export const readTables = (parts: WorkbookPackage, sheetPart: string, spelling: FormulaSpelling): Table[] =>
  parts
    .relationships(sheetPart)
    .filter((one) => one.type === "table" && parts.has(one.target))
    .flatMap((one) => readTable(parts, one.target, spelling) ?? []);

const readTable = (parts: WorkbookPackage, part: string, spelling: FormulaSpelling): Table | undefined => {
  const { root } = parts.document(part);
  const area = parseArea(root.attributes["ref"] ?? "");
  if (!area) return undefined;
  const style = childOf(root, "tableStyleInfo")?.attributes["name"];
  const name = root.attributes["displayName"] ?? root.attributes["name"] ?? "";
  return {
    name,
    area,
    headerRow: root.attributes["headerRowCount"] !== "0",
    totalsRow: Number(root.attributes["totalsRowCount"] ?? 0) > 0,
    columns: childrenOf(childOf(root, "tableColumns"), "tableColumn").map((column) => {
      const formula = childOf(column, "calculatedColumnFormula")?.text;
      const label = column.attributes["totalsRowLabel"];
      return {
        name: parseFileText(column.attributes["name"] ?? ""),
        ...(formula !== undefined && formula !== "" && { formula: spelling.toTyped(formula, name) }),
        ...(label !== undefined && { totalsLabel: parseFileText(label) }),
      };
    }),
    ...(style !== undefined && { style }),
  };
};
