import { areaHolds } from "../../../src/spreadsheet/address";
import type { OpenWorkbook } from "../../../src/spreadsheet/open-workbook";
import type { CellLook } from "../../contracts/sheet-contract";

/** Font and validation of a cell of the model. */
export function lookAt(workbook: OpenWorkbook, sheet: string, row: number, column: number): CellLook {
  const rule = workbook
    .sheet(sheet)
    ?.validations.find(({ areas }) => areas.some((area) => areaHolds(area, row, column)));
  return {
    font: workbook.styles[workbook.styleAt(sheet, row, column)]?.font?.name,
    ...(rule?.type === "list" ? { choices: rule.formula1?.slice(1, -1).split(",") } : {}),
    ...(rule?.type === "date" && rule.refuses === true ? { daysOnly: true } : {}),
  };
}
