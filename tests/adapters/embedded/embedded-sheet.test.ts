import { EmbeddedSheet } from "../../../src/adapters/embedded/embedded-sheet";
import { Calculation, NO_FUNCTIONS } from "../../../src/spreadsheet/calculation";
import { runSheetContract } from "../../contracts/sheet-contract";
import type { SheetUnderTest } from "../../contracts/sheet-contract";
import type { StartingWorkbook } from "../../contracts/starting-workbook";
import { lookAt } from "./cell-look";
import { openDescription } from "./open-description";

function openEmbedded(start: StartingWorkbook, calculates: boolean): SheetUnderTest {
  const workbook = openDescription(start);
  const calculation = calculates
    ? new Calculation(workbook, { library: NO_FUNCTIONS, now: () => 46346 })
    : undefined;
  return {
    sheet: new EmbeddedSheet(workbook, calculation),
    typeInto: async (sheet, row, column, value) => {
      workbook.setCell(sheet, row, column, value);
    },
    beneathTable: "shifts",
    beneathRange: "refuses",
    calculates,
    charts: true,
    lookAt: async (name, row, column) => lookAt(workbook, name, row, column),
  };
}

runSheetContract("The embedded adapter", async (start) => openEmbedded(start, false));
runSheetContract("The embedded adapter with the calculation", async (start) => openEmbedded(start, true));
