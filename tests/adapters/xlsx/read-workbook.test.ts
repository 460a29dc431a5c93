import { describe, expect, it } from "vitest";
import { readWorkbook } from "../../../src/adapters/xlsx/read-workbook";
import { newWorkbook } from "../../../src/adapters/xlsx/new-workbook";
import { cellAt, contentsOf, fixture, OPTIONS, sheetOf, valueOf } from "./opened-files";
import { makePackage } from "./made-package";

const TYPES = "application/vnd.openxmlformats-officedocument.spreadsheetml";
const DYNAMIC = `<metadata xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:a="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray"><metadataTypes count="1"><metadataType name="XLDAPR"/></metadataTypes><futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="x"><a:dynamicArrayProperties fDynamic="1"/></ext></extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;

describe.each(["teachers-workbook.xlsx", "teachers-workbook-libreoffice.xlsx"])("%s", (name) => {
  const contents = contentsOf(fixture(name));

  it("has its sheets in order, the hidden one hidden", () => {
    const sheets = contents.sheets.map((sheet) => [sheet.name, sheet.visibility]);
    expect(sheets.slice(0, 4)).toEqual([
      ["Probes", "visible"],
      ["Summary", "visible"],
      ["Filtered", "visible"],
      ["Lists", "hidden"],
    ]);
  });

  it.each([
    ["a heading", "Probes", "A3", "Date"],
    ["rich text", "Probes", "A2", "Read aloud, one minute"],
    ["a date as its serial number", "Probes", "A4", 46_272],
    ["a number", "Probes", "C15", 88],
    ["a logical value", "Filtered", "B2", true],
    ["an error", "Lists", "B1", { error: "#DIV/0!" }],
  ])("reads %s", (_, sheet, address, value) => {
    expect(cellAt(contents, sheet, address)?.value).toEqual(value);
  });

  it("reads dates by their number format", () => {
    expect(contents.styles[cellAt(contents, "Probes", "A4")?.style ?? 0]?.numberFormat.toLowerCase()).toBe(
      "dd/mm/yyyy",
    );
  });

  it("reads fonts, fills and borders", () => {
    const style = contents.styles[cellAt(contents, "Summary", "A1")?.style ?? 0];
    expect(style).toMatchObject({
      font: { bold: true },
      fill: "#d9e2f3",
      borders: { top: { style: "thin" }, left: { style: "thin" } },
    });
  });

  it("reads the table with its calculated columns", () => {
    const table = sheetOf(contents, "Probes").tables[0];
    expect(table).toMatchObject({
      name: "Probes",
      area: { top: 2, left: 0, bottom: 14, right: 6 },
      headerRow: true,
      totalsRow: false,
    });
    expect(table?.columns.map((column) => column.name)).toEqual([
      "Date",
      "Pupil",
      "Words",
      "Errors",
      "Seconds",
      "Rate",
      "Accuracy",
    ]);
  });

  it("reads merged cells, hidden columns and heights", () => {
    const sheet = sheetOf(contents, "Probes");
    expect(sheet.merges).toEqual([{ top: 0, left: 0, bottom: 0, right: 7 }]);
    expect(sheet.columnWidths.get(8)).toBe(0);
    expect(sheet.rowHeights.get(1)).toBeCloseTo(22, 0);
  });

  it("reads validations, notes, names, and where charts and pictures lie", () => {
    const sheet = sheetOf(contents, "Probes");
    expect(sheet.validations.find((one) => one.type === "list")).toMatchObject({
      areas: [{ top: 3, left: 1, bottom: 14, right: 1 }],
      formula1: "Pupils",
    });
    expect(sheet.comments.map((comment) => [comment.row, comment.column, comment.text])).toEqual([
      [5, 2, "Tired today"],
      [14, 3, "Checked twice"],
    ]);
    expect(contents.names.find((one) => one.name === "Rates")?.formula.replaceAll("$", "")).toContain(
      "Probes!F4:F15",
    );
    expect(sheet.objects.map((one) => one.kind).sort()).toEqual(["chart", "picture"]);
    expect(sheet.objects.find((one) => one.kind === "chart")).toMatchObject({
      title: "Rate by week",
      area: { top: 2, left: 9 },
    });
    expect(sheet.objects.find((one) => one.kind === "picture")?.title).toBe("A grey square");
  });
});

describe("what another tool's workbook holds beside", () => {
  const contents = contentsOf(fixture("teachers-workbook.xlsx"));

  it("reads a chart sheet as a sheet without cells", () => {
    expect(sheetOf(contents, "Picture")).toMatchObject({ kind: "other", objects: [{ kind: "chart" }] });
  });

  it("reads a dynamic array with the cells that it filled, and a fixed one", () => {
    expect(cellAt(contents, "Summary", "E2")).toMatchObject({
      formula: "SORT(Pupils)",
      array: "dynamic",
      spill: { top: 1, left: 4, bottom: 4, right: 4 },
    });
    expect(cellAt(contents, "Summary", "E4")).toMatchObject({
      value: "Heron",
      spilledFrom: { row: 1, column: 4 },
    });
    expect(cellAt(contents, "Summary", "G2")).toMatchObject({
      array: "fixed",
      spill: { top: 1, left: 6, bottom: 3, right: 6 },
    });
  });

  it("reads frozen panes (the other program drops them without a screen)", () => {
    expect(sheetOf(contents, "Probes").frozen).toEqual({ rows: 3, columns: 1 });
  });

  it("reads a totals row, protection and hidden grid lines", () => {
    expect(sheetOf(contents, "Summary").tables[0]).toMatchObject({
      totalsRow: true,
      columns: [{ totalsLabel: "Total" }, {}],
    });
    expect(sheetOf(contents, "Filtered")).toMatchObject({ isProtected: true, showGridLines: false });
  });
});

describe("cells as the standard allows them", () => {
  const read = (sheetData: string, more: Partial<Parameters<typeof makePackage>[0]> = {}) =>
    contentsOf(makePackage({ sheets: { S: `<sheetData>${sheetData}</sheetData>` }, ...more }));

  it.each([
    ["an inline string", '<c r="A1" t="inlineStr"><is><t>one</t></is></c>', "one"],
    [
      "an inline string of runs with a reading",
      '<c r="A1" t="inlineStr"><is><r><t>o</t></r><r><t xml:space="preserve">n </t></r><rPh sb="0" eb="1"><t>x</t></rPh></is></c>',
      "on ",
    ],
    ["a spelled-out sign", '<c r="A1" t="str"><v>a_x000D_b_x005F_x0041_</v></c>', "a\rb_x0041_"],
    ["an ISO date", '<c r="A1" t="d"><v>2026-09-07</v></c>', 46_272],
    ["an ISO date with time", '<c r="A1" t="d"><v>2026-09-07T12:00:00</v></c>', 46_272.5],
    ["the first of January 1900", '<c r="A1" t="d"><v>1900-01-01</v></c>', 1],
    ["a number with exponent", '<c r="A1"><v>1.5E-3</v></c>', 0.0015],
    ["a cell without an address", "<c><v>4</v></c>", 4],
    ["character data", '<c r="A1" t="str"><v><![CDATA[a<b]]></v></c>', "a<b"],
    [
      "an error of newer programs",
      '<c r="A1" t="e"><v>#FIELD!</v></c>',
      { error: "#VALUE!", message: "The file holds the error #FIELD! here." },
    ],
    ["a spill error", '<c r="A1" t="e"><v>#SPILL!</v></c>', { error: "#SPILL!" }],
  ])("%s", (_, cell, value) => {
    expect(cellAt(read(`<row r="1">${cell}</row>`), "S", "A1")?.value).toEqual(value);
  });

  it("counts ISO dates from 1904 where the workbook does", () => {
    const contents = read('<row><c t="d"><v>1904-01-02</v></c></row>', {
      before: '<workbookPr date1904="1"/>',
    });
    expect(contents.date1904).toBe(true);
    expect(cellAt(contents, "S", "A1")?.value).toBe(1);
  });

  it("expands shared formulas, absolute parts kept", () => {
    const contents = read(
      `<row r="1"><c r="B1"><f t="shared" ref="B1:C3" si="0">$A1+A$1*SUM('S'!A:A)&amp;"A1"</f><v>1</v></c></row><row r="3"><c r="B3"><f t="shared" si="0"/><v>1</v></c><c r="C3"><f t="shared" si="0"/><v>1</v></c></row>`,
    );
    expect(cellAt(contents, "S", "B3")?.formula).toBe(`$A3+A$1*SUM('S'!A:A)&"A1"`);
    expect(cellAt(contents, "S", "C3")?.formula).toBe(`$A3+B$1*SUM('S'!B:B)&"A1"`);
  });

  it.each([
    ['_xldudf_BRAILLE_TRANSLATE(A2,"_xlfn.")', 'BRAILLE.TRANSLATE(A2,"_xlfn.")'],
    ["_xlfn.XLOOKUP(1,A:A,B:B)", "XLOOKUP(1,A:A,B:B)"],
    ["_xlfn._xlws.FILTER(A1:A3,B1:B3)", "FILTER(A1:A3,B1:B3)"],
    ["_xlfn.LET(_xlpm.x,1,_xlpm.x+1)", "LET(x,1,x+1)"],
    ["_xlfn.ANCHORARRAY(D2)+1", "D2#+1"],
    ["_xlfn.SINGLE(A1:A3)", "@A1:A3"],
    ["Probes[[#This Row],Words]*2", "Probes[[#This Row],[Words]]*2"],
    ["_xldudf_OTHER_THING(A1)", "_xldudf_OTHER_THING(A1)"],
  ])("reads the formula %s as it is typed", (file, typed) => {
    const text = file.replaceAll('"', "&quot;");
    expect(cellAt(read(`<row r="1"><c r="A1"><f>${text}</f></c></row>`), "S", "A1")?.formula).toBe(typed);
  });

  it("keeps a data table's place and marks it as not recalculated", () => {
    const contents = read(
      '<row r="2"><c r="B2"><f t="dataTable" ref="B2:B3" dt2D="0" dtr="0" r1="A1"/><v>7</v></c></row>',
    );
    expect(cellAt(contents, "S", "B2")).toMatchObject({
      value: 7,
      formula: "TABLE(,A1)",
      notRecalculated: true,
    });
  });

  it("tells dynamic arrays from fixed ones by the metadata, wherever that lies", () => {
    const contents = read(
      '<row r="1"><c r="A1" cm="1"><f t="array" ref="A1:A2">ROW(B1:B2)</f><v>1</v></c><c r="C1"><f t="array" ref="C1">ROW(B1)</f><v>1</v></c></row><row r="2"><c r="A2"><v>2</v></c></row>',
      {
        parts: {
          "elsewhere/marks.xml": {
            text: DYNAMIC,
            type: `${TYPES}.sheetMetadata+xml`,
            of: ["book/main.xml", "sheetMetadata", "m"],
          },
        },
      },
    );
    expect(cellAt(contents, "S", "A1")?.array).toBe("dynamic");
    expect(cellAt(contents, "S", "A2")?.spilledFrom).toEqual({ row: 0, column: 0 });
    expect(cellAt(contents, "S", "C1")?.array).toBe("fixed");
  });

  it("reads threads of comments with their answers instead of the note that stands for them", () => {
    const contents = read("", {
      parts: {
        "x/notes.xml": {
          text: '<comments xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><authors><author>tc={1}</author></authors><commentList><comment ref="B2" authorId="0"><text><t>[Threaded comment] needs a newer program</t></text></comment></commentList></comments>',
          of: ["book/page-0.xml", "comments", "n"],
        },
        "x/thread.xml": {
          text: '<ThreadedComments xmlns="http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments"><threadedComment ref="B2" personId="{P}" id="{1}"><text>Read it again?</text></threadedComment><threadedComment ref="B2" personId="{Q}" id="{2}" parentId="{1}"><text>Yes</text></threadedComment></ThreadedComments>',
          of: ["book/page-0.xml", "threadedComment", "t"],
        },
        "x/persons.xml": {
          text: '<personList xmlns="http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments"><person displayName="Heron" id="{P}"/><person displayName="Plover" id="{Q}"/></personList>',
          of: ["book/main.xml", "person", "p"],
        },
      },
    });
    expect(sheetOf(contents, "S").comments).toEqual([
      { row: 1, column: 1, author: "Heron", text: "Read it again?\nPlover: Yes" },
    ]);
  });

  it("resolves theme colours with their tint, and indexed ones", () => {
    const styles = `<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><fonts><font><color indexed="10"/></font></fonts><fills><fill><patternFill patternType="solid"><fgColor theme="4" tint="0.7999816888943144"/></patternFill></fill></fills><borders><border/></borders><cellXfs><xf numFmtId="14" fontId="0" fillId="0" borderId="0"><alignment horizontal="center" wrapText="1"/></xf></cellXfs></styleSheet>`;
    const theme = `<a:theme xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main"><a:themeElements><a:clrScheme name="x"><a:dk1><a:sysClr val="windowText" lastClr="000000"/></a:dk1><a:lt1><a:sysClr val="window" lastClr="FFFFFF"/></a:lt1><a:dk2><a:srgbClr val="44546A"/></a:dk2><a:lt2><a:srgbClr val="E7E6E6"/></a:lt2><a:accent1><a:srgbClr val="4472C4"/></a:accent1></a:clrScheme></a:themeElements></a:theme>`;
    const contents = read("", {
      parts: {
        "s.xml": { text: styles, of: ["book/main.xml", "styles", "s"] },
        "t.xml": { text: theme, of: ["book/main.xml", "theme", "t"] },
      },
    });
    // The fill that Office shows as "Accent 1, lighter 80 %" is D9E1F2 (18.8.19; shade known from Office, from memory).
    expect(contents.styles[0]).toEqual({
      numberFormat: "mm-dd-yy",
      font: { color: "#ff0000" },
      fill: "#d9e1f2",
      horizontal: "center",
      wrap: true,
    });
  });
});

describe("a new workbook", () => {
  it("opens like any other", () => {
    const contents = contentsOf(newWorkbook("Probes & goals"));
    expect(contents.sheets.map((sheet) => [sheet.name, sheet.cells.size])).toEqual([["Probes & goals", 0]]);
    expect(contents.styles.map((style) => style.numberFormat)).toEqual([
      "General",
      "yyyy\\-mm\\-dd",
      "General",
      "0%",
    ]);
  });
});

describe("cautions", () => {
  it("says that macros are kept and do not run", () => {
    const bytes = makePackage({
      sheets: { S: "<sheetData/>" },
      workbookType: "application/vnd.ms-excel.sheet.macroEnabled.main+xml",
      parts: { "book/vba.xml": { text: "<x/>", of: ["book/main.xml", "vbaProject", "v"] } },
    });
    expect(valueOf(readWorkbook(bytes, OPTIONS)).cautions).toEqual([expect.stringContaining("macros")]);
  });
});
