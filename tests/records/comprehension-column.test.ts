import { describe, expect, it } from "vitest";
import { MemorySheet } from "../../src/adapters/memory/memory-sheet";
import { readRecords } from "../../src/records/read-records";
import { reportTables } from "../../src/records/table-report";

const tableWith = (heading: string, values: readonly (string | number | null)[]) =>
  new MemorySheet([
    {
      name: "Heron",
      rows: [
        ["Date", "Words", "Errors", "Seconds", heading, "Note"],
        ...values.map((value, row) => [46300 + 7 * row, 60 + row, 2, 60, value, "calm"]),
      ],
      formats: [{ area: { top: 1, left: 0, bottom: 9, right: 0 }, format: "dd/mm/yyyy" }],
    },
  ]);

describe("a column of comprehension", () => {
  it.each([
    { heading: "Comprehension", values: ["4 of 5", "=all", null], read: ["4 of 5", "=all", undefined] },
    { heading: "Comprehension score", values: [4, 5, 3], read: ["4", "5", "3"] },
    { heading: "Questions answered", values: ["4/5", "3/5", "5/5"], read: ["4/5", "3/5", "5/5"] },
    { heading: "Comp. questions", values: ["a", "b", "c"], read: [undefined, undefined, undefined] },
  ])("called $heading is read with each probe", async ({ heading, values, read }) => {
    const { probes, blocks } = await readRecords(tableWith(heading, values));
    expect(probes.map(({ comprehension }) => comprehension)).toEqual(read);
    expect(probes.map(({ words, note }) => [words, note])).toEqual([
      [60, "calm"],
      [61, "calm"],
      [62, "calm"],
    ]);
    expect(blocks.flatMap(({ faults }) => faults)).toEqual([]);
  });

  it("is none of the meanings that check lists", async () => {
    const records = await readRecords(tableWith("Comprehension", ["4 of 5"]));
    expect(reportTables(records)[0]?.columns).toEqual({
      date: "A",
      words: "B",
      errors: "C",
      seconds: "D",
      note: "F",
    });
  });
});
