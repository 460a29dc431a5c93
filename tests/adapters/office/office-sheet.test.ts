import { afterEach, describe, expect, it } from "vitest";
import { showCell } from "../../../src/adapters/office/cell-showing";
import { parseChangedArea } from "../../../src/adapters/office/change-following";
import { missingRequirements } from "../../../src/adapters/office/office-host";
import { officeErrorCode } from "../../../src/adapters/office/refusal";
import { OfficeSheet } from "../../../src/adapters/office/office-sheet";
import { reenterFormulas } from "../../../src/adapters/office/unknown-names";
import { HostError } from "../../../src/ports/sheet";
import type { SheetChange } from "../../../src/ports/sheet";
import { runSheetContract } from "../../contracts/sheet-contract";
import { STARTING_WORKBOOK } from "../../contracts/starting-workbook";
import type { StartingWorkbook } from "../../contracts/starting-workbook";
import { StrictExcel } from "./stand-in/strict-excel";

let excel: StrictExcel;

const faults: unknown[] = [];

const open = (start: StartingWorkbook = STARTING_WORKBOOK, version?: number): OfficeSheet => {
  excel = new StrictExcel(start, version);
  return new OfficeSheet(excel.host, (error) => faults.push(error));
};

afterEach(() => {
  expect(excel.misuses).toEqual([]);
  expect(faults.splice(0)).toEqual([]);
});

runSheetContract("The Excel adapter", async (start) => {
  const sheet = open(start);
  return {
    sheet,
    typeInto: (name, row, column, value) => excel.typeInto(name, row, column, value),
    beneathTable: "shifts",
    beneathRange: "refuses",
    calculates: false,
    charts: true,
    lookAt: async (name, row, column) => {
      const [, dress] =
        [...excel.model.dress].find(([key]) => key === `${name}!${row}:${column}:${row}:${column}`) ?? [];
      const rule = dress?.rule as { list?: { source: string }; date?: unknown } | undefined;
      return {
        font: dress?.font,
        ...(rule?.list ? { choices: rule.list.source.split(",") } : {}),
        ...(rule?.date ? { daysOnly: true } : {}),
      };
    },
  };
});

const area = (top: number, left: number, bottom: number, right: number) => ({ top, left, bottom, right });
const probe = [46314, "Plover", 40, 2, undefined] as const;

/** All that the stand-in holds, as text: to see that nothing is left of a refused write. */
const everything = (): string =>
  JSON.stringify({
    sheets: excel.model.workbook.sheets.map(({ name, hidden, tables, rows }) => ({
      name,
      hidden,
      tables,
      cells: rows.flatMap((cells, row) =>
        cells.flatMap((cell, column) =>
          cell && (cell.value !== null || cell.formula !== null || cell.format !== "General")
            ? [{ row, column, cell }]
            : [],
        ),
      ),
    })),
    charts: excel.model.charts.map(({ name }) => name),
    parts: excel.model.parts,
    tellsChanges: excel.model.enableEvents,
  });

describe("few trips to Excel", () => {
  it.each([
    ["outline", 2, (sheet: OfficeSheet) => sheet.outline()],
    ["read", 1, (sheet: OfficeSheet) => sheet.read("Probes", area(0, 0, 5, 4))],
    [
      "appendRows to a table",
      3,
      (sheet: OfficeSheet) => sheet.appendRows({ table: "Probes" }, [probe, probe]),
    ],
    [
      "appendRows to a range",
      2,
      (sheet: OfficeSheet) => sheet.appendRows({ sheet: "Reading log", area: area(2, 0, 4, 4) }, [probe]),
    ],
    [
      "writeBlock",
      2,
      (sheet: OfficeSheet) => sheet.writeBlock("Empty", { row: 0, column: 0 }, [["a"], ["b"]]),
    ],
    ["readSetting without any", 1, (sheet: OfficeSheet) => sheet.readSetting("columns")],
    ["keepSetting for the first time", 2, (sheet: OfficeSheet) => sheet.keepSetting("columns", "x")],
  ])("%s takes %i", async (_, syncs, act) => {
    const sheet = open();
    await act(sheet);
    expect([excel.runs, excel.syncs]).toEqual([1, syncs]);
  });
});

describe("large blocks", () => {
  it("are read in bands that Excel can answer, and come back whole", async () => {
    const rows = Array.from({ length: 20_000 }, (_, row) => [row, `text ${row}`, row % 2 === 0, null]);
    const sheet = open([{ name: "Large", rows }]);
    const block = await sheet.read("Large", area(0, 0, rows.length - 1, 3));
    // A difference of so many cells would take minutes to print.
    expect(JSON.stringify(block.values) === JSON.stringify(rows)).toBe(true);
    expect(excel.syncs).toBe(3);
  });

  it("with long texts are asked for again in smaller bands", async () => {
    const rows = Array.from({ length: 600 }, (_, row) => [
      `${row} ${"a long passage of words ".repeat(400)}`,
    ]);
    const sheet = open([{ name: "Long", rows }]);
    expect((await sheet.read("Long", area(0, 0, 599, 0))).values).toEqual(rows);
  });

  it("are written in requests that Excel takes", async () => {
    const rows = Array.from({ length: 900 }, (_, row) => [
      `${row} ${"\u2813\u2811\u2817".repeat(3_000)}`,
      row,
    ]);
    const sheet = open();
    await sheet.writeBlock("Empty", { row: 0, column: 0 }, rows);
    expect((await sheet.read("Empty", area(0, 0, 899, 1))).values).toEqual(rows);
  });
});

describe("what Excel breaks off is taken back", () => {
  const long = "x".repeat(30_000);
  const writes: [string, (sheet: OfficeSheet) => Promise<unknown>][] = [
    ["rows to a table", (sheet) => sheet.appendRows({ table: "Probes" }, [probe, probe])],
    ["rows to a table with text beneath", (sheet) => sheet.appendRows({ table: "Taught" }, [["th", 46294]])],
    [
      "rows to a range",
      (sheet) => sheet.appendRows({ sheet: "Reading log", area: area(2, 0, 4, 4) }, [probe]),
    ],
    ["a block on a new sheet", (sheet) => sheet.writeBlock("New sheet", { row: 0, column: 0 }, [["a"]])],
    [
      "a block in several requests",
      (sheet) => sheet.writeBlock("Probes", { row: 1, column: 1 }, Array(60).fill([long])),
    ],
    [
      "a chart",
      (sheet) =>
        sheet.addChart({
          sheet: "Reading log",
          title: "Heron",
          xTitle: "Date",
          yTitle: "Words",
          x: area(3, 0, 4, 0),
          series: [{ name: "Right", y: area(3, 4, 4, 4) }],
          at: { row: 7, column: 0 },
          summary: "Two probes.",
        }),
    ],
    ["a setting", (sheet) => sheet.keepSetting("columns", "x")],
  ];

  it.each(writes)("%s, wherever it breaks off", async (_, write) => {
    let refusals = 0;
    for (let operations = 0; ; operations++) {
      const sheet = open();
      const before = everything();
      excel.breakAfter = operations;
      const outcome = await write(sheet).then(
        () => "written",
        (error: unknown) => error,
      );
      if (outcome === "written") break;
      refusals++;
      expect(outcome).toBeInstanceOf(HostError);
      expect(everything(), `after ${operations} operations`).toBe(before);
    }
    expect(refusals).toBeGreaterThan(2);
  });
});

describe("refusals say what to do", () => {
  it.each([
    ["AccessDenied", /protection off/],
    ["InvalidOperationInCellEditMode", /Press Enter or Escape/],
    ["UnsupportedOperation", /workbench/],
    ["InsertDeleteConflict", /Make room beneath/],
    ["FilteredRangeConflict", /Show all its rows/],
    ["ItemNotFound", /no table "Probes"/],
    ["SomethingNew", /SomethingNew.*Try again/],
  ])("%s", async (code, message) => {
    const sheet = open();
    excel.refusals.push(code);
    const error = await sheet.appendRows({ table: "Probes" }, [probe]).catch((each: unknown) => each);
    expect(error).toBeInstanceOf(HostError);
    expect((error as HostError).message).toMatch(message);
    expect(officeErrorCode((error as HostError).cause)).toBe(code);
  });

  it.each([
    ["rows", (sheet: OfficeSheet) => sheet.appendRows({ table: "Probes" }, [probe])],
    ["a block", (sheet: OfficeSheet) => sheet.writeBlock("Probes", { row: 0, column: 0 }, [["a"]])],
  ])("a protected sheet takes no %s", async (_, write) => {
    const sheet = open();
    const probes = excel.model.sheet("Probes");
    if (probes) excel.model.protectedSheets.add(probes);
    const before = everything();
    await expect(write(sheet)).rejects.toThrow(/"Probes" is protected.*Review tab/);
    expect(everything()).toBe(before);
  });

  it.each([
    ["a text longer than a cell", "x".repeat(32_768), /32,767/],
    ["a formula longer than Excel takes", { formula: `=${"1+".repeat(5_000)}1` }, /8,192/],
    ["a number without end", Number.POSITIVE_INFINITY, /without end/],
  ])("%s is refused before anything is sent", async (_, input, message) => {
    await expect(open().writeBlock("Empty", { row: 0, column: 0 }, [[input]])).rejects.toThrow(message);
    expect(everything()).toBe((open(), everything()));
  });

  it("a name that Excel does not allow for a sheet", async () => {
    await expect(open().writeBlock("Autumn/Spring", { row: 0, column: 0 }, [["a"]])).rejects.toThrow(
      HostError,
    );
  });

  it("a table whose growing would tear another beneath it", async () => {
    const sheet = open([
      {
        name: "Torn",
        rows: [["A", "B"], [1, 2], [], ["B", "C"].map((each) => `${each} below`), [3, 4]],
        tables: [
          { name: "Upper", area: area(0, 0, 1, 1) },
          { name: "Lower", area: area(3, 1, 4, 2) },
        ],
      },
    ]);
    const before = everything();
    await expect(sheet.appendRows({ table: "Upper" }, [[5, 6]])).rejects.toThrow(/Make room beneath/);
    expect(everything()).toBe(before);
  });

  it("names the requirement sets that an Excel lacks", () => {
    open(STARTING_WORKBOOK, 107);
    expect(missingRequirements(excel.host)).toEqual(["ExcelApi 1.9"]);
    open();
    expect(missingRequirements(excel.host)).toEqual([]);
  });
});

describe("tables as teachers have them", () => {
  it("the one blank row of a new table takes the first record", async () => {
    const sheet = open([
      {
        name: "New",
        rows: [
          ["Date", "Words", "Twice"],
          [null, null, { formula: "=[@Words]*2", value: 0 }],
        ],
        tables: [{ name: "Fresh", area: area(0, 0, 1, 2), calculated: { Twice: "=[@Words]*2" } }],
      },
    ]);
    const added = await sheet.appendRows({ table: "Fresh" }, [
      [46300, 20, undefined],
      [46307, 22, undefined],
    ]);
    expect(added.area).toEqual(area(1, 0, 2, 2));
    const block = await sheet.read("New", area(1, 0, 2, 2));
    expect(block.formulas.map((row) => row[2])).toEqual(["=[@Words]*2", "=[@Words]*2"]);
    expect((await sheet.outline())[0]?.tables[0]?.area).toEqual(area(0, 0, 2, 2));
  });

  it("a calculated column by addresses moves down, and a last row that she overwrote is no model", async () => {
    const filled = (row: number) => ({ formula: `=B${row}*2`, value: 0 });
    const sheet = open([
      {
        name: "Own",
        rows: [
          ["Date", "Words", "Twice"],
          [1, 2, filled(2)],
          [1, 2, filled(3)],
          [1, 2, 99],
        ],
        tables: [{ name: "Own", area: area(0, 0, 3, 2) }],
      },
    ]);
    await sheet.appendRows({ table: "Own" }, [[1, 5, undefined]]);
    expect((await sheet.read("Own", area(4, 2, 4, 2))).formulas).toEqual([["=B5*2"]]);
  });

  it("a range of a header row alone lends no format", async () => {
    const sheet = open([
      { name: "Bare", rows: [["Date", "Words"]], formats: [{ area: area(0, 0, 0, 1), format: "@" }] },
    ]);
    await sheet.appendRows({ sheet: "Bare", area: area(0, 0, 0, 1) }, [[46300, 5]]);
    expect((await sheet.read("Bare", area(1, 0, 1, 1))).formats).toEqual([["General", "General"]]);
  });
});

describe("changes", () => {
  it("of this adapter are not told", async () => {
    const sheet = open();
    const heard: SheetChange[] = [];
    sheet.onChange((change) => heard.push(change));
    await excel.settled();
    await sheet.appendRows({ table: "Probes" }, [probe]);
    await sheet.writeBlock("Empty", { row: 0, column: 0 }, [["a"]]);
    await sheet.appendRows({ table: "Nowhere" }, [probe]).catch(() => undefined);
    await excel.settled();
    expect(heard).toEqual([]);
    await excel.typeInto("Empty", 0, 0, "b");
    expect(heard).toEqual([{ sheet: "Empty", area: area(0, 0, 0, 0) }]);
  });

  it("are followed by one handler for all, which goes with the last listener", async () => {
    const sheet = open();
    const stops = [sheet.onChange(() => undefined), sheet.onChange(() => undefined)];
    await excel.settled();
    expect(excel.handlers.size).toBe(1);
    stops[0]?.();
    await excel.settled();
    expect(excel.handlers.size).toBe(1);
    stops[1]?.();
    await excel.settled();
    expect(excel.handlers.size).toBe(0);
  });

  it("that Excel refuses to follow are reported", async () => {
    const sheet = open();
    excel.refusals.push("UnsupportedOperation");
    sheet.onChange(() => undefined);
    await excel.settled();
    expect(faults.splice(0)).toEqual([expect.any(HostError)]);
  });

  it.each([
    ["B3", area(2, 1, 2, 1)],
    ["Sheet1!A1:AB12", area(0, 0, 11, 27)],
    ["$C$2", area(1, 2, 1, 2)],
    ["4:6", undefined],
    ["A:C", undefined],
    ["A1:A2,C3", undefined],
  ])("at %s", (address, expected) => {
    expect(parseChangedArea(address)).toEqual(expected);
  });
});

describe("showing a cell", () => {
  it("activates its sheet and selects it", async () => {
    open();
    await showCell(excel.host, { sheet: "Probes", row: 2, column: 1 });
    expect([excel.model.shown, excel.model.selected]).toEqual(["Probes", area(2, 1, 2, 1)]);
  });

  it.each([
    ["a sheet that is gone", "Nowhere", /no sheet "Nowhere"/],
    ["a hidden sheet", "Kept", /hidden/],
  ])("%s is refused", async (_, sheet, message) => {
    open();
    await expect(showCell(excel.host, { sheet, row: 0, column: 0 })).rejects.toThrow(message);
  });
});

describe("a native chart", () => {
  it("has title, axis titles, y from 0, dates as the sheet shows them, and every series by name", async () => {
    const sheet = open();
    await sheet.addChart({
      sheet: "Reading log",
      title: "Heron, read aloud",
      xTitle: "Date",
      yTitle: "Words a minute",
      x: area(3, 0, 4, 0),
      series: [
        { name: "Right", y: area(3, 4, 4, 4) },
        { name: "Errors", y: area(3, 3, 4, 3) },
      ],
      at: { row: 6, column: 1 },
      summary: "Two probes.",
    });
    expect(excel.model.charts).toMatchObject([
      {
        type: "XYScatterLines",
        title: "Heron, read aloud",
        xTitle: "Date",
        yTitle: "Words a minute",
        minimum: 0,
        dateFormat: "dd/mm/yyyy",
        legend: true,
        place: { top: 6, left: 1 },
        series: [
          { name: "Right", x: { area: area(3, 0, 4, 0) }, y: { area: area(3, 4, 4, 4) } },
          { name: "Errors", x: { area: area(3, 0, 4, 0) }, y: { area: area(3, 3, 4, 3) } },
        ],
      },
    ]);
    const bottom = excel.model.charts[0]?.place?.bottom ?? 0;
    expect((await sheet.read("Reading log", area(bottom + 1, 1, bottom + 1, 1))).values).toEqual([
      ["Two probes."],
    ]);
  });
});

describe("#NAME? after reopening", () => {
  const broken = { error: "#NAME?" } as const;
  const start: StartingWorkbook = [
    {
      name: "Words",
      rows: [
        ["children", { formula: "=BRAILLE.TRANSLATE(A1)", value: broken }],
        ["bread", { formula: "=_xldudf_BRAILLE_CELLS(A2)+1", value: broken }],
        ["seen", { formula: "=BRAILLE.CELLS(A3)", value: 4 }],
        ["hers", { formula: "=MISSPELT(A4)", value: broken }],
      ],
    },
    { name: "Locked", rows: [[{ formula: "=BRAILLE.CELLS(A3)", value: broken }]] },
  ];

  it("is answered by entering our formulas again, and only those", async () => {
    open(start);
    const locked = excel.model.sheet("Locked");
    if (locked) excel.model.protectedSheets.add(locked);
    expect(await reenterFormulas(excel.host, "BRAILLE")).toEqual({ entered: 2, passedOver: ["Locked"] });
    const cells = excel.model.sheet("Words")?.rows.map((row) => [row[1]?.formula, row[1]?.value]);
    expect(cells).toEqual([
      ["=BRAILLE.TRANSLATE(A1)", null],
      ["=BRAILLE.CELLS(A2)+1", null],
      ["=BRAILLE.CELLS(A3)", 4],
      ["=MISSPELT(A4)", broken],
    ]);
  });
});
