import { describe, expect, it } from "vitest";
import { MemorySheet } from "../../../src/adapters/memory/memory-sheet";
import type { DescribedSheet } from "../../../src/adapters/memory/memory-workbook";
import { dayOf } from "../../../src/domain/calendar";
import { drawSheet } from "../../records/drawn-sheet";
import { openingSheet, runOverFiles } from "./workbook-harness";
import type { Run } from "./workbook-harness";

const NOV_20 = dayOf({ year: 2026, month: 11, date: 20 });
const PROBE = ["pupil=Heron", "date=2026-11-20", "words=84", "errors=3", "seconds=60"];

/** Logs into drawn sheets and gives the last row of the first sheet as values. */
async function log(
  sheets: readonly DescribedSheet[],
  ...args: string[]
): Promise<Run & { sheet: MemorySheet }> {
  const sheet = new MemorySheet(sheets);
  const run = await runOverFiles(
    "log",
    ["F.xlsx", ...args],
    { "F.xlsx": new Uint8Array([80]) },
    openingSheet(sheet),
  );
  return { ...run, sheet };
}

async function lastRow(
  sheet: MemorySheet,
  place = 0,
): Promise<{ values: unknown; formulas: unknown; formats: unknown }> {
  const outline = (await sheet.outline())[place];
  if (!outline?.used) throw new TypeError("the sheet is empty");
  const block = await sheet.read(outline.name, { ...outline.used, top: outline.used.bottom });
  return { values: block.values[0], formulas: block.formulas[0], formats: block.formats[0] };
}

describe("log writes in her own form", () => {
  it.each([
    {
      name: "true dates, seconds, a calculated column filled down",
      drawing: `
      Reading | | | | |
      Date | Learner | Words | Errs | Secs | WCPM
      @2026-09-07 | Heron | 84 | 3 | 60 | =(C3-D3)/E3*60->81`,
      args: PROBE,
      values: [NOV_20, "Heron", 84, 3, 60, null],
    },
    {
      name: "text dates, day first, and m:ss text",
      drawing: `
      Date | Pupil | Words | Errors | Time
      '13/10/2026 | Heron | 84 | 3 | '1:30`,
      args: PROBE,
      values: ["20/11/2026", "Heron", 84, 3, "1:00"],
    },
    {
      name: "text dates, month first, two digits of the year",
      drawing: `
      Date | Pupil | Words | Errors | Seconds
      '10/13/26 | Heron | 84 | 3 | 60`,
      args: PROBE,
      values: ["11/20/26", "Heron", 84, 3, 60],
    },
    {
      name: "dates in words, seconds with their unit",
      drawing: `
      Date | Pupil | Words | Errors | Time
      13 Oct 2026 | Heron | 84 | 3 | 58 sec`,
      args: PROBE,
      values: ["20 Nov 2026", "Heron", 84, 3, "60 sec"],
    },
    {
      name: "a true duration mm:ss",
      drawing: `
      Date | Pupil | Words | Errors | Time
      @2026-09-07 | Heron | 84 | 3 | ~0:01:30{mm:ss}`,
      args: PROBE,
      values: [NOV_20, "Heron", 84, 3, 60 / 86400],
    },
    {
      name: "clock values meant as m:ss",
      drawing: `
      Date | Pupil | Words | Errors | Time
      @2026-09-07 | Heron | 84 | 3 | ~1:30`,
      args: PROBE,
      values: [NOV_20, "Heron", 84, 3, 3600 / 86400],
    },
    {
      name: "clock values that are durations as they stand",
      drawing: `
      Date | Pupil | Words | Errors | Time
      @2026-09-07 | Heron | 84 | 3 | ~0:01:30{h:mm:ss}`,
      args: PROBE,
      values: [NOV_20, "Heron", 84, 3, 60 / 86400],
    },
    {
      name: "minutes",
      drawing: `
      Date | Pupil | Words | Errors | Mins
      @2026-09-07 | Heron | 184 | 3 | 2`,
      args: ["pupil=Heron", "date=2026-11-20", "words=84", "errors=3", "seconds=90"],
      values: [NOV_20, "Heron", 84, 3, 1.5],
    },
    {
      name: "her spelling of the pupil, the unit and the code",
      drawing: `
      Date | Pupil | Unit | Attempted | Errors | Braille code
      @2026-09-07 | HERON | Words | 84 | 3 | Contracted`,
      args: ["pupil=heron", "date=20 Nov 2026", "words=90", "errors=1", "code=contracted"],
      values: [NOV_20, "HERON", "Words", 90, 1, "Contracted"],
    },
    {
      name: "percentages as she has them",
      drawing: `
      Date | Pupil | Accuracy
      @2026-09-07 | Heron | 95`,
      args: ["pupil=Heron", "date=2026-11-20", "accuracy=92%"],
      values: [NOV_20, "Heron", 92],
    },
    {
      name: "correct of a total in one cell",
      drawing: `
      Date | Pupil | Correct
      @2026-09-07 | Heron | '45/50`,
      args: ["pupil=Heron", "date=2026-11-20", "correct=7", "opportunities=10"],
      values: [NOV_20, "Heron", "7/10"],
    },
    {
      name: "a text that begins like a formula stays text",
      drawing: `
      Date | Pupil | WCPM | Notes
      @2026-09-07 | Heron | 40 | ok`,
      args: ["pupil=Heron", "date=2026-11-20", "rate=41.5", "note==1+1"],
      values: [NOV_20, "Heron", 41.5, "=1+1"],
    },
  ])("$name", async ({ drawing, args, values }) => {
    const { code, err, sheet } = await log([drawSheet("Reading", drawing)], ...args);
    expect([code, err]).toEqual([0, ""]);
    expect((await lastRow(sheet)).values).toEqual(values);
  });

  it("fills the formula of the row above down and keeps its formats", async () => {
    const { sheet } = await log(
      [
        drawSheet(
          "Reading",
          "Date | Pupil | Words | Errors | Secs | WCPM\n@2026-09-07 | Heron | 84 | 3 | 60 | =(C2-D2)/E2*60->81{0.0}",
        ),
      ],
      ...PROBE,
    );
    const row = await lastRow(sheet);
    expect(row.formulas).toEqual([null, null, null, null, null, "=(C3-D3)/E3*60"]);
    expect(row.formats).toEqual(["dd/mm/yyyy", "General", "General", "General", "General", "0.0"]);
  });

  it("uses a row that her formulas stand ready in", async () => {
    const drawing = `
    Date | Pupil | Words | Errors | Secs | WCPM
    @2026-09-07 | Heron | 84 | 3 | 60 | =(C2-D2)/E2*60->81
     | | | | | =(C3-D3)/E3*60->
     | | | | | =(C4-D4)/E4*60->`;
    const { code, sheet } = await log([drawSheet("Reading", drawing)], ...PROBE);
    expect(code).toBe(0);
    const { values } = await sheet.read("Reading", { top: 2, left: 0, bottom: 2, right: 4 });
    expect(values[0]).toEqual([NOV_20, "Heron", 84, 3, 60]);
  });
});

const READING = drawSheet(
  "Reading",
  "Date | Pupil | Words | Errors | Seconds\n@2026-09-07 | Plover | 84 | 3 | 60",
);
const SECOND = drawSheet("Fluency", "Date | Child | Wds | Errs | Secs\n@2026-09-07 | Plover | 84 | 3 | 60");
const SIGNS = drawSheet("Signs", "Date | Pupil | Sign | Correct | Total\n@2026-09-07 | Plover | ch | 8 | 10");

describe("log chooses the table", () => {
  it("the only one that holds the given columns", async () => {
    const { code, sheet } = await log([SIGNS, READING], ...PROBE);
    expect(code).toBe(0);
    expect((await lastRow(sheet, 1)).values).toEqual([NOV_20, "Heron", 84, 3, 60]);
  });

  it("the one named by its sheet or table", async () => {
    const { code, sheet } = await log([READING, SECOND], ...PROBE, "--table", "fluency");
    expect(code).toBe(0);
    expect((await lastRow(sheet, 1)).values).toEqual([NOV_20, "Heron", 84, 3, 60]);
  });

  it("the sheet that is called after the pupil", async () => {
    const own = (name: string): DescribedSheet =>
      drawSheet(name, "Date | Words | Errors | Secs\n@2026-09-07 | 84 | 3 | 60");
    const { code, sheet } = await log([own("Plover"), own("Heron")], ...PROBE);
    expect(code).toBe(0);
    expect((await lastRow(sheet, 1)).values).toEqual([NOV_20, 84, 3, 60]);
  });

  it.each([
    {
      name: "several tables",
      sheets: [READING, SECOND],
      args: PROBE,
      says: "sheet 1 (A1:E2), sheet 2 (A1:E2)",
    },
    {
      name: "a column is missing",
      sheets: [READING],
      args: [...PROBE, "support=none"],
      says: "sheet 1 (A1:E2) has no column for support",
    },
    {
      name: "no such table",
      sheets: [READING],
      args: [...PROBE, "--table", "Nowhere"],
      says: "No table of probes has this name",
    },
    { name: "no table", sheets: [drawSheet("S", "a | b")], args: PROBE, says: "has no table of probes" },
    {
      name: "a calculated column",
      sheets: [drawSheet("R", "Date | Pupil | Words | Rate\n@2026-09-07 | Plover | 84 | =C2->84")],
      args: ["pupil=Heron", "date=2026-11-20", "rate=4"],
      says: "column D is calculated",
    },
    { name: "no pupil given", sheets: [READING], args: PROBE.slice(1), says: "Give the pupil" },
    {
      name: "day order not settled",
      sheets: [drawSheet("R", "Date | Pupil | Words\n'7/10/2026 | Plover | 84")],
      args: ["pupil=Heron", "date=2026-11-20", "words=84"],
      says: "--day-order",
    },
  ])("refuses: $name", async ({ sheets, args, says }) => {
    const { code, err, out, files } = await log(sheets, ...args);
    expect([code, out]).toEqual([1, ""]);
    expect(err).toContain(says);
    expect(err).not.toMatch(/Heron|Plover/);
    expect(files.get("F.xlsx")).toEqual(new Uint8Array([80]));
  });
});

describe("log refuses what cannot be a probe", () => {
  it.each([
    [
      ["pupil=Heron", "date=2026-11-20", "words=84", "colour=red"],
      "There is no such key. The keys are: date, pupil,",
    ],
    [["Heron", "date=2026-11-20", "words=84"], "key=value"],
    [["pupil=Heron", "words=84"], "The date is missing"],
    [["pupil=Heron", "date=31/2/2026", "words=84"], "no day of the calendar"],
    [["pupil=Heron", "date=7/10/2026", "words=84"], "two ways"],
    [["pupil=Heron", "date=tomorrow", "words=84"], "not a date"],
    [["pupil=Heron", "date=2026-11-20", "words=Heron"], "words cannot be read as a number"],
    [["pupil=Heron", "date=2026-11-20", "words=84", "errors=85"], "more errors than words"],
    [["pupil=Heron", "date=2026-11-20", "words=84", "seconds=0"], "seconds is 0"],
    [["pupil=Heron", "date=2026-11-20", "words=-1"], "cannot be less than 0"],
    [["pupil=Heron", "date=2026-11-20", "seconds=60"], "how the probe went"],
    [["pupil=Heron", "date=2026-11-20", "words=84", "unit=signs"], "unit is not words"],
    [["pupil=Heron", "date=2026-11-20", "words=84", "words=85"], "given twice"],
  ])("%s", async (args, says) => {
    const { code, err, files } = await log([READING], ...args);
    expect(code).toBe(2);
    expect(err).toContain(says);
    expect(err).not.toContain("Heron");
    expect(files.get("F.xlsx")).toEqual(new Uint8Array([80]));
  });

  it("writes to --out and leaves the input, without it in place", async () => {
    const beside = await log([READING], ...PROBE, "--out", "G.xlsx");
    expect([...beside.files]).toEqual([
      ["F.xlsx", new Uint8Array([80])],
      ["G.xlsx", new Uint8Array([80, 1])],
    ]);
    const inPlace = await log([READING], ...PROBE);
    expect([...inPlace.files]).toEqual([["F.xlsx", new Uint8Array([80, 1])]]);
  });
});
