import { describe, expect, it } from "vitest";
import { MemorySheet } from "../../../src/adapters/memory/memory-sheet";
import { OfficeSheet } from "../../../src/adapters/office/office-sheet";
import { plainTrajectory } from "../../../src/charts/plain-chart";
import { drawTrajectory } from "../../../src/charts/trajectory";
import { HostError } from "../../../src/ports/sheet";
import type { ColumnChoices } from "../../../src/records/column-choices";
import { readRecords } from "../../../src/records/read-records";
import { putChartsInSheet, putTableInSheet } from "../../../taskpane/views/chart-in-sheet";
import { leaveOutSheets } from "../../../taskpane/views/left-out-sheets";
import { StrictExcel } from "../../adapters/office/stand-in/strict-excel";
import { TRAJECTORIES } from "../../charts/trajectories";

class ChartlessSheet extends MemorySheet {
  override addChart(): Promise<void> {
    return Promise.reject(new HostError("No charts here."));
  }
}

/** As Excel is, without an undo of its own, and here with room for so many tables. */
const excelWithRoomFor = (most: number): OfficeSheet => {
  const sheet = new OfficeSheet(new StrictExcel([{ name: "Probes", rows: [["Date"]] }]).host, (error) => {
    throw error;
  });
  const addTable = sheet.addTable.bind(sheet);
  let tables = 0;
  sheet.addTable = (table) =>
    ++tables > most ? Promise.reject(new HostError("No more tables.")) : addTable(table);
  return sheet;
};

const trajectory = TRAJECTORIES["one-phase"];
if (trajectory === undefined) throw new Error("No trajectory.");
const chart = plainTrajectory(trajectory);
const picture = drawTrajectory(trajectory);

const start = [{ name: "Probes", rows: [["Date"]] }];

describe("a chart put into the sheet", () => {
  it("has its numbers as a table of its own, named without the pupil", async () => {
    const sheet = new MemorySheet(start);
    expect((await putChartsInSheet(sheet, [{ chart, picture }])).words).toBe(
      "The chart, its numbers and its description are on the new sheet Chart1.",
    );
    const { values } = await sheet.read("Chart1", { top: 0, left: 0, bottom: 2, right: 2 });
    expect(values[0]).toEqual(["Date", "Words read correctly a minute", "Aim"]);
    expect(values[1]).toEqual([trajectory.aimLine?.fromDay, null, 20]);
    expect((await putChartsInSheet(sheet, [{ chart, picture }])).words).toContain("Chart2");
  });

  it("goes with others as one step, which one undo takes back", async () => {
    const sheet = new MemorySheet(start);
    const { words, sheets, undo } = await putChartsInSheet(sheet, [
      { chart, picture },
      { chart, picture },
    ]);
    expect(words).toBe("2 charts, their numbers and descriptions are on the new sheets Chart1 and Chart2.");
    expect(sheets).toEqual(["Chart1", "Chart2"]);
    expect(sheet.charts).toHaveLength(2);
    await undo();
    expect((await sheet.outline()).map(({ name }) => name)).toEqual(["Probes"]);
  });

  it("leaves nothing behind where the second is refused, in a host without groups", async () => {
    const sheet = excelWithRoomFor(1);
    await expect(
      putChartsInSheet(sheet, [
        { chart, picture },
        { chart, picture },
      ]),
    ).rejects.toThrow("No more tables.");
    expect((await sheet.outline()).map(({ name }) => name)).toEqual(["Probes"]);
  });

  it("is refused where no chart has a number", async () => {
    const empty = { ...chart, paths: [], lines: [] };
    await expect(putChartsInSheet(new MemorySheet(start), [{ chart: empty, picture }])).rejects.toThrow(
      /add probes first/,
    );
  });

  it("leaves numbers and description where the host draws no charts, and says so", async () => {
    const sheet = new ChartlessSheet(start);
    expect((await putChartsInSheet(sheet, [{ chart, picture }])).words).toMatch(
      /draws no chart.*numbers and its description are on the new sheet Chart1/,
    );
    const { values } = await sheet.read("Chart1", { top: 0, left: 4, bottom: 1, right: 4 });
    expect(values).toEqual([[picture.title], [picture.summary[0]]]);
  });

  it("is no table of probes once it is left out, and would be one else", async () => {
    const sheet = new MemorySheet(start);
    const { sheets } = await putChartsInSheet(sheet, [{ chart, picture }]);
    const before = await readRecords(sheet);
    expect(before.probes.length).toBeGreaterThan(0);
    let kept: ColumnChoices = {};
    const keepChoices = (choices: ColumnChoices): Promise<void> => {
      kept = choices;
      return Promise.resolve();
    };
    await leaveOutSheets({ records: before, choices: {}, keepChoices }, sheets);
    expect((await readRecords(sheet, kept)).probes).toEqual([]);
  });
});

describe("a picture of signs put into the sheet", () => {
  const map = {
    title: "Plover: digits on 25 Nov 2026",
    summary: ["One sign.", "Reading, taught, 1: 7."],
    table: { caption: "", headings: ["Sign", "Braille", "Dots"], rows: [["=7", "⠛", "1245"]] },
  };

  it("is a table with its text beside, texts staying texts, and one step to take back", async () => {
    const sheet = new MemorySheet(start);
    const { words, undo } = await putTableInSheet(sheet, map, "Signs", { Braille: "A font" });
    expect(words).toContain("on the new sheet Signs1");
    const { values } = await sheet.read("Signs1", { top: 0, left: 0, bottom: 2, right: 4 });
    expect(values).toEqual([
      ["Sign", "Braille", "Dots", null, map.title],
      ["=7", "⠛", "1245", null, map.summary[0]],
      [null, null, null, null, map.summary[1]],
    ]);
    expect(sheet.columnAt("Signs1", 1, 1)?.font).toBe("A font");
    await undo();
    expect((await sheet.outline()).map(({ name }) => name)).toEqual(["Probes"]);
  });
});
