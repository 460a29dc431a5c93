import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { EmbeddedSheet } from "../../src/adapters/embedded/embedded-sheet";
import { buildCaseload } from "../../src/domain/caseload/caseload";
import type { Day } from "../../src/domain/units";
import { addExample, removeExample } from "../../src/records/example";
import { readRecords } from "../../src/records/read-records";
import { TABLE_PLANS } from "../../src/records/table-plans";
import { OpenWorkbook } from "../../src/spreadsheet/open-workbook";
import { contentsOf } from "../adapters/xlsx/opened-files";

const openExample = (): EmbeddedSheet => {
  const bytes = new Uint8Array(readFileSync(new URL("../../src/examples/example.xlsx", import.meta.url)));
  return new EmbeddedSheet(new OpenWorkbook(contentsOf(bytes)));
};

it("the example workbook has the columns that are filled with states, as a table set up anew has", async () => {
  const { blocks } = await readRecords(openExample());
  const taught = blocks.find(({ kind }) => kind === "taught");
  expect(taught?.columns.map(({ header }) => header)).toEqual(
    TABLE_PLANS.taught.columns.map(({ name }) => name),
  );
});

it("the example workbook takes the example pupil beside its own, and lets go of it again", async () => {
  const sheet = openExample();
  const before = await readRecords(sheet);
  const added = await addExample(sheet, before, 46_351 as Day);
  if (!added.ok) throw new Error(added.fault.message);
  const after = await readRecords(sheet);
  expect(after.pupils.map(({ pupil }) => pupil)).toEqual([
    ...before.pupils.map(({ pupil }) => pupil),
    "Sandpiper",
  ]);
  expect(after.words.length).toBe(before.words.length + 4);
  expect(await removeExample(sheet)).toMatchObject({ kept: 0 });
  const left = await readRecords(sheet);
  expect([left.probes.length, left.words.length]).toEqual([before.probes.length, before.words.length]);
});

it("the example workbook holds every list, and its caseload has a line a pupil", async () => {
  const records = await readRecords(openExample());
  const { pupils, lessons, miscues, words, passages, exceptions } = records;
  expect([pupils, miscues, exceptions].map((list) => list.length)).toEqual([4, 3, 1]);
  expect([lessons, words, passages].every((list) => list.length > 0)).toBe(true);
  const faulty = records.blocks.filter(({ kind, faults }) => kind !== "probes" && faults.length > 0);
  expect(faulty).toEqual([]);
  // 25 November 2026, the day of the example.
  const lines = buildCaseload(records, 46_351 as Day);
  expect(lines.map(({ pupil }) => pupil).sort()).toEqual(["Avocet", "Dunlin", "Heron", "Plover"]);
});
