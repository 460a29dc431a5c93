import { describe, expect, it } from "vitest";
import { MemorySheet } from "../../src/adapters/memory/memory-sheet";
import { dayOf } from "../../src/domain/calendar";
import { readRecords } from "../../src/records/read-records";
import { reportTables } from "../../src/records/table-report";
import { drawSheet } from "./drawn-sheet";

const day = (year: number, month: number, date: number): number | undefined => dayOf({ year, month, date });
const table = (
  name: string,
  top: number,
  left: number,
  bottom: number,
  right: number,
  totalsRow = false,
): {
  name: string;
  area: { top: number; left: number; bottom: number; right: number };
  totalsRow: boolean;
} => ({
  name,
  area: { top, left, bottom, right },
  totalsRow,
});

describe("tables of the host", () => {
  it("end at the last row that holds data, above the totals row and rows kept free", async () => {
    const drawing = `
    Title
    Date | Pupil | Words | Errors | Rate
    @2026-09-07 | Heron | 84 | 3 | =[@Words]-[@Errors]->81
    @2026-09-14 | Heron | 80 | 3 | =[@Words]-[@Errors]->77
     | | | | =[@Words]-[@Errors]->0
    Total | | 164 | 6 | =SUBTOTAL(101,E3:E5)->79`;
    const [found] = reportTables(
      await readRecords(
        new MemorySheet([drawSheet("Log", drawing, { tables: [table("Probes", 1, 0, 5, 4, true)] })]),
      ),
    );
    expect(found).toMatchObject({ range: "A2:E4", records: 2, faults: [] });
  });

  it("stand beside one another without a blank column", async () => {
    const drawing = `
    Date | WPM | Date | Score
    @2026-09-07 | 40 | @2026-10-07 | 7
    @2026-09-14 | 41 | |`;
    const tables = [table("A", 0, 0, 2, 1), table("B", 0, 2, 1, 3)];
    const found = reportTables(await readRecords(new MemorySheet([drawSheet("Log", drawing, { tables })])));
    expect(found.map(({ range, records }) => [range, records])).toEqual([
      ["A1:B3", 2],
      ["C1:D2", 1],
    ]);
  });

  it("keep hidden sheets and the order of sheets", async () => {
    const rows = "Date | WPM\n@2026-09-07 | 40";
    const { blocks, probes } = await readRecords(
      new MemorySheet([
        drawSheet("Heron", rows),
        drawSheet("Old", rows, { hidden: true }),
        drawSheet("Plover", rows),
      ]),
    );
    expect(blocks.map(({ sheet, hidden }) => [sheet, hidden])).toEqual([
      ["Heron", false],
      ["Old", true],
      ["Plover", false],
    ]);
    expect(probes.map(({ pupil }) => pupil)).toEqual(["Heron", "Old", "Plover"]);
  });
});

describe("records", () => {
  it("carry every column, times in seconds, accuracy as a share", async () => {
    const drawing = `
    Date | Pupil | Task | Sign | Passage | Unit | Attempted | Errors | Correct | Time | Accuracy | Code | Medium | Prompt | Phase | Notes
    @2026-09-07 | Heron | read aloud | ch | The Fox | words | 84 | 3 | 81 | '1:30 | 96 | contracted | braille | verbal | A | -`;
    const { probes } = await readRecords(new MemorySheet([drawSheet("Log", drawing)]));
    expect(probes).toEqual([
      {
        pupil: "Heron",
        day: day(2026, 9, 7),
        task: "read aloud",
        sign: "ch",
        material: "The Fox",
        unit: "words",
        words: 84,
        errors: 3,
        correct: 81,
        seconds: 90,
        accuracy: 0.96,
        code: "contracted",
        medium: "braille",
        support: "verbal",
        phase: "A",
        source: { sheet: "Log", row: 2 },
      },
    ]);
  });

  it("make minutes and seconds in two columns one time, and minutes seconds", async () => {
    const both = drawSheet("Both", "Date | Words | Errors | Min | Sec\n@2026-09-07 | 84 | 3 | 1 | 30");
    const minutes = drawSheet("Minutes", "Date | Words | Errors | Minutes\n@2026-09-07 | 84 | 3 | 1.5");
    const { probes } = await readRecords(new MemorySheet([both, minutes]));
    expect(probes.map(({ seconds }) => seconds)).toEqual([90, 90]);
  });

  it("fill pupil and date down, and phases that are written where they begin", async () => {
    const drawing = `
    Date | Pupil | Sign | Right | Out of | Phase
    @2026-09-07 | Heron | a | 8 | 10 | Baseline
     | | b | 7 | 10 |
    @2026-09-14 | Plover | a | 8 | 10 | Songs
     | | b | 7 | 10 |`;
    const { probes } = await readRecords(new MemorySheet([drawSheet("Log", drawing)]));
    expect(probes.map(({ pupil, day: on, phase }) => [pupil, on, phase])).toEqual([
      ["Heron", day(2026, 9, 7), "Baseline"],
      ["Heron", day(2026, 9, 7), "Baseline"],
      ["Plover", day(2026, 9, 14), "Songs"],
      ["Plover", day(2026, 9, 14), "Songs"],
    ]);
  });

  it("leave a blank phase blank where the row above may be another pupil's", async () => {
    const drawing = `
    Date | Pupil | Right | Out of | Phase
    @2026-09-07 | Heron | 8 | 10 | Baseline
    @2026-09-07 | Plover | 7 | 10 |
    @2026-09-14 | Heron | 8 | 10 | Songs
    @2026-09-14 | Plover | 7 | 10 |`;
    const { probes } = await readRecords(new MemorySheet([drawSheet("Log", drawing)]));
    expect(probes.map(({ pupil, phase }) => [pupil, phase])).toEqual([
      ["Heron", "Baseline"],
      ["Plover", undefined],
      ["Heron", "Songs"],
      ["Plover", undefined],
    ]);
  });

  it("count marks: prompted and no response are opportunities, absent is none", async () => {
    const drawing = "Letter | @2026-09-07 | @2026-09-14 | @2026-09-21\na | + | P | A\nb | NR | '++- | 1";
    const { probes } = await readRecords(new MemorySheet([drawSheet("Heron", drawing)]));
    expect(
      probes.map(({ pupil, sign, correct, opportunities }) => [pupil, sign, correct, opportunities]),
    ).toEqual([
      ["Heron", "a", 1, 1],
      ["Heron", "a", 0, 1],
      ["Heron", "b", 0, 1],
      ["Heron", "b", 2, 3],
      ["Heron", "b", 1, 1],
    ]);
  });

  it("follow the teacher's choices of columns, and leave blocks out", async () => {
    const sheet = new MemorySheet([
      drawSheet("Log", "Date | Pupil | Got | Shown\n@2026-09-07 | Heron | 8 | 10"),
    ]);
    const { blocks } = await readRecords(sheet);
    const key = blocks[0]?.key ?? "";
    const chosen = await readRecords(sheet, {
      blocks: { [key]: { columns: { Got: "score", Shown: "none" } } },
    });
    expect(chosen.probes).toMatchObject([{ score: 8 }]);
    expect(chosen.probes[0]).not.toHaveProperty("opportunities");
    expect((await readRecords(sheet, { blocks: { [key]: { leftOut: true } } })).probes).toEqual([]);
  });

  it("take an answer for the workbook only where the data are open", async () => {
    const settled = drawSheet("A", "Date | WPM\n'13/10/2026 | 40\n'7/10/2026 | 41");
    const open = drawSheet("B", "Date | WPM\n'7/10/2026 | 41");
    const { probes } = await readRecords(new MemorySheet([settled, open]), { dayOrder: "mdy" });
    expect(probes.map(({ day: on }) => on)).toEqual([day(2026, 10, 13), day(2026, 10, 7), day(2026, 7, 10)]);
  });
});

describe("goals and taught signs", () => {
  it.each([
    [
      "Pupil | Goal text | Task | Measure | Code | Unit | Criterion | Start date | Start score | Goal date | Goal score",
      "Heron | reads | read aloud | rate | contracted | words | 90% | @2026-09-07 | 40 | @2027-06-01 | 60",
    ],
    [
      "Child | Goal (from the plan) | Task | Measure | Grade | Unit | Criterion | Start | Start score | By | Goal score",
      "Heron | reads | read aloud | rate | contracted | words | 90% | @2026-09-07 | 40 | @2027-06-01 | 60",
    ],
    [
      "Student | Wording | Skill | Measured by | Braille code | Units | Criteria | Baseline date | Baseline | Target date | Target",
      "Heron | reads | read aloud | rate | contracted | words | 90% | @2026-09-07 | 40 | @2027-06-01 | 60",
    ],
  ])("%s", async (header, row) => {
    const { goals, blocks } = await readRecords(
      new MemorySheet([drawSheet("Plans", `Goals of the year\n\n${header}\n${row}`)]),
    );
    expect(blocks.flatMap(({ faults }) => faults)).toEqual([]);
    expect(goals).toMatchObject([
      {
        pupil: "Heron",
        startDay: day(2026, 9, 7),
        startScore: 40,
        goalDay: day(2027, 6, 1),
        goalScore: 60,
        measure: "rate",
        code: "contracted",
      },
    ]);
  });

  it("a goal that lacks its start, or ends before it, is a fault at its cell", async () => {
    const drawing = `
    Pupil | Start date | Start score | Goal date | Goal score
    Heron | | 40 | @2027-06-01 | 60
    Plover | @2026-09-07 | 40 | @2026-09-01 | 60
    Dunlin | @2026-09-07 | forty | @2027-06-01 | 60
    Avocet | @2026-09-07 | 80% | @2027-06-01 | 95%`;
    const { goals, blocks } = await readRecords(new MemorySheet([drawSheet("Goals", drawing)]));
    expect(blocks[0]?.faults.map(({ cell }) => cell)).toEqual(["B2", "D3", "C4"]);
    expect(goals).toMatchObject([{ pupil: "Avocet", startScore: 0.8, goalScore: 0.95 }]);
  });

  it("signs with the day they were introduced, or without", async () => {
    const drawing =
      "Signs taught\nPupil | Sign | Introduced | Reading | Writing | Check again\nHeron | a | @2026-09-07 | | |\nHeron | ch | | | |";
    const { taught, probes } = await readRecords(new MemorySheet([drawSheet("Taught", drawing)]));
    expect(probes).toEqual([]);
    expect(taught).toMatchObject([
      { pupil: "Heron", sign: "a", introduced: day(2026, 9, 7) },
      { pupil: "Heron", sign: "ch" },
    ]);
  });
});
