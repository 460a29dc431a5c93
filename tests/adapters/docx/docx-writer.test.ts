import { strFromU8, unzipSync } from "fflate";
import { SaxesParser } from "saxes";
import { describe, expect, it } from "vitest";
import { docxWriter } from "../../../src/adapters/docx/docx-writer";
import type { Handout } from "../../../src/domain/drill/handout";
import type { PrintLook } from "../../../src/ports/document";
import { handoutOf, wordsOf } from "../../domain/drill/handouts";

const ENTRIES = [
  ...wordsOf("egg", "nest"),
  { kind: "sentence", text: "an egg is in the nest" },
  { kind: "passage", text: "one\ntwo" },
] as const;

/** The parts of a document as text; each must be well formed. */
const partsOf = async (handout: Handout, look: Partial<PrintLook> = {}): Promise<Record<string, string>> => {
  const bytes = await docxWriter.write(handout, { paper: "a4", largePrint: false, ...look });
  const parts = Object.fromEntries(
    Object.entries(unzipSync(bytes)).map(([name, part]) => [name, strFromU8(part)] as const),
  );
  for (const [name, part] of Object.entries(parts)) {
    if (!/\.(xml|rels)$/.test(name)) continue;
    const parser = new SaxesParser({ xmlns: true });
    parser.on("error", (error) => {
      throw new Error(`${name}: ${error.message}`);
    });
    parser.write(part).close();
  }
  return parts;
};

const documentOf = async (handout: Handout, look: Partial<PrintLook> = {}): Promise<string> =>
  (await partsOf(handout, look))["word/document.xml"] ?? "";

/** Texts of the cells of each row of the table, paragraphs parted by "\n". */
const rowsOf = (xml: string): string[][] =>
  [...xml.matchAll(/<w:tr[ >].*?<\/w:tr>/gs)].map(([row]) =>
    [...row.matchAll(/<w:tc>.*?<\/w:tc>/gs)].map(([cell]) =>
      [...cell.matchAll(/<w:p>.*?<\/w:p>/gs)]
        .map(([paragraph]) =>
          [...paragraph.matchAll(/<w:t[^>]*>(.*?)<\/w:t>/gs)].map(([, text]) => text).join(""),
        )
        .join("\n"),
    ),
  );

describe("a handout as a word-processor document", () => {
  it.each([
    [
      "beside",
      [
        ["Print", "Braille"],
        ["egg", "⠑⠛⠛"],
        ["nest", "⠝⠑⠎⠞"],
        ["an egg is in the nest", "⠀⠀⠁⠝⠀⠑⠛⠛⠀⠊⠎\n⠊⠝⠀⠞⠓⠑⠀⠝⠑⠎⠞"],
        ["one\ntwo", "⠀⠀⠕⠝⠑\n⠀⠀⠞⠺⠕"],
      ],
    ],
    [
      "beneath",
      [
        ["Braille with its print beneath"],
        ["⠑⠛⠛\negg"],
        ["⠝⠑⠎⠞\nnest"],
        ["⠀⠀⠁⠝⠀⠑⠛⠛⠀⠊⠎\nan egg is\n⠊⠝⠀⠞⠓⠑⠀⠝⠑⠎⠞\nin the nest"],
        ["⠀⠀⠕⠝⠑\none\n⠀⠀⠞⠺⠕\ntwo"],
      ],
    ],
    ["none", [["Braille"], ["⠑⠛⠛"], ["⠝⠑⠎⠞"], ["⠀⠀⠁⠝⠀⠑⠛⠛⠀⠊⠎\n⠊⠝⠀⠞⠓⠑⠀⠝⠑⠎⠞"], ["⠀⠀⠕⠝⠑\n⠀⠀⠞⠺⠕"]]],
  ] as const)("has a row an item, print %s", async (print, rows) => {
    expect(rowsOf(await documentOf(handoutOf(ENTRIES, { print, cellsPerLine: 12 })))).toEqual(rows);
  });

  it("has a real heading, the date, and a header row repeated on every page", async () => {
    const xml = await documentOf(handoutOf(ENTRIES, {}, { date: "25 Nov 2026" }));
    expect(xml).toMatch(/<w:pStyle w:val="Heading1"\/><\/w:pPr><w:r><w:t[^>]*>Heron</);
    expect(xml).toContain(">25 Nov 2026<");
    expect(xml.match(/<w:tblHeader\/>/g)).toHaveLength(1);
    expect(/<w:tr>.*?<\/w:tr>/s.exec(xml)?.[0]).toContain("<w:tblHeader/>");
  });

  it("ends with the note, which the footer has too, with page numbers", async () => {
    const parts = await partsOf(handoutOf(ENTRIES));
    const texts = [...(parts["word/document.xml"] ?? "").matchAll(/<w:t[^>]*>(.*?)<\/w:t>/g)].map(
      ([, text]) => text,
    );
    expect(texts.at(-1)).toBe("Machine translated, not proofread.");
    expect(texts.at(-2)).toMatch(
      /^The braille is set in the font Noto Sans Symbols 2\. If it shows as empty boxes/,
    );
    const footer = Object.entries(parts).find(([name]) => /word\/footer\d*\.xml/.test(name))?.[1] ?? "";
    expect(footer).toContain("Machine translated, not proofread.");
    expect(footer).toMatch(/PAGE<.*NUMPAGES</s);
  });

  it("names the font of the braille and its language, and prints 12 points or, large, 18", async () => {
    const usual = await partsOf(handoutOf(ENTRIES));
    expect(usual["word/document.xml"]).toMatch(/<w:rFonts [^>]*w:hAnsi="Noto Sans Symbols 2"/);
    expect(usual["word/document.xml"]).toContain("<w:noProof/>");
    expect(usual["word/styles.xml"]).toContain('<w:lang w:val="en-US"/>');
    expect(usual["word/styles.xml"]).toContain('<w:sz w:val="24"/>');
    const large = await partsOf(handoutOf(ENTRIES), { largePrint: true });
    expect(large["word/styles.xml"]).toContain('<w:sz w:val="36"/>');
  });

  it.each([
    ["a short line upright", wordsOf("egg"), "portrait"],
    ["a line of 40 cells lying", [{ kind: "signs", text: "⠿".repeat(40) } as const], "landscape"],
  ])("lays %s", async (_what, entries, orientation) => {
    const xml = await documentOf(handoutOf(entries));
    const [, width, height] = /<w:pgSz w:w="(\d+)" w:h="(\d+)"/.exec(xml)?.map(Number) ?? [];
    const sides = orientation === "portrait" ? [11906, 16838] : [16838, 11906];
    expect([width, height]).toEqual(sides);
  });

  it("says nothing of the handout in its properties", async () => {
    const parts = await partsOf(handoutOf(ENTRIES, {}, { title: "Heron’s words" }));
    for (const [name, part] of Object.entries(parts)) {
      if (name.startsWith("docProps/")) expect(part).not.toContain("Heron");
    }
    expect(parts["docProps/core.xml"]).toContain("<dc:title>Handout</dc:title>");
  });

  it("keeps markup and forbidden characters from breaking it", async () => {
    const xml = await documentOf(handoutOf(wordsOf("<b>&\u0001", "=1+1"), {}, { title: "a\u0000b" }));
    expect(xml).toContain("&lt;b&gt;&amp;");
    expect(rowsOf(xml)[2]?.[0]).toBe("=1+1");
  });
});
