import { describe, expect, it } from "vitest";
import { MemorySheet } from "../../src/adapters/memory/memory-sheet";
import { readRecords } from "../../src/records/read-records";
import { reportTables } from "../../src/records/table-report";
import type { TableReport } from "../../src/records/table-report";
import { LAYOUTS } from "./layouts";
import { FURTHER_LAYOUTS } from "./layouts-further";
import { PITFALL_LAYOUTS } from "./layouts-pitfalls";

const line = (table: TableReport): string =>
  [
    table.range,
    Object.entries(table.columns)
      .map(([kind, letters]) => `${kind} ${letters}`)
      .join(" "),
    String(table.records),
    table.faults.map(({ cell }) => cell).join(" "),
  ]
    .join(" | ")
    .trim();

describe("layouts of teachers", () => {
  it.each([...LAYOUTS, ...FURTHER_LAYOUTS, ...PITFALL_LAYOUTS])("$name", async ({ sheets, found }) => {
    const tables = reportTables(await readRecords(new MemorySheet(sheets)));
    expect(tables.map(line)).toEqual(found);
  });
});
