import fc from "fast-check";
import { strToU8, zipSync, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { readWorkbook } from "../../../src/adapters/xlsx/read-workbook";
import { saveWorkbook } from "../../../src/adapters/xlsx/save-workbook";
import { SIZE_CAPS } from "../../../src/adapters/xlsx/zip-archive";
import { OpenWorkbook } from "../../../src/spreadsheet/open-workbook";
import { contentsOf, fixture, OPTIONS, valueOf } from "./opened-files";
import { makePackage } from "./made-package";

const opened = fixture("teachers-workbook.xlsx");
const compoundFile = (name: string): Uint8Array => {
  const bytes = new Uint8Array(2048);
  bytes.set([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
  [...name].forEach((letter, at) => (bytes[1024 + 2 * at] = letter.charCodeAt(0)));
  return bytes;
};
/** A zip whose directory says other numbers than what it holds. */
const withDirectory = (bytes: Uint8Array, change: (view: DataView, at: number) => void): Uint8Array => {
  const copy = bytes.slice();
  const view = new DataView(copy.buffer);
  for (let at = 0; at + 46 < copy.length; at++) if (view.getUint32(at, true) === 0x02014b50) change(view, at);
  return copy;
};
const plain = makePackage({ sheets: { S: "<sheetData/>" } });

describe("files that cannot be opened", () => {
  it.each<[string, string, Uint8Array, RegExp]>([
    ["an empty file", "empty-file", new Uint8Array(), /empty/],
    ["text", "not-a-workbook", strToU8("date,words\n2026-09-07,61"), /Save As/],
    ["an older workbook", "old-format", compoundFile("Workbook"), /\.xls\)/],
    ["an encrypted workbook", "encrypted", compoundFile("EncryptedPackage"), /password/],
    ["an archive of other things", "not-a-workbook", zipSync({ "a.txt": strToU8("a") }), /another kind/],
    [
      "an OpenDocument file",
      "not-a-workbook",
      zipSync({ mimetype: strToU8("x"), "content.xml": strToU8("<x/>") }),
      /OpenDocument/,
    ],
    [
      "a binary workbook",
      "binary-format",
      makePackage({
        sheets: { S: "" },
        workbookType: "application/vnd.ms-excel.sheet.binary.macroEnabled.main",
      }),
      /\.xlsb/,
    ],
    [
      "a word processor's document",
      "not-a-workbook",
      makePackage({
        sheets: { S: "" },
        workbookType: "application/vnd.openxmlformats-officedocument.wordprocessingml.document.main+xml",
      }),
      /another kind/,
    ],
    [
      "a workbook of the strict format",
      "strict-format",
      makePackage({ sheets: { S: "" }, namespace: "http://purl.oclc.org/ooxml/spreadsheetml/main" }),
      /Strict/,
    ],
    [
      "an encrypted entry",
      "encrypted",
      withDirectory(plain, (view, at) => view.setUint16(at + 8, 1, true)),
      /password/,
    ],
    ["a file cut short", "damaged-file", opened.subarray(0, opened.length - 400), /damaged/],
    [
      "an unpacked size over the cap",
      "too-large",
      withDirectory(plain, (view, at) => view.setUint32(at + 24, SIZE_CAPS.entry + 1, true)),
      /too large/,
    ],
    [
      "an entry that says it unpacks to far more than it holds",
      "too-large",
      withDirectory(plain, (view, at) => view.setUint32(at + 24, SIZE_CAPS.smallEntry + 1, true)),
      /times its size/,
    ],
    [
      "an entry that unpacks to more than it says",
      "damaged-file",
      withDirectory(plain, (view, at) => view.setUint32(at + 24, 10, true)),
      /larger/,
    ],
    [
      "a wrong check sum",
      "damaged-file",
      withDirectory(plain, (view, at) => view.setUint32(at + 16, 1, true)),
      /damaged/,
    ],
    [
      "a document type with entities",
      "damaged-file",
      makePackage({ sheets: { S: '<sheetData><row><c t="str"><v>&lol;</v></c></row></sheetData>' } }),
      /damaged/,
    ],
    ["a sheet that breaks off", "damaged-file", makePackage({ sheets: { S: "<sheetData><row>" } }), /repair/],
  ])("%s", (_, code, bytes, message) => {
    const result = readWorkbook(bytes, OPTIONS);
    expect(result).toMatchObject({ ok: false, fault: { code } });
    expect(result.ok ? "" : result.fault.message).toMatch(message);
  });
});

describe("garbled files give a fault or are read, never an exception", () => {
  it("cut anywhere", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: opened.length - 1 }), (length) => {
        expect(readWorkbook(opened.subarray(0, length), OPTIONS).ok).toBe(false);
      }),
      { numRuns: 60 },
    );
  });

  it("with bytes of the zip changed", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(opened.length - 1), fc.nat(255)), { minLength: 1, maxLength: 20 }),
        (changes) => {
          const bytes = opened.slice();
          for (const [at, byte] of changes) bytes[at] = byte;
          const result = readWorkbook(bytes, OPTIONS);
          if (!result.ok) expect(result.fault.message).toMatch(/\.$/);
        },
      ),
      { numRuns: 60 },
    );
  });

  it("with pieces of an XML part taken out or doubled, read and saved", () => {
    const files = unzipSync(opened);
    const names = Object.keys(files).filter((name) => /\.(xml|rels|vml)$/.test(name));
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: 1, max: 60 }),
        fc.boolean(),
        (name, share, length, doubled) => {
          const text = new TextDecoder().decode(files[name]);
          const at = Math.floor(share * text.length);
          const piece = text.slice(at, at + length);
          const garbled = text.slice(0, at) + (doubled ? piece + piece : "") + text.slice(at + length);
          const bytes = zipSync({ ...files, [name]: strToU8(garbled) });
          const result = readWorkbook(bytes, OPTIONS);
          if (!result.ok) return;
          const workbook = new OpenWorkbook(result.value.contents);
          const sheet = workbook.sheets.find((candidate) => candidate.kind === "cells");
          if (!sheet) return;
          workbook.insertRows(sheet.name, 4, 1);
          saveWorkbook(bytes, workbook, workbook.difference(), OPTIONS);
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe("edits that cannot be saved safely name the part", () => {
  const save = (bytes: Uint8Array, edit: (workbook: OpenWorkbook) => void) => {
    const workbook = new OpenWorkbook(contentsOf(bytes));
    edit(workbook);
    return saveWorkbook(bytes, workbook, workbook.difference(), OPTIONS);
  };
  const rows = '<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>';

  it("a pivot table that rows are put into", () => {
    const bytes = makePackage({
      sheets: { S: rows },
      parts: {
        "p/pivot.xml": {
          text: '<pivotTableDefinition xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><location ref="A3:C9"/></pivotTableDefinition>',
          type: "application/vnd.openxmlformats-officedocument.spreadsheetml.pivotTable+xml",
          of: ["book/page-0.xml", "pivotTable", "p"],
        },
      },
    });
    const refused = save(bytes, (workbook) => workbook.insertRows("S", 5, 1));
    expect(refused).toMatchObject({
      ok: false,
      fault: { code: "pivot-cut", message: expect.stringContaining("p/pivot.xml") },
    });
    expect(
      new TextDecoder().decode(
        unzipSync(valueOf(save(bytes, (workbook) => workbook.insertRows("S", 0, 1))))["p/pivot.xml"],
      ),
    ).toContain('ref="A4:C10"');
  });

  it("links to live data, when rows move", () => {
    const bytes = makePackage({
      sheets: { S: rows },
      parts: {
        "v.xml": {
          text: "<volTypes/>",
          type: "application/vnd.openxmlformats-officedocument.spreadsheetml.volatileDependencies+xml",
        },
      },
    });
    expect(save(bytes, (workbook) => workbook.insertRows("S", 0, 1))).toMatchObject({
      ok: false,
      fault: { code: "unsafe-part", message: expect.stringContaining("v.xml") },
    });
    expect(save(bytes, (workbook) => workbook.setCell("S", 0, 0, 2)).ok).toBe(true);
  });

  it("a part in another encoding", () => {
    const files = unzipSync(makePackage({ sheets: { S: rows } }));
    const text = new TextDecoder()
      .decode(files["book/page-0.xml"])
      .replace('encoding="UTF-8"', 'encoding="UTF-16"');
    const wide = new Uint8Array(2 + 2 * text.length);
    wide.set([0xff, 0xfe]);
    [...text].forEach((sign, at) => (wide[2 + 2 * at] = sign.charCodeAt(0)));
    const bytes = zipSync({ ...files, "book/page-0.xml": wide });
    expect(save(bytes, (workbook) => workbook.setCell("S", 0, 0, 2))).toMatchObject({
      ok: false,
      fault: { code: "other-encoding", message: expect.stringContaining("book/page-0.xml") },
    });
  });
});
