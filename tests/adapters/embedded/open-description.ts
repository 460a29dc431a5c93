import { OpenWorkbook } from "../../../src/spreadsheet/open-workbook";
import type { Cell, CellStyle, Worksheet } from "../../../src/spreadsheet/workbook";
import { cellKey } from "../../../src/spreadsheet/workbook";
import type { StartingSheet, StartingWorkbook } from "../../contracts/starting-workbook";

/** Opens a described workbook in the model, as if it had been read from a file. */
export function openDescription(start: StartingWorkbook): OpenWorkbook {
  const styles: CellStyle[] = [{ numberFormat: "General" }];
  const styleOf = (numberFormat: string): number => {
    const known = styles.findIndex((style) => style.numberFormat === numberFormat);
    return known >= 0 ? known : styles.push({ numberFormat }) - 1;
  };
  return new OpenWorkbook({
    sheets: start.map((sheet) => openDescribedSheet(sheet, styleOf)),
    names: [],
    styles,
    date1904: false,
    settings: new Map(),
  });
}

function openDescribedSheet(sheet: StartingSheet, styleOf: (numberFormat: string) => number): Worksheet {
  const cells = new Map<number, Cell>();
  for (const [row, contents] of sheet.rows.entries()) {
    for (const [column, content] of contents.entries()) {
      const format = sheet.formats?.find(
        ({ area }) => row >= area.top && row <= area.bottom && column >= area.left && column <= area.right,
      );
      const style = format === undefined ? 0 : styleOf(format.format);
      if (content === null && style === 0) continue;
      const isFormula = typeof content === "object" && content !== null && "formula" in content;
      cells.set(
        cellKey(row, column),
        isFormula
          ? { value: content.value, formula: content.formula.slice(1), style }
          : { value: content, style },
      );
    }
  }
  return {
    name: sheet.name,
    visibility: sheet.hidden === true ? "hidden" : "visible",
    kind: "cells",
    cells,
    tables: (sheet.tables ?? []).map((table) => ({
      name: table.name,
      area: table.area,
      headerRow: true,
      totalsRow: table.totalsRow ?? false,
      columns: (sheet.rows[table.area.top] ?? [])
        .slice(table.area.left, table.area.right + 1)
        .map((heading) => {
          const formula = table.calculated?.[String(heading)];
          return { name: String(heading), ...(formula === undefined ? {} : { formula: formula.slice(1) }) };
        }),
    })),
    merges: [],
    objects: [],
    validations: [],
    comments: [],
    frozen: { rows: 0, columns: 0 },
    columnWidths: new Map(),
    defaultColumnWidth: 9,
    rowHeights: new Map(),
    defaultRowHeight: 15,
    columnStyles: new Map(),
    showGridLines: true,
    isProtected: false,
  };
}
