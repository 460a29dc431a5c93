import { SaxesParser } from "saxes";
import { describe, expect, it } from "vitest";
import type { Handout } from "../../../src/domain/drill/handout";
import {
  formatHandoutHtml,
  formatHandoutPage,
  formatHandoutText,
} from "../../../src/domain/drill/handout-table";
import { handoutOf, wordsOf } from "./handouts";

const ENTRIES = [...wordsOf("egg"), { kind: "sentence", text: "an egg is in it" }] as const;

const linesOf = (handout: Handout): string[][] =>
  formatHandoutText(handout)
    .split("\n")
    .map((line) => line.split("\t"));

describe("a handout as plain text for the clipboard", () => {
  it.each([
    [
      "beside",
      [
        ["Print", "Braille"],
        ["egg", "⠑⠛⠛"],
        ["an egg is in it", "⠁⠝⠀⠑⠛⠛⠀⠊⠎⠀⠊⠝⠀⠊⠞"],
      ],
    ],
    [
      "beneath",
      [["Braille with its print beneath"], ["⠑⠛⠛"], ["egg"], ["⠁⠝⠀⠑⠛⠛⠀⠊⠎⠀⠊⠝⠀⠊⠞"], ["an egg is in it"]],
    ],
    ["none", [["Braille"], ["⠑⠛⠛"], ["⠁⠝⠀⠑⠛⠛⠀⠊⠎⠀⠊⠝⠀⠊⠞"]]],
  ] as const)("with the print %s", (print, rows) => {
    const handout = handoutOf(ENTRIES, { print, cellsPerLine: 10 }, { date: "25 Nov 2026" });
    expect(linesOf(handout)).toEqual([
      ["Heron"],
      ["25 Nov 2026"],
      ...rows,
      ["Machine translated, not proofread."],
    ]);
  });

  it.each([
    ["=1+1", "'=1+1"],
    ["+1", "'+1"],
    ["-ing", "'-ing"],
    ["@heron", "'@heron"],
    ["＝1", "'＝1"],
    ["a=1", "a=1"],
    ['"Go!" said Heron', '"""Go!"" said Heron"'],
  ])("keeps %s text: %s", (text, cell) => {
    expect(linesOf(handoutOf(wordsOf(text)))[2]?.[0]).toBe(cell);
  });

  it("guards the title too, and lets no tab or line break of a text make another cell", () => {
    expect(linesOf(handoutOf(wordsOf("a\tb\nc"), {}, { title: "=A1" }))).toEqual([
      ["'=A1"],
      ["Print", "Braille"],
      ["a b c", "⠁⠀⠃⠀⠉"],
      ["Machine translated, not proofread."],
    ]);
  });
});

/** Fails where the fragment is not well formed; void elements are closed first. */
const checkWellFormed = (html: string): void => {
  const parser = new SaxesParser();
  parser.on("error", (error) => {
    throw error;
  });
  parser.write(`<r>${html.replaceAll("<br>", "<br/>")}</r>`).close();
};

describe("a handout as HTML for the clipboard", () => {
  it.each(["beside", "beneath", "none"] as const)("is a table with a header row, print %s", (print) => {
    const html = formatHandoutHtml(handoutOf(ENTRIES, { print, cellsPerLine: 10 }), false);
    checkWellFormed(html);
    expect(html.match(/<th scope="col">/g)).toHaveLength(print === "beside" ? 2 : 1);
    expect(html.match(/<tr>/g)).toHaveLength(3);
    expect(html).toContain("⠀⠀⠁⠝⠀⠑⠛⠛");
    expect(html).toMatch(/Machine translated, not proofread\.<\/font><\/p>$/);
    expect(html.includes(">an egg<")).toBe(print === "beneath");
    expect(html.includes(">egg<")).toBe(print !== "none");
  });

  it("names the fonts of the braille, without a style or script", () => {
    const html = formatHandoutHtml(handoutOf(ENTRIES), false);
    expect(html).toContain(
      '<font face="Noto Sans Symbols 2, Segoe UI Symbol, Apple Braille, DejaVu Sans" size="5">⠑⠛⠛',
    );
    expect(html).not.toMatch(/style|script/);
  });

  it("is larger in large print: 18 points, size 5 of HTML", () => {
    expect(formatHandoutHtml(handoutOf(ENTRIES), true)).toContain('<font size="5">egg</font>');
  });

  it("escapes, and keeps what looks like a formula text", () => {
    const html = formatHandoutHtml(handoutOf(wordsOf('=HYPERLINK("x")', "<script>alert(1)</script>")), false);
    checkWellFormed(html);
    expect(html).toContain(">'=HYPERLINK(&quot;x&quot;)<");
    expect(html).toContain("&lt;script&gt;alert(1)&lt;/script&gt;");
  });

  it("can be a file of its own, whose title says nothing of a pupil", () => {
    const page = formatHandoutPage(handoutOf(ENTRIES), false);
    expect(page).toMatch(/^<!DOCTYPE html>\n<html lang="en">/);
    expect(page).toContain("<title>Handout</title>");
    expect(page).toContain("<h1>Heron</h1>");
  });
});
