import { EmbeddedSheet } from "../../../src/adapters/embedded/embedded-sheet";
import { runSheetContract } from "../../contracts/sheet-contract";
import { openDescription } from "./open-description";

runSheetContract("The embedded adapter", async (start) => {
  const workbook = openDescription(start);
  return {
    sheet: new EmbeddedSheet(workbook),
    typeInto: async (sheet, row, column, value) => {
      workbook.setCell(sheet, row, column, value);
    },
    beneathTable: "shifts",
    beneathRange: "refuses",
    calculates: false,
    charts: true,
  };
});
