import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import {
  cellAt,
  changedParts,
  contentsOf,
  fixture,
  partsOf,
  saveAfter,
  sheetOf,
  valueOf,
} from "./opened-files";
import { makePackage, type MadePackage } from "./made-package";

const TYPES = "application/vnd.openxmlformats-officedocument.spreadsheetml";
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const page = (bytes: Uint8Array, number = 0): string => partsOf(bytes).get(`book/page-${number}.xml`) ?? "";
const made = (sheetData: string, more: Partial<MadePackage> = {}): Uint8Array =>
  makePackage({ sheets: { S: `<sheetData>${sheetData}</sheetData>` }, ...more });

const replaceIn = (bytes: Uint8Array, name: string, before: string, after: string): Uint8Array => {
  const texts = [...partsOf(bytes)].map(([key, text]) => [
    key,
    strToU8(key === name ? text.replace(before, after) : text),
  ]);
  return zipSync(Object.fromEntries(texts));
};

describe("a changed sheet keeps what is not known here", () => {
  const rows = [
    '\r\n  <row r="1" spans="1:2" x14ac:dyDescent="0.3" new:mark="1">\r\n    <c r="A1" s="0" ph="1" new:mark="2"><v>1</v><extLst><ext uri="u"/></extLst></c>',
    '<!-- a note --><c r="B1"><f ca="1">A1*2</f><v>2</v></c></row>\r\n',
  ].join("");
  const bytes = made(rows, {
    declarations:
      ' xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" mc:Ignorable="x14ac new" xmlns:x14ac="urn:a" xmlns:new="urn:new"',
  });

  it("attributes, extensions, comments and white space", () => {
    const saved = saveAfter(bytes, (workbook) => {
      workbook.setCell("S", 0, 0, 5);
    });
    expect(page(saved)).toBe(page(bytes).replace("<v>1</v>", "<v>5</v>"));
  });

  it("and moves them with their row", () => {
    const saved = saveAfter(bytes, (workbook) => {
      workbook.insertRows("S", 0, 1);
    });
    const expected = page(bytes)
      .replace('<row r="1"', '<row r="2"')
      .replace('r="A1"', 'r="A2"')
      .replace('r="B1"', 'r="B2"')
      .replace("A1*2", "A2*2");
    expect(page(saved)).toBe(expected);
  });
});

describe("formulas", () => {
  const group =
    '<row r="1"><c r="A1"><v>1</v></c><c r="B1"><f t="shared" ref="B1:B3" si="0">A1*2</f><v>2</v></c></row><row r="2"><c r="A2"><v>2</v></c><c r="B2"><f t="shared" si="0"/><v>4</v></c></row><row r="3"><c r="A3"><v>3</v></c><c r="B3"><f t="shared" si="0"/><v>6</v></c></row>';

  it("stay shared when a result changes", () => {
    const saved = saveAfter(made(group), (workbook) => {
      workbook.storeResult("S", 16384 + 1, { value: 5, formula: "A2*2", style: 0 });
    });
    expect(page(saved)).toBe(page(made(group)).replace("<v>4</v>", "<v>5</v>"));
  });

  it("stay shared when all of them move alike", () => {
    const saved = saveAfter(made(group), (workbook) => {
      workbook.insertRows("S", 0, 1);
    });
    expect(page(saved)).toContain('<f t="shared" ref="B2:B4" si="0">A2*2</f>');
    expect(page(saved)).toContain('<c r="B4"><f t="shared" si="0"/>');
  });

  it("are written out where the first one is typed over", () => {
    const saved = saveAfter(made(group), (workbook) => {
      workbook.setCell("S", 0, 1, 9);
    });
    expect(page(saved)).toContain('<c r="B1"><v>9</v></c>');
    expect(page(saved)).toContain('<c r="B2"><f>A2*2</f><v>4</v></c>');
  });

  it("are read back alike where rows go in between", () => {
    const saved = contentsOf(saveAfter(made(group), (workbook) => workbook.insertRows("S", 1, 1)));
    expect(["B1", "B3", "B4"].map((address) => cellAt(saved, "S", address)?.formula)).toEqual([
      "A1*2",
      "A3*2",
      "A4*2",
    ]);
  });

  it("that spill get the mark of dynamic arrays and a part that explains it", () => {
    const bytes = made('<row r="1"><c r="A1"><v>1</v></c></row>');
    const saved = saveAfter(bytes, (workbook) => {
      const spill = { top: 0, left: 2, bottom: 1, right: 2 };
      workbook.storeResult("S", 2, { value: 1, formula: "SEQUENCE(2)", style: 0, array: "dynamic", spill });
      workbook.storeResult("S", 16384 + 2, { value: 2, style: 0, spilledFrom: { row: 0, column: 2 } });
    });
    expect(changedParts(bytes, saved)).toEqual([
      "[Content_Types].xml",
      "book/_rels/main.xml.rels",
      "book/page-0.xml",
      "xl/metadata.xml",
    ]);
    expect(page(saved)).toContain(
      '<c r="C1" cm="1"><f t="array" ref="C1:C2">_xlfn.SEQUENCE(2)</f><v>1</v></c>',
    );
    const again = contentsOf(saved);
    expect(cellAt(again, "S", "C1")).toMatchObject({ array: "dynamic", spill: { bottom: 1 } });
    expect(cellAt(again, "S", "C2")?.spilledFrom).toEqual({ row: 0, column: 2 });
  });

  it("take their place in a file whose metadata mean other things", () => {
    const metadata = `<metadata xmlns="${MAIN}"><metadataTypes count="1"><metadataType name="XLRICHVALUE"/></metadataTypes><futureMetadata name="XLRICHVALUE" count="1"><bk/></futureMetadata><valueMetadata count="1"><bk><rc t="1" v="0"/></bk></valueMetadata></metadata>`;
    const bytes = made('<row r="1"><c r="A1" vm="1" t="e"><v>#VALUE!</v></c></row>', {
      parts: {
        "m.xml": {
          text: metadata,
          type: `${TYPES}.sheetMetadata+xml`,
          of: ["book/main.xml", "sheetMetadata", "m"],
        },
      },
    });
    const saved = saveAfter(bytes, (workbook) => workbook.setCell("S", 2, 0, { formula: "SORT(A1:A2)" }));
    expect(page(saved)).toContain('<c r="A1" vm="1" t="e">');
    expect(partsOf(saved).get("m.xml")).toContain(
      '<cellMetadata count="1"><bk><rc t="2" v="0"/></bk></cellMetadata><valueMetadata',
    );
    expect(cellAt(contentsOf(saved), "S", "A3")?.array).toBe("dynamic");
  });

  it("typed in a table name its column in full", () => {
    const saved = saveAfter(fixture("teachers-workbook.xlsx"), (workbook) => {
      workbook.setCell("Probes", 3, 4, { formula: "[@Words]-[@Errors]" });
    });
    expect(partsOf(saved).get("xl/worksheets/sheet1.xml")).toContain(
      "<f>Probes[[#This Row],[Words]]-Probes[[#This Row],[Errors]]</f>",
    );
  });

  it("declare the names of LET as files do", () => {
    const saved = saveAfter(made(""), (workbook) =>
      workbook.setCell("S", 0, 0, { formula: "LET(x,2,y,x*3,x+y)" }),
    );
    expect(page(saved)).toContain("_xlfn.LET(_xlpm.x,2,_xlpm.y,_xlpm.x*3,_xlpm.x+_xlpm.y)");
    expect(page(saved)).toContain("<sheetData><row");
  });
});

describe("the calculation chain", () => {
  const chain = (entries: string): MadePackage["parts"] => ({
    "chain.xml": {
      text: `<calcChain xmlns="${MAIN}">${entries}</calcChain>`,
      type: `${TYPES}.calcChain+xml`,
      of: ["book/main.xml", "calcChain", "c"],
    },
  });
  const bytes = makePackage({
    sheets: {
      S: '<sheetData><row r="1"><c r="A1"><f>1+1</f><v>2</v></c><c r="B1"><f>A1+1</f><v>3</v></c></row></sheetData>',
      T: '<sheetData><row r="1"><c r="A1"><f>S!B1</f><v>3</v></c></row></sheetData>',
    },
    parts: chain('<c r="A1" i="5"/><c r="B1" l="1"/><c r="A1" i="6"/>') ?? {},
  });

  it("loses cells that hold no formula any more, and passes their sheet on to the next", () => {
    const saved = saveAfter(bytes, (workbook) => workbook.setCell("S", 0, 0, 4));
    expect(partsOf(saved).get("chain.xml")).toContain('<c r="B1" l="1" i="5"/><c r="A1" i="6"/>');
  });

  it("gets new formulas at its end", () => {
    const saved = saveAfter(bytes, (workbook) => workbook.setCell("T", 1, 0, { formula: "A1*2" }));
    expect(partsOf(saved).get("chain.xml")).toContain('<c r="A1" i="6"/><c r="A2" i="6"/></calcChain>');
  });

  it("follows rows, and is not touched by a new number", () => {
    const moved = saveAfter(bytes, (workbook) => workbook.insertRows("S", 0, 1));
    expect(partsOf(moved).get("chain.xml")).toContain('<c r="A2" i="5"/><c r="B2" l="1"/><c r="A1" i="6"/>');
    expect(page(moved, 1)).toContain("<f>S!B2</f>");
    const typed = saveAfter(bytes, (workbook) => workbook.setCell("S", 4, 4, 1));
    expect(changedParts(bytes, typed)).toEqual(["book/page-0.xml"]);
  });

  it("goes with its content type and relationship when the last formula goes", () => {
    const one = makePackage({
      sheets: { S: '<sheetData><row r="1"><c r="A1"><f>1+1</f><v>2</v></c></row></sheetData>' },
      parts: chain('<c r="A1" i="5"/>') ?? {},
    });
    const saved = saveAfter(one, (workbook) => workbook.setCell("S", 0, 0, 4));
    expect(partsOf(saved).has("chain.xml")).toBe(false);
    expect([...partsOf(saved).values()].join("")).not.toContain("chain.xml");
  });
});

describe("a table's filter", () => {
  const table = (id: number, name: string, filter: string) => ({
    text: `<table xmlns="${MAIN}" id="${id}" name="${name}" displayName="${name}" ref="A1:B3"><autoFilter ref="${filter}"/><tableColumns count="2"><tableColumn id="1" name="Day"/><tableColumn id="2" name="Words"/></tableColumns></table>`,
    type: `${TYPES}.table+xml`,
  });
  const sheet =
    '<sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>Day</t></is></c><c r="B1" t="inlineStr"><is><t>Words</t></is></c></row><row r="2"><c r="A2"><v>1</v></c><c r="B2"><v>5</v></c></row><row r="3"><c r="A3"><v>2</v></c><c r="B3"><v>6</v></c></row></sheetData><tableParts count="1"><tablePart r:id="t"/></tableParts>';
  const bytes = makePackage({
    sheets: { S: sheet, T: sheet },
    parts: {
      "one.xml": { ...table(1, "One", "A1:B3"), of: ["book/page-0.xml", "table", "t"] },
      "two.xml": { ...table(2, "Two", "A1:B1"), of: ["book/page-1.xml", "table", "t"] },
    },
  });

  it("grows with its table, and another table's part stays as it was", () => {
    const saved = saveAfter(bytes, (workbook) => workbook.appendToTable("One", [[3, 7]]));
    expect(partsOf(saved).get("one.xml")).toContain('<autoFilter ref="A1:B4"/>');
    expect(changedParts(bytes, saved)).toEqual(["book/page-0.xml", "one.xml"]);
  });

  it("over the header row alone, as some writers give it, stays there", () => {
    const saved = saveAfter(bytes, (workbook) => workbook.appendToTable("Two", [[3, 7]]));
    expect(partsOf(saved).get("two.xml")).toContain('ref="A1:B4"><autoFilter ref="A1:B1"/>');
  });
});

describe("other writers' spellings", () => {
  it("rows and cells without addresses, and an empty row", () => {
    const saved = saveAfter(
      made('<row><c><v>1</v></c><c><v>2</v></c></row><row/><row r="5"/>'),
      (workbook) => {
        workbook.setCell("S", 0, 2, 3);
        workbook.setCell("S", 4, 0, 4);
        workbook.setCell("S", 3, 0, 5);
      },
    );
    const again = contentsOf(saved);
    expect(["A1", "B1", "C1", "A4", "A5"].map((address) => cellAt(again, "S", address)?.value)).toEqual([
      1, 2, 3, 5, 4,
    ]);
    expect(page(saved)).toContain('<row r="4"><c r="A4"><v>5</v></c></row><row r="5"><c r="A5">');
  });

  it("elements with a prefix", () => {
    const text = page(made('<row r="1"><c r="A1"><v>1</v></c></row>'))
      .replace(`xmlns="${MAIN}"`, `xmlns:x="${MAIN}"`)
      .replace(/<(\/?)(worksheet|sheetData|row|c|v)\b/g, "<$1x:$2");
    const files = makePackage({
      sheets: { T: "<sheetData/>" },
      parts: { "x.xml": { text, type: `${TYPES}.worksheet+xml`, of: ["book/main.xml", "worksheet", "px"] } },
      after: "",
    });
    // The second sheet's entry is put beside the first one's.
    const bytes = replaceIn(
      files,
      "book/main.xml",
      "</sheets>",
      '<sheet name="S" sheetId="9" r:id="px"/></sheets>',
    );
    expect(cellAt(contentsOf(bytes), "S", "A1")?.value).toBe(1);
    const saved = saveAfter(bytes, (workbook) => {
      workbook.setCell("S", 0, 1, { formula: "A1+1" });
      workbook.setCell("S", 1, 0, "two");
    });
    expect(partsOf(saved).get("x.xml")).toContain(
      '<x:c r="B1"><x:f>A1+1</x:f></x:c></x:row><x:row r="2"><x:c r="A2" t="inlineStr"><x:is><x:t>two</x:t></x:is></x:c></x:row>',
    );
    expect(cellAt(contentsOf(saved), "S", "A2")?.value).toBe("two");
  });

  it("a thread of comments, a form control and a linked shape follow their rows", () => {
    const vml =
      '<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:x="urn:schemas-microsoft-com:office:excel"><v:shape id="a"><br><x:ClientData ObjectType="Checkbox"><x:Anchor>1, 0, 4, 0, 2, 0, 5, 0</x:Anchor><x:FmlaLink>$A$5</x:FmlaLink></x:ClientData></v:shape></xml>';
    const bytes = made('<row r="5"><c r="A5"><v>1</v></c></row>', {
      parts: {
        "t.xml": {
          text: '<ThreadedComments xmlns="http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments"><threadedComment ref="A5" personId="{P}" id="{1}"><text>?</text></threadedComment></ThreadedComments>',
          of: ["book/page-0.xml", "threadedComment", "t"],
        },
        "k.xml": {
          text: '<formControlPr xmlns="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main" objectType="CheckBox" fmlaLink="$A$5"/>',
          of: ["book/page-0.xml", "ctrlProp", "k"],
        },
        "v.vml": { text: vml, of: ["book/page-0.xml", "vmlDrawing", "v"] },
      },
    });
    const saved = partsOf(saveAfter(bytes, (workbook) => workbook.insertRows("S", 2, 3)));
    expect(saved.get("t.xml")).toContain('ref="A8"');
    expect(saved.get("k.xml")).toContain('fmlaLink="$A$8"');
    expect(saved.get("v.vml")).toBe(
      vml.replace("1, 0, 4, 0, 2, 0, 5, 0", "1, 0, 7, 0, 2, 0, 8, 0").replace("$A$5", "$A$8"),
    );
  });
});

describe("rows of a validation or a conditional format", () => {
  const rules =
    '<row r="2"><c r="A2"><v>1</v></c></row></sheetData><conditionalFormatting sqref="A2:A9"><cfRule type="expression" priority="1"><formula>A2&gt;$C$1</formula></cfRule></conditionalFormatting><dataValidations count="2"><dataValidation type="custom" sqref="A2:A9"><formula1>ISNUMBER(A2)</formula1></dataValidation><dataValidation type="whole" sqref="B3"><formula1>1</formula1></dataValidation></dataValidations><mergeCells count="1"><mergeCell ref="D3:E3"/></mergeCells>';
  const bytes = makePackage({ sheets: { S: `<sheetData>${rules}` } });

  it("whose first row is deleted, are written for the first row that is left", () => {
    const saved = page(saveAfter(bytes, (workbook) => workbook.deleteRows("S", 1, 1)));
    expect(saved).toContain('<conditionalFormatting sqref="A2:A8">');
    expect(saved).toContain("<formula>A2&gt;$C$1</formula>");
    expect(saved).toContain("<formula1>ISNUMBER(A2)</formula1>");
  });

  it("go when all their cells are deleted, with containers that would be empty", () => {
    const saved = page(saveAfter(bytes, (workbook) => workbook.deleteRows("S", 2, 1)));
    expect(saved).toContain('<dataValidations count="1"><dataValidation type="custom" sqref="A2:A8">');
    expect(saved).not.toContain("mergeCells");
    expect(
      sheetOf(contentsOf(saveAfter(bytes, (workbook) => valueOf(workbook.deleteRows("S", 2, 1)))), "S")
        .merges,
    ).toEqual([]);
  });
});
