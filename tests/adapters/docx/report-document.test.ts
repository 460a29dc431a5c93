import { strFromU8, unzipSync } from "fflate";
import { SaxesParser } from "saxes";
import { describe, expect, it } from "vitest";
import { docxWriter } from "../../../src/adapters/docx/docx-writer";
import type { Report } from "../../../src/domain/progress/report";
import type { DocumentPicture } from "../../../src/ports/document";

const REPORT: Report = {
  title: "Progress report: Dunlin",
  period: "7 Sep 2026 to 25 Nov 2026",
  sections: [
    { heading: "What Dunlin can do", sentences: ["Dunlin reads 42 words a minute correctly."] },
    { heading: "From the teacher", sentences: ["=1+1 <b>now</b> &\u0001\nand a second line"] },
    { heading: "Please keep in mind", sentences: ["No diagnosis."] },
  ],
};
/** One grey pixel. */
const PNG = Uint8Array.from(
  Buffer.from(
    "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==",
    "base64",
  ),
);
const picture: DocumentPicture = {
  ...{ png: PNG, width: 640, height: 400 },
  description: "Results from 7 Sep 2026, with the line to the goal.",
};

const partsOf = async (given?: DocumentPicture, paper: "a4" | "letter" = "a4") => {
  const files = unzipSync(await docxWriter.writeReport(REPORT, paper, given));
  for (const [name, part] of Object.entries(files)) {
    if (!/\.(xml|rels)$/.test(name)) continue;
    const parser = new SaxesParser({ xmlns: true });
    parser.on("error", (error) => {
      throw new Error(`${name}: ${error.message}`);
    });
    parser.write(strFromU8(part)).close();
  }
  return files;
};
const documentOf = async (given?: DocumentPicture, paper?: "a4" | "letter"): Promise<string> =>
  strFromU8((await partsOf(given, paper))["word/document.xml"] ?? new Uint8Array());
const textsOf = (xml: string): string[] =>
  [...xml.matchAll(/<w:p>.*?<\/w:p>/gs)].map(([paragraph]) =>
    [...paragraph.matchAll(/<w:t[^>]*>(.*?)<\/w:t>/gs)].map(([, text]) => text).join(""),
  );

describe("a report as a word-processor document", () => {
  it("has its title and sections under real headings, in order, texts staying texts", async () => {
    const xml = await documentOf();
    expect(textsOf(xml)).toEqual([
      "Progress report: Dunlin",
      "7 Sep 2026 to 25 Nov 2026",
      "What Dunlin can do",
      "Dunlin reads 42 words a minute correctly.",
      "From the teacher",
      "=1+1 &lt;b&gt;now&lt;/b&gt; &amp; ",
      "and a second line",
      "Please keep in mind",
      "No diagnosis.",
    ]);
    expect(xml.match(/<w:pStyle w:val="Heading1"\/>/g)).toHaveLength(1);
    expect(xml.match(/<w:pStyle w:val="Heading2"\/>/g)).toHaveLength(3);
    expect(xml).not.toContain("<w:drawing>");
  });

  it("has the picture with its description after the first section, within the text and the height left to it", async () => {
    const xml = await documentOf(picture);
    expect(xml).toContain(`descr="${picture.description}"`);
    expect(xml.indexOf("<w:drawing>")).toBeGreaterThan(xml.indexOf("Dunlin reads 42"));
    expect(xml.indexOf("<w:drawing>")).toBeLessThan(xml.indexOf("From the teacher"));
    // English Metric Units: 36,000 a millimetre (ECMA-376 part 1, 20.1.2.1).
    const [width, height] = /<wp:extent cx="(\d+)" cy="(\d+)"/.exec(xml)?.slice(1).map(Number) ?? [];
    expect((width ?? 0) / 36_000).toBeCloseTo(120, 0);
    expect((height ?? 0) / 36_000).toBeCloseTo(75, 0);
  });

  it.each([
    ["a4", [11906, 16838]],
    ["letter", [12240, 15840]],
  ] as const)("is laid out for %s", async (paper, sides) => {
    const [, width, height] =
      /<w:pgSz w:w="(\d+)" w:h="(\d+)"/.exec(await documentOf(undefined, paper)) ?? [];
    expect([Number(width), Number(height)]).toEqual(sides);
  });

  it("says nothing of the pupil in its properties", async () => {
    const files = await partsOf(picture);
    for (const [name, part] of Object.entries(files))
      if (name.startsWith("docProps/")) expect(strFromU8(part)).not.toContain("Dunlin");
  });
});
