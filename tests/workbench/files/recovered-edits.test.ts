import { describe, expect, it } from "vitest";
import { cellKey } from "../../../src/spreadsheet/workbook";
import type { OpenWorkbook } from "../../../src/spreadsheet/open-workbook";
import { recordEdits, replayEdits } from "../../../src/workbench/files/recovered-edits";
import { openDescription } from "../../adapters/embedded/open-description";
import { STARTING_WORKBOOK } from "../../contracts/starting-workbook";

/** What stands in every sheet, for comparison. */
const contents = (workbook: OpenWorkbook) =>
  workbook.sheets.map((sheet) => ({
    name: sheet.name,
    tables: sheet.tables.map(({ area }) => area),
    cells: [...sheet.cells]
      .filter(([, cell]) => cell.value !== null || cell.formula !== undefined)
      .map(([key, cell]) => [key, cell.formula ?? cell.value, workbook.styles[cell.style]?.numberFormat])
      .sort((a, b) => Number(a[0]) - Number(b[0])),
  }));

const edits: readonly (readonly [string, (workbook: OpenWorkbook) => void])[] = [
  [
    "typed cells, emptied cells, formulas",
    (workbook) => {
      workbook.setCells("Reading log", 3, 2, [[70, null, { formula: "C4*2" }]]);
      workbook.clear("Kept", { top: 0, left: 0, bottom: 0, right: 1 });
    },
  ],
  [
    "a typed date with its format",
    (workbook) => void workbook.setCell("Empty", 2, 2, 46346, { numberFormat: "dd/mm/yyyy" }),
  ],
  [
    "a row added to a table",
    (workbook) => void workbook.appendToTable("Probes", [[46314, "Plover", 40, 2, undefined]]),
  ],
  [
    "rows put in and taken out around edits",
    (workbook) => {
      workbook.setCell("Reading log", 4, 2, 99);
      workbook.insertRows("Reading log", 3, 2);
      workbook.setCell("Reading log", 3, 2, 50);
      workbook.deleteRows("Stacked", 1, 1);
    },
  ],
  [
    "a new sheet",
    (workbook) => {
      workbook.addSheet("More");
      workbook.setCell("More", 0, 0, "Sign");
    },
  ],
  [
    "an edit undone",
    (workbook) => {
      workbook.insertRows("Reading log", 3, 2);
      workbook.undo();
      workbook.setCell("Reading log", 3, 2, 1);
    },
  ],
];

describe("recovering after a crash", () => {
  it.each(edits)("brings back %s", (_, edit) => {
    const lost = openDescription(STARTING_WORKBOOK);
    edit(lost);
    const kept = structuredClone(recordEdits(lost));
    const again = openDescription(STARTING_WORKBOOK);
    expect(replayEdits(again, kept)).toEqual([]);
    expect(contents(again)).toEqual(contents(lost));
  });

  it("brings back settings", () => {
    const lost = openDescription(STARTING_WORKBOOK);
    lost.keepSetting("columns", "{}");
    const again = openDescription(STARTING_WORKBOOK);
    replayEdits(again, recordEdits(lost));
    expect(again.settings.get("columns")).toBe("{}");
  });

  it("has nothing to keep of a workbook only read", () => {
    expect(recordEdits(openDescription(STARTING_WORKBOOK))).toEqual({ edits: [], cells: [], settings: [] });
  });

  it("does the rest where one edit cannot be made, and says so", () => {
    const again = openDescription(STARTING_WORKBOOK);
    const refused = replayEdits(again, {
      edits: [{ kind: "insert-rows", sheet: "Gone", at: 0, count: 1 }],
      cells: [{ sheet: "Empty", cells: [{ row: 0, column: 0, content: 5, numberFormat: "General" }] }],
      settings: [],
    });
    expect(refused).toHaveLength(1);
    expect(again.sheet("Empty")?.cells.get(cellKey(0, 0))?.value).toBe(5);
  });
});
