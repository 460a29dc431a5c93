import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { EmbeddedSheet } from "../../src/adapters/embedded/embedded-sheet";
import { buildCaseload } from "../../src/domain/caseload/caseload";
import type { Day } from "../../src/domain/units";
import { readRecords } from "../../src/records/read-records";
import { OpenWorkbook } from "../../src/spreadsheet/open-workbook";
import { contentsOf } from "../adapters/xlsx/opened-files";

it("the example workbook holds every list, and its caseload has a line a pupil", async () => {
  const bytes = new Uint8Array(readFileSync(new URL("../../src/examples/example.xlsx", import.meta.url)));
  const records = await readRecords(new EmbeddedSheet(new OpenWorkbook(contentsOf(bytes))));
  const { pupils, lessons, miscues, words, passages, exceptions } = records;
  expect([pupils, miscues, exceptions].map((list) => list.length)).toEqual([4, 3, 1]);
  expect([lessons, words, passages].every((list) => list.length > 0)).toBe(true);
  const faulty = records.blocks.filter(({ kind, faults }) => kind !== "probes" && faults.length > 0);
  expect(faulty).toEqual([]);
  // 25 November 2026, the day of the example.
  const lines = buildCaseload(records, 46_351 as Day);
  expect(lines.map(({ pupil }) => pupil).sort()).toEqual(["Avocet", "Dunlin", "Heron", "Plover"]);
});
