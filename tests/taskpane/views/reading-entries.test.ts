import { describe, expect, it } from "vitest";
import { MemorySheet } from "../../../src/adapters/memory/memory-sheet";
import { scoreReading } from "../../../src/domain/probe/reading";
import type { Day, Seconds } from "../../../src/domain/units";
import { appendEntries } from "../../../src/records/append-entries";
import { readRecords } from "../../../src/records/read-records";
import { entriesOfReading } from "../../../taskpane/views/reading-entries";
import { listEarlier } from "../../../taskpane/views/reading-result";
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
  it("keeps what was asked about the text in the note where a table has no column for it", async () => {
    const sheet = new MemorySheet([
      {
        name: "Mine",
        rows: [
          ["Date", "Child", "Words", "Errs", "Secs", "Notes"],
          [46344, "Heron", 5, 1, 30, "calm"],
        ],
        formats: [{ area: { top: 1, left: 0, bottom: 9, right: 0 }, format: "dd/mm/yyyy" }],
      },
    ]);
    const written = await appendEntries(
      sheet,
      await readRecords(sheet),
      entriesOfReading(reading, 46351 as Day),
    );
    expect(written).toMatchObject({ ok: true });
    const { probes } = await readRecords(sheet);
    expect(probes[1]).toMatchObject({ note: "Tired. Told after 5 s. Comprehension: 4 of 5.", words: 6 });
    expect(probes[1]?.comprehension).toBeUndefined();
  });

  it("shows what was asked of an earlier text beside its rate", () => {
    const earlier = {
      ...{ pupil: "Heron", day: 46344 as Day, words: 30, errors: 0, seconds: 60 as Seconds },
      ...{ comprehension: "3 of 5", source: { sheet: "Probes", row: 2 } },
    };
    expect(listEarlier([earlier], reading.task)).toEqual(["18 Nov 2026: 30 a minute, comprehension 3 of 5"]);
  });

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
        comprehension: "4 of 5",
        note: "Tired. Told after 5 s.",
      },
    ]);
    expect(miscues.map(({ position, expected, kind }) => [position, expected, kind])).toEqual([
      [2, "ferry", "misread"],
      [4, "the", "told"],
    ]);
  });
});
