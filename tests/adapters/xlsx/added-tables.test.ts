import { describe, expect, it } from "vitest";
import { EmbeddedSheet } from "../../../src/adapters/embedded/embedded-sheet";
import { newWorkbook } from "../../../src/adapters/xlsx/new-workbook";
import { saveWorkbook } from "../../../src/adapters/xlsx/save-workbook";
import type { NewTable } from "../../../src/ports/sheet";
import { OpenWorkbook } from "../../../src/spreadsheet/open-workbook";
import { lookAt } from "../embedded/cell-look";
import {
  cellAt,
  changedParts,
  contentsOf,
  fixture,
  OPTIONS,
  partsOf,
  sheetOf,
  valueOf,
} from "./opened-files";

const LESSONS: NewTable = {
  name: "Given",
  sheet: "Given & held",
  columns: [
    { name: "Date", format: "yyyy-mm-dd", takes: "days", width: 12 },
    { name: "Held <?>", takes: { choices: ["yes", "pupil absent"] } },
    { name: "Minutes" },
    { name: "Hours", format: "0.00", formula: "=Given[[#This Row],[Minutes]]/60" },
    { name: "In braille", font: "Noto Sans Symbols 2" },
  ],
};

/** Writes through the port and saves. */
async function saveWith(
  bytes: Uint8Array,
  write: (sheet: EmbeddedSheet) => Promise<unknown>,
): Promise<Uint8Array> {
  const workbook = new OpenWorkbook(contentsOf(bytes));
  await write(new EmbeddedSheet(workbook));
  return valueOf(saveWorkbook(bytes, workbook, workbook.difference(), OPTIONS));
}

const TEACHERS = fixture("teachers-workbook.xlsx");

describe("a table made since the file was opened", () => {
  it.each([
    ["in a new workbook", newWorkbook()],
    ["in a teacher's workbook with charts and tables", TEACHERS],
  ])("comes back %s with its rows, formats, font, choices and formula", async (_, bytes) => {
    const saved = await saveWith(bytes, async (sheet) => {
      await sheet.addTable(LESSONS);
      await sheet.appendRows({ table: "Given" }, [[46314, "yes", 45, undefined, "⠓"]]);
      await sheet.appendRows({ table: "Given" }, [
        [46315, "=no", 30, undefined, "⠏"],
        [46316, "yes", 60, undefined, null],
      ]);
    });
    const workbook = new OpenWorkbook(contentsOf(saved));
    const { tables } = sheetOf(contentsOf(saved), "Given & held");
    expect(tables).toMatchObject([
      { name: "Given", area: { top: 0, left: 0, bottom: 3, right: 4 }, headerRow: true, totalsRow: false },
    ]);
    expect(tables[0]?.columns.map(({ name }) => name)).toEqual(LESSONS.columns.map(({ name }) => name));
    for (const row of [1, 2, 3]) {
      expect(lookAt(workbook, "Given & held", row, 0).daysOnly).toBe(true);
      expect(lookAt(workbook, "Given & held", row, 1).choices).toEqual(["yes", "pupil absent"]);
      expect(lookAt(workbook, "Given & held", row, 4).font).toBe("Noto Sans Symbols 2");
      expect(workbook.cell("Given & held", row, 3)?.formula).toBe("Given[[#This Row],[Minutes]]/60");
      expect(workbook.styles[workbook.styleAt("Given & held", row, 0)]?.numberFormat).toBe("yyyy-mm-dd");
    }
    expect(cellAt(contentsOf(saved), "Given & held", "B3")).toMatchObject({ value: "=no" });
    expect(workbook.sheet("Given & held")?.columnWidths.get(0)).toBe(12);
  });

  it("changes no part but those that list sheets, styles and types", async () => {
    const saved = await saveWith(TEACHERS, (sheet) => sheet.addTable(LESSONS));
    const allowed =
      /^(\[Content_Types\]\.xml|xl\/workbook\.xml|xl\/_rels\/workbook\.xml\.rels|xl\/styles\.xml|xl\/calcChain\.xml|xl\/tables\/table\d+\.xml|xl\/worksheets\/sheet\d+\.xml|xl\/worksheets\/_rels\/sheet\d+\.xml\.rels)$/;
    const changed = changedParts(TEACHERS, saved);
    expect(changed.filter((name) => !allowed.test(name))).toEqual([]);
    const old = partsOf(TEACHERS);
    expect(changed.filter((name) => old.has(name)).sort()).toEqual(
      ["[Content_Types].xml", "xl/_rels/workbook.xml.rels", "xl/styles.xml", "xl/workbook.xml"].sort(),
    );
    const ids = [...partsOf(saved)].flatMap(([name, text]) =>
      name.startsWith("xl/tables/") ? [/ id="(\d+)"/.exec(text)?.[1]] : [],
    );
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("leaves no trace where it is undone", async () => {
    const saved = await saveWith(TEACHERS, async (sheet) => {
      await sheet.group(async () => {
        await sheet.addTable(LESSONS);
        await sheet.appendRows({ table: "Given" }, [[46314, "yes", 45, undefined, "⠓"]]);
      });
      await sheet.undo();
    });
    expect(changedParts(TEACHERS, saved)).toEqual([]);
  });

  it("is saved with rows taken out of it, beside another table and a chart", async () => {
    const saved = await saveWith(newWorkbook("Given & held"), async (sheet) => {
      const row = (day: number) => [day, "yes", 30, undefined, null] as const;
      await sheet.addTable({ ...LESSONS, rows: [row(46314), row(46315), row(46316)] });
      await sheet.addTable({ name: "Other", sheet: "Other", columns: [{ name: "Word" }] });
      await sheet.removeRows("Given", [2]);
      await sheet.addChart({
        sheet: "Given & held",
        title: "Minutes",
        xTitle: "Date",
        yTitle: "Minutes",
        x: { top: 1, left: 0, bottom: 2, right: 0 },
        series: [{ name: "Minutes", y: { top: 1, left: 2, bottom: 2, right: 2 } }],
        at: { row: 5, column: 0 },
        summary: "Two lessons.",
      });
    });
    const contents = contentsOf(saved);
    expect(sheetOf(contents, "Given & held").tables[0]?.area.bottom).toBe(2);
    expect(sheetOf(contents, "Given & held").objects).toHaveLength(1);
    expect(["A2", "A3", "A4"].map((at) => cellAt(contents, "Given & held", at)?.value ?? null)).toEqual([
      46314,
      46316,
      null,
    ]);
    expect(sheetOf(contents, "Other").tables[0]?.name).toBe("Other");
  });
});
