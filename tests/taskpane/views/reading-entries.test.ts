import { describe, expect, it } from "vitest";
import { MemorySheet } from "../../../src/adapters/memory/memory-sheet";
import { scoreReading } from "../../../src/domain/probe/reading";
import type { Day } from "../../../src/domain/units";
import { appendEntries } from "../../../src/records/append-entries";
import { readRecords } from "../../../src/records/read-records";
import { entriesOfReading } from "../../../taskpane/views/reading-entries";
import type { FinishedReading } from "../../../taskpane/views/reading-entries";

const TEXT = "The ferry left the pier at nine.";
const HEARD = "The fairy left the (told) pier at ]";
const reading: FinishedReading = {
  task: { pupil: "Heron", title: "=The ferry", text: TEXT, code: "contracted", medium: "braille", wait: 5 },
  score: scoreReading(TEXT, HEARD),
  heard: HEARD,
  seconds: 30,
  support: "",
  comprehension: "4 of 5",
  note: "Tired",
};

describe("a reading as rows", () => {
  it("is one probe and a row a miscue, read back as written", async () => {
    const sheet = new MemorySheet([]);
    const written = await appendEntries(
      sheet,
      await readRecords(sheet),
      entriesOfReading(reading, 46351 as Day),
    );
    expect(written).toMatchObject({ ok: true });
    const { probes, miscues } = await readRecords(sheet);
    expect(probes).toMatchObject([
      {
        pupil: "Heron",
        day: 46351,
        task: "read aloud",
        material: "=The ferry",
        words: 6,
        errors: 2,
        seconds: 30,
        expected: TEXT,
        response: HEARD,
        note: "Tired. Comprehension: 4 of 5. Told after 5 s.",
      },
    ]);
    expect(miscues.map(({ position, expected, kind }) => [position, expected, kind])).toEqual([
      [2, "ferry", "misread"],
      [4, "the", "told"],
    ]);
  });
});
