import { describe, expect, it } from "vitest";
import { saveWorkbook } from "../../../src/adapters/xlsx/save-workbook";
import { OpenWorkbook } from "../../../src/spreadsheet/open-workbook";
import {
  cellAt,
  changedParts,
  contentsOf,
  fixture,
  OPTIONS,
  partsOf,
  saveAfter,
  sheetOf,
  valueOf,
} from "./opened-files";

const opened = fixture("teachers-workbook.xlsx");
const part = (bytes: Uint8Array, name: string): string => partsOf(bytes).get(name) ?? "";

describe("a save without an edit", () => {
  it("gives the bytes back", () => {
    expect(saveAfter(opened, () => undefined)).toEqual(opened);
  });

  it("gives them back after an edit that was undone", () => {
    const saved = saveAfter(opened, (workbook) => {
      workbook.insertRows("Probes", 5, 2);
      workbook.setCell("Probes", 0, 0, "Other");
      workbook.undo();
      workbook.undo();
    });
    expect(changedParts(opened, saved)).toEqual([]);
  });

  it("keeps every part when only a setting changes, and adds the project's own", () => {
    const saved = saveAfter(opened, (workbook) => workbook.keepSetting("columns", '{"date":"A"}'));
    expect(changedParts(opened, saved)).toEqual([
      "[Content_Types].xml",
      "customXml/_rels/item1.xml.rels",
      "customXml/item1.xml",
      "customXml/itemProps1.xml",
      "xl/_rels/workbook.xml.rels",
    ]);
    expect(contentsOf(saved).settings.get("columns")).toBe('{"date":"A"}');
    const again = saveAfter(saved, (workbook) => workbook.keepSetting("day order", "dmy"));
    expect(changedParts(saved, again)).toEqual(["customXml/item1.xml"]);
    expect([...contentsOf(again).settings.keys()]).toEqual(["columns", "day order"]);
  });
});

describe("a save of one typed cell", () => {
  const saved = saveAfter(opened, (workbook) => workbook.setCell("Probes", 3, 2, 77));

  it("changes its sheet alone, and there its cell alone", () => {
    expect(changedParts(opened, saved)).toEqual(["xl/worksheets/sheet1.xml"]);
    const before = part(opened, "xl/worksheets/sheet1.xml");
    expect(part(saved, "xl/worksheets/sheet1.xml")).toBe(
      before.replace('<c r="C4"><v>61</v></c>', '<c r="C4"><v>77</v></c>'),
    );
  });

  it("keeps the order of entries", () => {
    expect([...partsOf(saved).keys()]).toEqual([...partsOf(opened).keys()]);
  });

  it.each([
    ["text that looks like a formula", "=1+1"],
    ["text with marks of XML", '<a href="x">&amp;</a>'],
    ["text with blanks at its ends", "  two  "],
    ["lines and tabs", "a\nb\tc"],
    ["a carriage return", "a\r\nb"],
    ["a control character", "a\u0001b"],
    ["what looks like the spelling of one", "_x0041_"],
    ["braille", "\u2813\u2811\u2817\u2815\u281d"],
    ["an emoji and right-to-left text", "\u{1F426} \u05e9\u05dc\u05d5\u05dd"],
    ["half an emoji", "\ud83d"],
    ["a number", -0.1],
    ["a logical value", true],
    ["an error", { error: "#N/A" } as const],
  ])("reads back %s", (_, value) => {
    const again = contentsOf(saveAfter(opened, (workbook) => workbook.setCell("Probes", 3, 2, value)));
    expect(cellAt(again, "Probes", "C4")?.value).toEqual(value);
    expect(cellAt(again, "Probes", "C4")?.formula).toBeUndefined();
  });

  it("keeps a cleared cell's format", () => {
    const cleared = saveAfter(opened, (workbook) =>
      workbook.clear("Probes", { top: 3, left: 0, bottom: 3, right: 0 }),
    );
    expect(part(cleared, "xl/worksheets/sheet1.xml")).toContain('<c r="A4" s="2"/>');
  });

  it("spells an add-in's function, a new function and a spilling formula as files do", () => {
    const typed = saveAfter(opened, (workbook) => {
      workbook.setCell("Lists", 0, 2, { formula: "BRAILLE.CELLS(A1)" });
      workbook.setCell("Lists", 1, 2, { formula: 'IFNA(MATCH("Heron",A1:A4,0),0)' });
      workbook.setCell("Lists", 2, 2, { formula: "SORT(A1:A4)" });
      workbook.setCell("Lists", 0, 3, { formula: "C3#" });
      workbook.setCell("Lists", 1, 3, { formula: "SUM(A1:A4)" });
    });
    const sheet = part(typed, "xl/worksheets/sheet4.xml");
    expect(sheet).toContain("_xldudf_BRAILLE_CELLS(A1)</f>");
    expect(sheet).toContain('<f>_xlfn.IFNA(MATCH("Heron",A1:A4,0),0)</f>');
    expect(sheet).toContain('cm="1"><f t="array" ref="C3">_xlfn._xlws.SORT(A1:A4)</f>');
    expect(sheet).toContain("_xlfn.ANCHORARRAY(C3)");
    expect(sheet).toContain("<f>SUM(A1:A4)</f>");
    expect(cellAt(contentsOf(typed), "Lists", "D1")?.formula).toBe("C3#");
    expect(changedParts(opened, typed)).toEqual(["xl/worksheets/sheet4.xml"]);
  });

  it.each([
    ["does not parse", "SUM(A1"],
    ["names a sheet that is not there", "Nowhere!A1"],
    ["names a table that is not there", "SUM(Nothing[Words])"],
    ["names another workbook", "[Other.xlsx]S!A1"],
  ])("keeps a formula that %s as the text that was typed, lest the file is called damaged", (_, formula) => {
    const again = contentsOf(saveAfter(opened, (workbook) => workbook.setCell("Lists", 0, 2, { formula })));
    expect(cellAt(again, "Lists", "C1")).toEqual({ value: `=${formula}`, style: 0 });
  });

  it("adds a style only where the file has none of the kind", () => {
    const typed = saveAfter(opened, (workbook) => {
      workbook.setCell("Lists", 5, 0, 46_000, { numberFormat: "d mmm yyyy" });
      workbook.setCell("Lists", 6, 0, 0.5, { numberFormat: "0%" });
    });
    expect(changedParts(opened, typed)).toEqual(["xl/styles.xml", "xl/worksheets/sheet4.xml"]);
    const again = contentsOf(typed);
    expect(again.styles[cellAt(again, "Lists", "A6")?.style ?? 0]?.numberFormat).toBe("d mmm yyyy");
    expect(cellAt(again, "Lists", "A7")?.style).toBe(3);
  });

  it("renames a table's column with its heading", () => {
    const typed = saveAfter(opened, (workbook) => workbook.setCell("Probes", 2, 2, "Read"));
    expect(part(typed, "xl/tables/table1.xml")).toContain('name="Read"');
    expect(cellAt(contentsOf(typed), "Probes", "D20")?.formula).toBe("COUNT(Probes[Read])");
    const workbook = new OpenWorkbook(contentsOf(opened));
    workbook.setCell("Probes", 2, 2, "Errors");
    expect(saveWorkbook(opened, workbook, workbook.difference(), OPTIONS)).toMatchObject({
      ok: false,
      fault: { code: "table-heading" },
    });
  });
});

describe("a save of a row appended to a table", () => {
  const saved = saveAfter(opened, (workbook) => {
    valueOf(workbook.appendToTable("Probes", [[46_357, "Heron", 90, 2, 60, undefined, undefined]]));
  });
  const again = contentsOf(saved);

  it("changes the table, its sheet and what spans its columns", () => {
    expect(changedParts(opened, saved)).toEqual([
      "xl/charts/chart1.xml",
      "xl/charts/chart2.xml",
      "xl/tables/table1.xml",
      "xl/workbook.xml",
      "xl/worksheets/sheet1.xml",
      "xl/worksheets/sheet2.xml",
    ]);
  });

  it.each([
    ["the table", "xl/tables/table1.xml", 'ref="A3:G16"'],
    ["the chart's dates", "xl/charts/chart1.xml", "<c:f>Probes!$A$4:$A$16</c:f>"],
    ["the chart's rates", "xl/charts/chart1.xml", "<c:f>Probes!$F$4:$F$16</c:f>"],
    ["the points that the chart keeps", "xl/charts/chart1.xml", '<c:ptCount val="13"/>'],
    ["the sparkline", "xl/worksheets/sheet2.xml", "<xm:f>Probes!F4:F16</xm:f>"],
    ["a formula over a column on another sheet", "xl/worksheets/sheet2.xml", "<f>MAX(Probes!F4:F16)</f>"],
    ["a formula on the same sheet", "xl/worksheets/sheet1.xml", "<f>AVERAGE(C4:C16)</f>"],
    ["the validation", "xl/worksheets/sheet1.xml", 'sqref="B4:B16"'],
    ["the conditional format", "xl/worksheets/sheet1.xml", '<conditionalFormatting sqref="G4:G16">'],
    ["the data bar of newer programs", "xl/worksheets/sheet1.xml", "<xm:sqref>F4:F16</xm:sqref>"],
    ["the name", "xl/workbook.xml", "Probes!$F$4:$F$16"],
  ])("grows %s", (_, name, text) => {
    expect(part(saved, name)).toContain(text);
  });

  it("reuses the style of the row above and fills the calculated columns", () => {
    expect(cellAt(again, "Probes", "A16")).toMatchObject({ value: 46_357, style: 2 });
    expect(cellAt(again, "Probes", "G16")).toMatchObject({
      formula: "1-Probes[[#This Row],[Errors]]/Probes[[#This Row],[Words]]",
      style: 3,
    });
  });

  it("leaves rows that it does not concern as they were written", () => {
    const rows = (bytes: Uint8Array): string[] =>
      part(bytes, "xl/worksheets/sheet1.xml").match(/<row r="(?:[1-9]|1[0-5])".*?<\/row>/g) ?? [];
    expect(rows(saved)).toEqual(rows(opened));
  });

  it("moves a totals row down", () => {
    const grown = contentsOf(
      saveAfter(opened, (workbook) => {
        valueOf(workbook.appendToTable("Minutes", [["Tracked", 5]]));
      }),
    );
    expect(sheetOf(grown, "Summary").tables[0]?.area).toEqual({ top: 9, left: 0, bottom: 14, right: 1 });
    expect(cellAt(grown, "Summary", "A15")?.value).toBe("Total");
    expect(cellAt(grown, "Summary", "B14")?.value).toBe(5);
    expect(cellAt(grown, "Summary", "D14")?.formula).toBe("B15/60");
  });
});

describe("a save of rows put in and taken out", () => {
  const inserted = saveAfter(opened, (workbook) => {
    valueOf(workbook.insertRows("Probes", 1, 2));
  });
  const deleted = saveAfter(opened, (workbook) => {
    valueOf(workbook.deleteRows("Probes", 4, 3));
  });

  it.each([
    ["the table", "xl/tables/table1.xml", 'ref="A5:G17"', 'ref="A3:G12"'],
    ["its filter", "xl/tables/table1.xml", '<autoFilter ref="A5:G17"/>', '<autoFilter ref="A3:G12"/>'],
    ["the chart", "xl/charts/chart1.xml", "Probes!$F$6:$F$17", "Probes!$F$4:$F$12"],
    ["the chart on its own sheet", "xl/charts/chart2.xml", "Probes!$C$6:$C$17", "Probes!$C$4:$C$12"],
    ["the sparkline", "xl/worksheets/sheet2.xml", "<xm:f>Probes!F6:F17</xm:f>", "<xm:f>Probes!F4:F12</xm:f>"],
    ["a formula of another sheet", "xl/worksheets/sheet2.xml", "MAX(Probes!F6:F17)", "MAX(Probes!F4:F12)"],
    [
      "an array formula of another sheet",
      "xl/worksheets/sheet2.xml",
      "Probes!C6:C8*2",
      "Probes!C4:C4*2|Probes!C4*2",
    ],
    ["a formula of its own", "xl/worksheets/sheet1.xml", "AVERAGE(C6:C17)", "AVERAGE(C4:C12)"],
    ["the validation", "xl/worksheets/sheet1.xml", 'sqref="B6:B17"', 'sqref="B4:B12"'],
    ["the conditional format", "xl/worksheets/sheet1.xml", 'sqref="G6:G17"', 'sqref="G4:G12"'],
    ["the hyperlink", "xl/worksheets/sheet1.xml", '<hyperlink ref="A24"', '<hyperlink ref="A19"'],
    ["the page break", "xl/worksheets/sheet1.xml", '<brk id="22"', '<brk id="17"'],
    ["the note", "xl/comments1.xml", 'ref="D17"', 'ref="D12"'],
    ["the note's box", "xl/drawings/vmlDrawing1.vml", "<x:Row>16</x:Row>", "<x:Row>11</x:Row>"],
    ["the picture", "xl/drawings/drawing1.xml", "<xdr:row>19</xdr:row>", "<xdr:row>14</xdr:row>"],
    ["the print area", "xl/workbook.xml", "Probes!$A$1:$H$26", "Probes!$A$1:$H$21"],
    ["the repeated rows", "xl/workbook.xml", "Probes!$5:$5", "Probes!$3:$3"],
    ["the name", "xl/workbook.xml", "Probes!$F$6:$F$17", "Probes!$F$4:$F$12"],
    ["the pane", "xl/worksheets/sheet1.xml", 'ySplit="5"', 'ySplit="3"'],
    ["the height of a row", "xl/worksheets/sheet1.xml", '<row r="4" ', '<row r="2" '],
  ])("lets %s follow", (_, name, afterInsert, afterDelete) => {
    expect(part(inserted, name)).toContain(afterInsert);
    expect(afterDelete.split("|").some((text) => part(deleted, name).includes(text))).toBe(true);
  });

  it("takes a note with its row", () => {
    expect(part(opened, "xl/comments1.xml")).toContain('ref="C6"');
    expect(contentsOf(deleted).sheets[0]?.comments).toHaveLength(1);
    expect(part(deleted, "xl/drawings/vmlDrawing1.vml").match(/<v:shape /g)).toHaveLength(1);
  });

  it("takes a table with all its rows, and makes references to it #REF!", () => {
    const saved = saveAfter(opened, (workbook) => {
      valueOf(workbook.deleteRows("Probes", 2, 13));
    });
    expect(partsOf(saved).has("xl/tables/table1.xml")).toBe(false);
    expect([...partsOf(saved)].filter(([name]) => /rels$|Types/.test(name)).join("")).not.toContain(
      "table1.xml",
    );
    expect(part(saved, "xl/worksheets/sheet1.xml")).not.toContain("tablePart");
    expect(part(saved, "xl/worksheets/sheet1.xml")).toContain("COUNT(#REF!)");
  });

  it("leaves the parts that name no rows of that sheet", () => {
    const touched = changedParts(opened, inserted);
    for (const name of [
      "xl/styles.xml",
      "xl/sharedStrings.xml",
      "xl/tables/table2.xml",
      "xl/worksheets/sheet3.xml",
      "xl/worksheets/sheet4.xml",
      "xl/theme/theme1.xml",
      "xl/metadata.xml",
      "[Content_Types].xml",
    ]) {
      expect(touched).not.toContain(name);
    }
  });

  it("agrees with the model, cell by cell", () => {
    const workbook = new OpenWorkbook(contentsOf(opened));
    valueOf(workbook.insertRows("Probes", 6, 1));
    workbook.setCell("Probes", 6, 2, 50);
    valueOf(workbook.deleteRows("Summary", 0, 1));
    valueOf(workbook.appendToTable("Probes", [[46_357, "Heron", 90, 2, 60, undefined, undefined]]));
    const again = contentsOf(valueOf(saveWorkbook(opened, workbook, workbook.difference(), OPTIONS)));
    for (const sheet of workbook.sheets) {
      const cells = [...sheet.cells].map(([key, cell]) => [key, cell.value, cell.formula, cell.style]);
      const read = [...sheetOf(again, sheet.name).cells].map(([key, cell]) => [
        key,
        cell.value,
        cell.formula,
        cell.style,
      ]);
      const order = (a: readonly unknown[], b: readonly unknown[]): number => Number(a[0]) - Number(b[0]);
      expect(read.sort(order)).toEqual(cells.sort(order));
      expect(sheetOf(again, sheet.name).tables.map((table) => table.area)).toEqual(
        sheet.tables.map((table) => table.area),
      );
      expect(sheetOf(again, sheet.name).merges).toEqual(sheet.merges);
      expect(sheetOf(again, sheet.name).validations).toEqual(sheet.validations);
      expect(sheetOf(again, sheet.name).comments).toEqual(sheet.comments);
    }
    expect(again.names).toEqual(workbook.names);
  });
});

describe("a save of new parts", () => {
  it("adds a sheet with its cells", () => {
    const saved = saveAfter(opened, (workbook) => {
      valueOf(workbook.addSheet("Taught & more"));
      workbook.setCells("Taught & more", 0, 0, [
        ["Pupil", "Sign"],
        ["Heron", "ch"],
      ]);
    });
    expect(changedParts(opened, saved)).toEqual([
      "[Content_Types].xml",
      "xl/_rels/workbook.xml.rels",
      "xl/workbook.xml",
      "xl/worksheets/sheet5.xml",
    ]);
    expect(cellAt(contentsOf(saved), "Taught & more", "B2")?.value).toBe("ch");
  });

  it("adds a chart to a sheet that has a drawing, and to one that has none", () => {
    const chart = (sheet: string) => ({
      sheet,
      title: "Rate",
      xTitle: "Date",
      yTitle: "Words a minute",
      x: "Probes!$A$4:$A$15",
      series: [{ name: "Heron", y: "Probes!$F$4:$F$15" }],
      area: { top: 25, left: 0, bottom: 40, right: 6 },
    });
    const saved = saveAfter(opened, (workbook) => {
      valueOf(workbook.addChart(chart("Probes")));
      valueOf(workbook.addChart(chart("Summary")));
      valueOf(workbook.insertRows("Probes", 0, 1));
    });
    const again = contentsOf(saved);
    expect(sheetOf(again, "Probes").objects.at(-1)).toMatchObject({
      kind: "chart",
      title: "Rate",
      area: { top: 26 },
    });
    expect(sheetOf(again, "Summary").objects.at(-1)).toMatchObject({
      kind: "chart",
      title: "Rate",
      area: { top: 25 },
    });
    expect(part(saved, "xl/charts/chart3.xml")).toContain("Probes!$F$5:$F$16");
    expect(part(saved, "xl/worksheets/sheet2.xml")).toMatch(/<drawing [^>]*\/><tableParts/);
  });
});
