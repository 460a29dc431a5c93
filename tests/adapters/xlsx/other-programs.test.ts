import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import { newWorkbook } from "../../../src/adapters/xlsx/new-workbook";
import { saveWorkbook } from "../../../src/adapters/xlsx/save-workbook";
import { OpenWorkbook } from "../../../src/spreadsheet/open-workbook";
import type { Cell } from "../../../src/spreadsheet/workbook";
import {
  changedParts,
  contentsOf,
  fixture,
  OPTIONS,
  partsOf,
  saveAfter,
  sheetOf,
  valueOf,
} from "./opened-files";

const PYTHON = "/usr/bin/python3";
const hasWriter = spawnSync(PYTHON, ["-c", "import xlsxwriter"]).status === 0;
const hasOffice = spawnSync("soffice", ["--version"]).status === 0;
const folder = mkdtempSync(join(tmpdir(), "cellwright-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

type Edit =
  | {
      readonly kind: "insert" | "delete";
      readonly sheet: string;
      readonly at: number;
      readonly count: number;
    }
  | {
      readonly kind: "type";
      readonly sheet: string;
      readonly at: number;
      readonly column: number;
      readonly text: string;
    }
  | { readonly kind: "append"; readonly table: string }
  | { readonly kind: "undo" };

const WORKBOOKS = ["teachers-workbook.xlsx", "teachers-workbook-libreoffice.xlsx"];

describe.skipIf(!hasWriter)("the fixture", () => {
  it("is what its script makes", () => {
    const script = fileURLToPath(new URL("../../fixtures/xlsx/make-teachers-workbook.py", import.meta.url));
    const made = join(folder, "made.xlsx");
    expect(spawnSync(PYTHON, [script, made], { encoding: "utf8" }).stderr).toBe("");
    expect(changedParts(fixture("teachers-workbook.xlsx"), new Uint8Array(readFileSync(made)))).toEqual([]);
  });
});

describe.skipIf(!hasOffice)("LibreOffice", () => {
  /** A sheet as LibreOffice shows it after opening and calculating. */
  const convert = (bytes: Uint8Array, sheet: string): string[][] => {
    const file = join(folder, `saved-${Math.abs(bytes.length)}.xlsx`);
    writeFileSync(file, bytes);
    const filter = "csv:Text - txt - csv (StarCalc):9,0,76,1,,0,false,true,false,false,false,-1";
    const profile = `-env:UserInstallation=${pathToFileURL(join(folder, "profile")).href}`;
    spawnSync("soffice", ["--headless", profile, "--convert-to", filter, "--outdir", folder, file], {
      encoding: "utf8",
    });
    const csv = file.replace(".xlsx", `-${sheet}.csv`);
    if (!existsSync(csv)) throw new Error(`LibreOffice did not open the saved file (${sheet})`);
    return readFileSync(csv, "utf8")
      .trimEnd()
      .split("\n")
      .map((line) => line.split("\t"));
  };

  it("opens a saved workbook with the right values", () => {
    const saved = saveAfter(fixture("teachers-workbook.xlsx"), (workbook) => {
      valueOf(workbook.insertRows("Probes", 1, 2));
      valueOf(workbook.appendToTable("Probes", [[46_357, "Heron", 90, 2, 60, undefined, undefined]]));
      workbook.setCell("Probes", 0, 0, "=1+1");
      valueOf(workbook.addSheet("Taught"));
      workbook.setCells("Taught", 0, 0, [["Sign", { formula: "AVERAGE(Probes!C6:C18)" }]]);
      valueOf(
        workbook.addChart({
          sheet: "Taught",
          title: "Rate",
          xTitle: "Date",
          yTitle: "Words",
          x: "Probes!$A$6:$A$18",
          series: [{ name: "Heron", y: "Probes!$F$6:$F$18" }],
          area: { top: 3, left: 0, bottom: 18, right: 6 },
        }),
      );
    });
    const probes = convert(saved, "Probes");
    expect(probes[0]?.[0]).toBe("=1+1");
    expect(probes[17]).toEqual([
      "12/01/2026",
      "Heron",
      "90",
      "2",
      "60",
      "88",
      expect.stringMatching(/^97\.7/),
    ]);
    const words = [61, 64, 64, 70, 72, 71, 75, 79, 78, 83, 85, 88, 90];
    const mean = words.reduce((sum, word) => sum + word, 0) / words.length;
    expect(Number(convert(saved, "Taught")[0]?.[1])).toBeCloseTo(mean, 9);
  });

  it("opens a new workbook with what was typed into it", () => {
    const saved = saveAfter(newWorkbook(), (workbook) => {
      workbook.setCells("Sheet1", 0, 0, [
        ["one", 1],
        ["two", { formula: "B1*2" }],
      ]);
    });
    expect(convert(saved, "Sheet1")).toEqual([
      ["one", "1"],
      ["two", "2"],
    ]);
  });
});

describe.each(WORKBOOKS)("any edits of %s", (name) => {
  const bytes = fixture(name);
  const opened = contentsOf(bytes);
  const sheets = ["Probes", "Summary", "Filtered"];
  const edit: fc.Arbitrary<Edit> = fc.oneof(
    fc.record({
      kind: fc.constant("insert" as const),
      sheet: fc.constantFrom(...sheets),
      at: fc.nat(25),
      count: fc.integer({ min: 1, max: 3 }),
    }),
    fc.record({
      kind: fc.constant("delete" as const),
      sheet: fc.constantFrom(...sheets),
      at: fc.nat(25),
      count: fc.integer({ min: 1, max: 3 }),
    }),
    fc.record({
      kind: fc.constant("type" as const),
      sheet: fc.constantFrom(...sheets),
      at: fc.integer({ min: 3, max: 30 }),
      column: fc.nat(9),
      text: fc.string(),
    }),
    fc.record({ kind: fc.constant("append" as const), table: fc.constantFrom("Probes", "Minutes") }),
    fc.record({ kind: fc.constant("undo" as const) }),
  );
  const apply = (workbook: OpenWorkbook, change: Edit): void => {
    if (change.kind === "insert") workbook.insertRows(change.sheet, change.at, change.count);
    else if (change.kind === "delete") workbook.deleteRows(change.sheet, change.at, change.count);
    else if (change.kind === "type") workbook.setCell(change.sheet, change.at, change.column, change.text);
    else if (change.kind === "append") workbook.appendToTable(change.table, [["x"]]);
    else workbook.undo();
  };
  const facts = (cells: ReadonlyMap<number, Cell>): unknown[] =>
    [...cells]
      .filter(([, cell]) => cell.value !== null || cell.formula !== undefined || cell.style !== 0)
      .sort(([a], [b]) => a - b)
      .map(([key, cell]) => [key, cell.value, cell.formula, cell.style]);

  it("save to what the model shows, and leave what they do not concern", () => {
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 5 }), (edits) => {
        const workbook = new OpenWorkbook(opened);
        for (const one of edits) apply(workbook, one);
        const saved = saveWorkbook(bytes, workbook, workbook.difference(), OPTIONS);
        if (!saved.ok) {
          expect(["table-heading", "array-cut"]).toContain(saved.fault.code);
          return;
        }
        const again = contentsOf(saved.value);
        for (const sheet of workbook.sheets) {
          expect(facts(sheetOf(again, sheet.name).cells)).toEqual(facts(sheet.cells));
          expect(sheetOf(again, sheet.name).tables.map((table) => table.area)).toEqual(
            sheet.tables.map((table) => table.area),
          );
          expect(sheetOf(again, sheet.name).merges).toEqual(
            sheet.merges.filter((merge) => merge.top < merge.bottom || merge.left < merge.right),
          );
        }
        const untouched = changedParts(bytes, saved.value);
        for (const part of [
          "xl/styles.xml",
          "xl/sharedStrings.xml",
          "xl/theme/theme1.xml",
          "docProps/core.xml",
          "_rels/.rels",
        ]) {
          expect(untouched).not.toContain(part);
        }
        expect([...partsOf(saved.value).keys()].slice(0, partsOf(bytes).size)).toEqual([
          ...partsOf(bytes).keys(),
        ]);
      }),
      { numRuns: 40 },
    );
  });
});
