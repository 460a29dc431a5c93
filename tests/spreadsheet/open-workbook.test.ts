import { describe, expect, it } from "vitest";
import { parseArea, parseCell } from "../../src/spreadsheet/address";
import { OpenWorkbook } from "../../src/spreadsheet/open-workbook";
import { cellKey, type WorkbookChange } from "../../src/spreadsheet/workbook";
import { makeContents, makeSheet, makeTable } from "./workbook-contents";

const area = (address: string) => {
  const parsed = parseArea(address);
  if (!parsed) throw new RangeError(address);
  return parsed;
};
const key = (address: string): number => {
  const { top, left } = area(address);
  return cellKey(top, left);
};

const logbook = (totals = false): OpenWorkbook =>
  new OpenWorkbook(
    makeContents(
      [
        makeSheet(
          "Log",
          {
            A1: "Date",
            B1: "Words",
            C1: "Double",
            A2: { value: 45000, style: 1 },
            B2: 10,
            C2: { value: 20, formula: "[@Words]*2", style: 0 },
            A3: { value: 45007, style: 1 },
            B3: 12,
            C3: { value: 24, formula: "[@Words]*2", style: 0 },
            ...(totals ? { B4: { value: 22, formula: "SUBTOTAL(109,[Words])", style: 0 } } : {}),
            E1: { value: 22, formula: "SUM(B2:B3)", style: 0 },
            E2: { value: 10, formula: "B2", style: 0 },
            A9: "below",
          },
          {
            tables: [
              makeTable(
                "Probes",
                area(totals ? "A1:C4" : "A1:C3"),
                ["Date", "Words", "Double=[@Words]*2"],
                totals,
              ),
            ],
            validations: [{ areas: [area("B2:B3")], type: "whole", allowBlank: true }],
            merges: [area("A9:B9")],
            comments: [{ row: 8, column: 0, text: "a note" }],
            objects: [{ kind: "chart", area: area("G1:K12") }],
          },
        ),
        makeSheet("Summary", {
          A1: { value: 22, formula: "SUM(Log!$B$2:$B$3)", style: 0 },
          A2: { value: "below", formula: "Log!A9", style: 0 },
        }),
      ],
      { names: [{ name: "Scores", formula: "Log!$B$2:$B$3", hidden: false }] },
    ),
  );

const at = (workbook: OpenWorkbook, sheet: string, address: string) => {
  const place = parseCell(address);
  return place && workbook.cell(sheet, place.row, place.column);
};
const changed = (workbook: OpenWorkbook, sheet: string): number[] =>
  [...(workbook.difference().changedCells.get(sheet) ?? [])].sort((a, b) => a - b);

describe("writing cells", () => {
  it("tells listeners once a step, and lists the cell as changed", () => {
    const workbook = logbook();
    const heard: WorkbookChange[][] = [];
    workbook.onChange((changes) => heard.push([...changes]));
    workbook.setCells("Log", 4, 0, [
      ["x", 2],
      [undefined, true],
    ]);
    expect(heard).toEqual([[{ kind: "cells", sheet: "Log", keys: [key("A5"), key("B5"), key("B6")] }]]);
    expect(changed(workbook, "Log")).toEqual([key("A5"), key("B5"), key("B6")]);
  });
  it("keeps text that begins with = as text", () => {
    const workbook = logbook();
    workbook.setCell("Log", 4, 0, "=1+1");
    expect(at(workbook, "Log", "A5")).toEqual({ value: "=1+1", style: 0 });
  });
  it("is no difference once undone or typed back", () => {
    const workbook = logbook();
    workbook.setCell("Log", 1, 1, 99);
    workbook.undo();
    expect(at(workbook, "Log", "B2")?.value).toBe(10);
    expect(changed(workbook, "Log")).toEqual([]);
    workbook.redo();
    workbook.setCell("Log", 1, 1, 10);
    expect(changed(workbook, "Log")).toEqual([]);
  });
  it("undoes a group as one step", () => {
    const workbook = logbook();
    workbook.group("Fill", () => {
      workbook.setCell("Log", 4, 0, 1);
      workbook.setCell("Log", 5, 0, 2);
    });
    workbook.undo();
    expect([at(workbook, "Log", "A5"), at(workbook, "Log", "A6"), workbook.canUndo]).toEqual([
      undefined,
      undefined,
      false,
    ]);
  });
  it.each([
    ["an unknown sheet", "Nowhere", 0, "x", "no-sheet"],
    ["beyond the edge", "Log", 1_048_576, "x", "off-sheet"],
    ["a text longer than a file can hold", "Log", 0, "x".repeat(32_768), "text-too-long"],
  ])("refuses %s", (_, sheet, row, content, code) => {
    const workbook = logbook();
    expect(workbook.setCell(sheet, row, 0, content)).toMatchObject({ ok: false, fault: { code } });
    expect([workbook.canUndo, workbook.difference().changedCells.size]).toEqual([false, 0]);
  });
  it("gives a typed date its number format without a new style where the file has one", () => {
    const workbook = logbook();
    workbook.setCell("Log", 4, 0, 45014, { numberFormat: "dd/mm/yyyy" });
    expect([at(workbook, "Log", "A5"), workbook.styles.length]).toEqual([{ value: 45014, style: 1 }, 2]);
  });
});

describe("rows put in before row 3", () => {
  it("moves cells, references, names, merges, comments, objects, and is journalled", () => {
    const workbook = logbook();
    workbook.setCell("Log", 8, 2, "typed");
    workbook.insertRows("Log", 2, 2);
    expect(at(workbook, "Log", "A11")?.value).toBe("below");
    expect(at(workbook, "Log", "E1")?.formula).toBe("SUM(B2:B5)");
    expect(at(workbook, "Summary", "A1")?.formula).toBe("SUM(Log!$B$2:$B$5)");
    expect(at(workbook, "Summary", "A2")?.formula).toBe("Log!A11");
    expect(workbook.names[0]?.formula).toBe("Log!$B$2:$B$5");
    const sheet = workbook.sheet("Log");
    expect(sheet?.merges).toEqual([area("A11:B11")]);
    expect(sheet?.comments[0]?.row).toBe(10);
    expect(sheet?.objects[0]?.area).toEqual(area("G1:K14"));
    expect(sheet?.tables[0]?.area).toEqual(area("A1:C5"));
    expect(sheet?.validations[0]?.areas).toEqual([area("B2:B5")]);
    expect(workbook.difference().edits).toEqual([{ kind: "insert-rows", sheet: "Log", at: 2, count: 2 }]);
    expect(changed(workbook, "Log")).toContain(key("C11"));
    expect(changed(workbook, "Log")).not.toContain(key("E1"));
  });
  it("fills the calculated column and the formats of the row above", () => {
    const workbook = logbook();
    workbook.insertRows("Log", 2, 1);
    expect(at(workbook, "Log", "C3")).toMatchObject({ formula: "[@Words]*2" });
    expect(at(workbook, "Log", "A3")).toEqual({ value: null, style: 1 });
  });
  it("comes back exactly", () => {
    const workbook = logbook();
    const before = structuredClone([...(workbook.sheet("Log")?.cells ?? [])]);
    workbook.insertRows("Log", 2, 2);
    workbook.undo();
    expect([...(workbook.sheet("Log")?.cells ?? [])]).toEqual(before);
    expect(workbook.difference()).toEqual({ edits: [], changedCells: new Map(), changedSettings: new Set() });
  });
});

describe("rows deleted", () => {
  it("leaves #REF! where a formula referred to them, and undo restores it", () => {
    const workbook = logbook();
    workbook.deleteRows("Log", 8, 1);
    expect(at(workbook, "Summary", "A2")?.formula).toBe("#REF!");
    expect(workbook.sheet("Log")?.comments).toEqual([]);
    workbook.undo();
    expect(at(workbook, "Summary", "A2")?.formula).toBe("Log!A9");
    expect(workbook.sheet("Log")?.comments).toHaveLength(1);
  });
  it.each([
    ["the heading row of a table", 0, 1, "header-row"],
    ["all data rows of a table", 1, 2, "last-row"],
  ])("refuses %s", (_, row, count, code) => {
    expect(logbook().deleteRows("Log", row, count)).toMatchObject({ ok: false, fault: { code } });
  });
  it("takes a table away with all its rows", () => {
    const workbook = logbook();
    workbook.deleteRows("Log", 0, 3);
    expect(workbook.sheet("Log")?.tables).toEqual([]);
  });
});

describe("a row appended to a table", () => {
  it("extends the table, its calculated column, formats, validation and references", () => {
    const workbook = logbook();
    expect(workbook.appendToTable("probes", [[45014, 15]])).toEqual({ ok: true, value: area("A4:C4") });
    expect(at(workbook, "Log", "A4")).toEqual({ value: 45014, style: 1 });
    expect(at(workbook, "Log", "C4")).toMatchObject({ formula: "[@Words]*2" });
    expect(at(workbook, "Log", "E1")?.formula).toBe("SUM(B2:B4)");
    expect(at(workbook, "Summary", "A1")?.formula).toBe("SUM(Log!$B$2:$B$4)");
    expect(workbook.names[0]?.formula).toBe("Log!$B$2:$B$4");
    expect(workbook.sheet("Log")?.validations[0]?.areas).toEqual([area("B2:B4")]);
    expect(at(workbook, "Log", "A9")?.value).toBe("below");
    workbook.undo();
    expect(workbook.table("Probes")?.table.area).toEqual(area("A1:C3"));
    expect(workbook.difference().changedCells.size).toBe(0);
  });
  it("moves the totals row down", () => {
    const workbook = logbook(true);
    workbook.setCell("Log", 1, 5, { formula: "B4/2" });
    workbook.appendToTable("Probes", [[45014, 15]]);
    expect(at(workbook, "Log", "B4")?.value).toBe(15);
    expect(at(workbook, "Log", "B5")?.formula).toBe("SUBTOTAL(109,[Words])");
    expect(at(workbook, "Log", "F2")?.formula).toBe("B5/2");
  });
  it("puts rows in where something stands below", () => {
    const workbook = logbook();
    workbook.appendToTable(
      "Probes",
      Array.from({ length: 6 }, (_, index) => [45014 + index, index]),
    );
    expect(at(workbook, "Log", "B9")?.value).toBe(5);
    expect(at(workbook, "Log", "A15")?.value).toBe("below");
    expect(workbook.difference().edits.map((edit) => edit.kind)).toEqual(["insert-rows", "grow-table"]);
  });
});

describe("sheets, charts and settings", () => {
  it("adds a sheet and a chart, undoably", () => {
    const workbook = logbook();
    workbook.addSheet("Chart");
    workbook.addChart({
      sheet: "Chart",
      title: "t",
      xTitle: "x",
      yTitle: "y",
      x: "Log!$A$2:$A$3",
      series: [],
      area: area("A1:H9"),
    });
    expect(workbook.sheet("chart")?.objects).toHaveLength(1);
    workbook.undo();
    workbook.undo();
    expect([workbook.sheet("Chart"), workbook.difference().edits]).toEqual([undefined, []]);
  });
  it.each(["Log", "log", "", "a/b", "x".repeat(32)])("refuses the sheet name %j", (name) => {
    expect(logbook().addSheet(name).ok).toBe(false);
  });
  it("lists changed settings", () => {
    const workbook = logbook();
    workbook.keepSetting("columns", "{}");
    expect(workbook.difference().changedSettings).toEqual(new Set(["columns"]));
  });
});
