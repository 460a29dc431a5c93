import { parseA1Ref, parseStructRef, tokenize } from "@borgar/fx/xlsx";
import { parseFormula } from "../../spreadsheet/formula";

/** What formulas of a workbook may refer to, in lower case. */
export interface KnownNames {
  readonly sheets: ReadonlySet<string>;
  readonly tables: ReadonlySet<string>;
}

/**
 * Whether a spreadsheet program can read a formula that was typed here. One that it cannot read makes it call the
 * whole file damaged: a formula that does not parse, or names a sheet or table that is not there.
 *
 * @param formula - as typed, without `=`
 */
export const isReadable = (formula: string, known: KnownNames): boolean => {
  if (!parseFormula(formula).ok) return false;
  return tokenize(formula, {}).every(({ type, value }) => {
    if (type === "structured") {
      const table = parseStructRef(value)?.table;
      return !table || known.tables.has(table.toLowerCase());
    }
    if (!/^range/.test(type) || !value.includes("!")) return true;
    const reference = parseA1Ref(value);
    if (!reference) return false;
    const { workbookName, sheetName } = reference;
    if (workbookName) return /^\d+$/.test(workbookName);
    return !sheetName || sheetName.split(":").every((name) => known.sheets.has(name.toLowerCase()));
  });
};

/** A formula of the file in which references to tables that are gone are `#REF!`. */
export const forgetTables = (formula: string, gone: ReadonlySet<string>): string => {
  if (gone.size === 0 || !formula.includes("[")) return formula;
  return tokenize(formula, {})
    .map(({ type, value }) => {
      const table = type === "structured" ? parseStructRef(value)?.table : undefined;
      return table && gone.has(table.toLowerCase()) ? "#REF!" : value;
    })
    .join("");
};
