import { MemorySheet } from "../../../src/adapters/memory/memory-sheet";
import { runSheetContract } from "../../contracts/sheet-contract";

runSheetContract("The memory adapter", async (start) => {
  const sheet = new MemorySheet(start);
  return {
    sheet,
    typeInto: async (name, row, column, value) => sheet.typeInto(name, row, column, value),
    beneathTable: "shifts",
    beneathRange: "refuses",
    calculates: false,
    charts: true,
    lookAt: async (name, row, column) => {
      const { font, takes } = sheet.columnAt(name, row, column) ?? {};
      return {
        font,
        ...(takes === "days" ? { daysOnly: true } : takes ? { choices: takes.choices } : {}),
      };
    },
  };
});
