import { describe, expect, it } from "vitest";
import { MemorySheet } from "../../../src/adapters/memory/memory-sheet";
import { CHOICES_SETTING } from "../../../src/records/column-choices";
import { drawSheet } from "../../records/drawn-sheet";
import { openingSheet, runOverFiles } from "./workbook-harness";

const AMBIGUOUS = `
Date | Pupil | Score
'7/10/2026 | Heron | 8
'8/11/2026 | Heron | 9
`;

const check = (drawing: string, ...args: string[]): ReturnType<typeof runOverFiles> =>
  runOverFiles(
    "check",
    ["F.xlsx", ...args],
    { "F.xlsx": new Uint8Array([80]) },
    openingSheet(new MemorySheet([drawSheet("Reading", drawing)])),
  );

describe("check", () => {
  it("prints the tables as JSON, keys in the order of the meanings", async () => {
    const { code, out, err } = await check(
      `
      Log | | |
      Date | Learner | WCPM | Errs
      @2026-09-07 | Heron | 40 | 2
      @2026-09-14 | Heron | 4x | 2
      `,
      "--json",
    );
    expect([code, err]).toEqual([0, ""]);
    expect(JSON.parse(out)).toEqual({
      tables: [
        {
          sheet: "Reading",
          range: "A2:D4",
          columns: { date: "A", pupil: "B", errors: "D", rate: "C" },
          records: 1,
          faults: [
            { cell: "C4", message: '"4x" is not a number. Type the rate (correct a minute) as a number.' },
          ],
        },
      ],
    });
  });

  it.each([
    { args: [], records: 0, faults: ["A1"] },
    { args: ["--day-order", "dmy"], records: 2, faults: [] },
    { args: ["--day-order", "mdy"], records: 2, faults: [] },
  ])("asks for the day order at the header, unless $args says it", async ({ args, records, faults }) => {
    const { out } = await check(AMBIGUOUS, "--json", ...args);
    const [table] = (JSON.parse(out) as { tables: { records: number; faults: { cell: string }[] }[] }).tables;
    expect([table?.records, table?.faults.map(({ cell }) => cell)]).toEqual([records, faults]);
  });

  it("heeds the answers that are kept in the workbook", async () => {
    const sheet = new MemorySheet([drawSheet("Reading", AMBIGUOUS)]);
    await sheet.keepSetting(CHOICES_SETTING, '{"dayOrder":"mdy"}');
    const { out } = await runOverFiles(
      "check",
      ["F.xlsx", "--json"],
      { "F.xlsx": new Uint8Array([80]) },
      openingSheet(sheet),
    );
    expect((JSON.parse(out) as { tables: { records: number }[] }).tables[0]?.records).toBe(2);
  });

  it("prints sentences for people", async () => {
    const { out } = await check("Date | Learner | WCPM\n@2026-09-07 | Heron | 40\n@2026-09-14 | Heron | x");
    expect(out).toBe(
      'Reading, A1:C3: 1 record, 1 fault\n  Columns: A date, B pupil, C rate (correct a minute)\n  C3: "x" is not a number. Type the rate (correct a minute) as a number.\n',
    );
  });

  it("says what a table of probes looks like where there is none", async () => {
    const { code, out } = await check("Shopping | Price\nApples | 3");
    expect([code, out]).toEqual([0, expect.stringContaining("No table of probes was found")]);
  });

  it.each([
    { args: [], code: 2, says: "Give one workbook" },
    { args: ["a", "b"], code: 2, says: "Give one workbook" },
    { args: ["F.xlsx", "--day-order", "ymd"], code: 2, says: "--day-order is dmy or mdy" },
    { args: ["F.xlsx", "--colour"], code: 2, says: "Usage:" },
    { args: ["missing.xlsx"], code: 1, says: "There is no such file" },
    { args: ["empty.xlsx"], code: 1, says: "This is not a workbook" },
  ])("refuses $args on standard error", async ({ args, code, says }) => {
    const files = { "F.xlsx": new Uint8Array([80]), "empty.xlsx": new Uint8Array() };
    const run = await runOverFiles("check", args, files, openingSheet(new MemorySheet([])));
    expect([run.code, run.out]).toEqual([code, ""]);
    expect(run.err).toContain(says);
  });
});
