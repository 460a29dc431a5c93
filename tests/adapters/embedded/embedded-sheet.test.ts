import { expect, it } from "vitest";
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

it("takes a write back although a setting was kept since, and refuses where a cell was typed since", async () => {
  const workbook = openDescription([{ name: "Notes", rows: [["Heron"]] }]);
  const sheet = new EmbeddedSheet(workbook);
  await sheet.writeBlock("Notes", { row: 1, column: 0 }, [["Plover"]]);
  await sheet.keepSetting("example", "kept");
  await sheet.undo();
  expect(workbook.sheet("Notes")?.cells.size).toBe(1);
  expect(await sheet.readSetting("example")).toBe("kept");
  await sheet.writeBlock("Notes", { row: 1, column: 0 }, [["Plover"]]);
  workbook.setCell("Notes", 2, 0, "Dunlin");
  await sheet.keepSetting("example", "again");
  await expect(sheet.undo()).rejects.toThrow("was changed since");
});
