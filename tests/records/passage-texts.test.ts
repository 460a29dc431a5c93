import { describe, expect, it } from "vitest";
import { MemorySheet } from "../../src/adapters/memory/memory-sheet";
import { readRecords } from "../../src/records/read-records";
import { drawSheet } from "./drawn-sheet";

const PROBES = `Date | Pupil | Task | Passage | Words | Errors | Seconds
@2026-10-05 | Heron | read aloud | the  FOX | 4 | 1 | 60
@2026-10-12 | Heron | read aloud | The Crow | 5 | 1 | 60
@2026-10-19 | Heron | read aloud | Twice | 6 | 1 | 60`;

const PASSAGES = `Title | Text
The Fox | A fox ran on.
Twice | One text of this name.
Twice | Another text of this name.`;

const expectedOf = async (...sheets: readonly (readonly [string, string])[]) => {
  const { probes } = await readRecords(
    new MemorySheet(sheets.map(([name, drawing]) => drawSheet(name, drawing))),
  );
  return probes.map(({ expected }) => expected);
};

describe("a probe that names its passage by title", () => {
  it("has the passage's text; an unknown title and one of two texts have none", async () => {
    expect(await expectedOf(["Progress", PROBES], ["Passages", PASSAGES])).toEqual([
      "A fox ran on.",
      undefined,
      undefined,
    ]);
  });

  it("keeps a text of its own", async () => {
    const own = PROBES.replace("Seconds", "Seconds | Expected").replace(
      "1 | 60",
      "1 | 60 | The fox ran off.",
    );
    expect((await expectedOf(["Progress", own], ["Passages", PASSAGES]))[0]).toBe("The fox ran off.");
  });

  it("has none in a workbook without passages", async () => {
    expect(await expectedOf(["Progress", PROBES])).toEqual([undefined, undefined, undefined]);
  });
});
