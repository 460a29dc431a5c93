import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { MemorySheet } from "../../../src/adapters/memory/memory-sheet";
import { drawSheet } from "../../records/drawn-sheet";
import { openingSheet, runOverFiles } from "./workbook-harness";

const example = new Uint8Array(readFileSync(new URL("../../../src/examples/example.xlsx", import.meta.url)));
const ofExample = (...args: string[]) => runOverFiles("caseload", ["F.xlsx", ...args], { "F.xlsx": example });

describe("caseload", () => {
  it("has a line a pupil, the one who needs most first, with the signs due that the readings tell of", async () => {
    const { code, out, err } = await ofExample("--as-of", "2026-11-25");
    expect([code, err]).toEqual([0, ""]);
    const lines = out.trimEnd().split("\n");
    expect(lines.map((line) => line.split(" ")[0])).toEqual(["Plover", "Avocet", "Dunlin", "Heron"]);
    expect(lines[0]).toContain("Verdict: below aim.");
    // No day to check again stands in this workbook's table: they come from words read and not met since.
    expect(lines[2]).toMatch(/ \d+ signs due for a check: q, as, /);
  });

  it("gives a coordinator a row a pupil and counts no small group", async () => {
    const { code, out } = await ofExample("--as-of", "2026-11-25", "--coordinator");
    expect(code).toBe(0);
    const rows = out
      .trimEnd()
      .split("\n")
      .map((line) => line.split("\t"));
    expect(rows[0]?.slice(0, 3)).toEqual(["Pupil", "Teacher", "Goal"]);
    expect(rows.at(-1)).toEqual(["all pupils", "fewer than 5"]);
  });

  it.each([
    [[], 2, "Give one workbook."],
    [["F.xlsx", "--as-of", "soon"], 2, "--as-of is a day such as 2026-11-20."],
    [["F.xlsx", "--weekly"], 2, "Unknown option"],
  ])("refuses %j", async (args, code, message) => {
    const run = await runOverFiles("caseload", args, { "F.xlsx": example });
    expect(run.code).toBe(code);
    expect(run.err).toContain(message);
  });

  it("says what to do where no probe is found", async () => {
    const run = await runOverFiles(
      "caseload",
      ["F.xlsx"],
      { "F.xlsx": new Uint8Array([80]) },
      openingSheet(new MemorySheet([drawSheet("Notes", "Shopping | \nmilk | 2")])),
    );
    expect(run.code).toBe(1);
    expect(run.err).toContain("`cellwright check` says which tables and columns were looked at");
  });
});
