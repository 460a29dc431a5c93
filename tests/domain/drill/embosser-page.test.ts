import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { formatBrf } from "../../../src/domain/drill/brf";
import { formatPageNumber, layOutPages } from "../../../src/domain/drill/embosser-page";
import {
  makeHandout,
  USUAL_HANDOUT,
  type Handout,
  type HandoutOptions,
} from "../../../src/domain/drill/handout";
import type { HandoutEntry } from "../../../src/domain/drill/handout-draft";
import { refuseUntranslatable } from "../../../src/ports/refused-text";
import { handoutOf, wordsOf } from "./handouts";

/** Rows of each page, empty ones as "". */
const pagesOf = (handout: Handout): string[][] =>
  layOutPages(handout).map(({ rows }) => rows.map(({ cells }) => cells));

const brfOf = (handout: Handout): string => {
  const brf = formatBrf(layOutPages(handout));
  if (!brf.ok) throw new Error(brf.fault.message);
  return brf.value;
};

describe("pages of braille", () => {
  it("have title, items, note and, at the right of the last line, the page's number", () => {
    const narrow = { cellsPerLine: 18, linesPerPage: 9 };
    expect(pagesOf(handoutOf(wordsOf("egg", "nest"), narrow))).toEqual([
      [
        "⠀⠀⠀⠀⠀⠀⠓⠑⠗⠕⠝",
        "",
        "⠑⠛⠛",
        "⠝⠑⠎⠞",
        "",
        "⠍⠁⠉⠓⠊⠝⠑",
        "⠞⠗⠁⠝⠎⠇⠁⠞⠑⠙⠿⠀⠝⠕⠞",
        "⠏⠗⠕⠕⠋⠗⠑⠁⠙⠿",
        "⠀⠀⠀⠀⠀⠀⠀⠀⠀⠀⠀⠀⠀⠀⠀⠀⠼⠁",
      ],
    ]);
  });

  it("move a sentence whole to the next page, and let a passage run on", () => {
    const size = { cellsPerLine: 10, linesPerPage: 6 };
    const text = "aa aa aa aa aa aa";
    expect(
      pagesOf(
        handoutOf(
          [
            { kind: "word", text: "b" },
            { kind: "sentence", text },
          ],
          size,
        ),
      )[1]?.[0],
    ).toBe("⠀⠀⠁⠁⠀⠁⠁⠀⠁⠁");
    const [first] = pagesOf(
      handoutOf(
        [
          { kind: "word", text: "b" },
          { kind: "passage", text },
        ],
        size,
      ),
    );
    expect(first?.slice(2, 5)).toEqual(["⠃", "", "⠀⠀⠁⠁⠀⠁⠁⠀⠁⠁"]);
  });

  it("leave an empty line after each in double spacing", () => {
    const handout = handoutOf(wordsOf("a", "b", "c"), { lineSpacing: 2, linesPerPage: 7 });
    expect(pagesOf(handout)[0]?.slice(0, 6)).toEqual([expect.stringMatching(/⠓⠑⠗⠕⠝$/), "", "⠁", "", "⠃", ""]);
    expect(pagesOf(handout)[1]?.[0]).toBe("⠉");
  });

  it.each([
    [1, "⠼⠁"],
    [10, "⠼⠁⠚"],
    [269, "⠼⠃⠋⠊"],
  ])("number %d is %s (UEB 2013, section 6.1)", (number, cells) => {
    expect(formatPageNumber(number)).toBe(cells);
  });

  it("never have a row too long, a row too many, or anything lost", () => {
    const entry = fc.record({
      kind: fc.constantFrom("word", "sentence", "passage"),
      text: fc.string({ unit: fc.constantFrom("a", "b", "c", " ", "\n"), maxLength: 90 }),
    });
    const size = fc.record({
      cellsPerLine: fc.integer({ min: 8, max: 42 }),
      linesPerPage: fc.integer({ min: 4, max: 30 }),
      lineSpacing: fc.constantFrom(1, 2),
    });
    fc.assert(
      fc.property(fc.array(entry, { minLength: 1, maxLength: 8 }), size, (entries, chosen) => {
        fc.pre(entries.some(({ text }) => text.trim() !== ""));
        const handout = handoutOf(entries as HandoutEntry[], chosen as Partial<HandoutOptions>);
        const pages = layOutPages(handout);
        const bodies: string[] = [];
        for (const [index, { number, rows }] of pages.entries()) {
          expect(number).toBe(index + 1);
          expect(rows).toHaveLength(chosen.linesPerPage);
          for (const { cells } of rows) expect(cells.length).toBeLessThanOrEqual(chosen.cellsPerLine);
          expect(rows.at(-1)?.cells).toBe(formatPageNumber(number).padStart(chosen.cellsPerLine, "⠀"));
          expect(rows.slice(0, -1).some(({ cells }) => cells !== "")).toBe(true);
          bodies.push(...rows.slice(0, -1).map(({ cells }) => cells));
        }
        const texts = [handout.title, ...handout.items, handout.notice];
        const expected = texts.flatMap(({ lines }) => lines.map(({ cells }) => cells));
        expect(bodies.filter((cells) => cells !== "")).toEqual(expected.filter((cells) => cells !== ""));
        for (const line of brfOf(handout).split(/\r\n|\f/))
          expect(line.length).toBeLessThanOrEqual(chosen.cellsPerLine);
      }),
      { numRuns: 200 },
    );
  });
});

describe("a braille file", () => {
  it("is the ASCII braille that another program writes, in pages", async () => {
    const contracted = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("contracted");
    const transcribe = refuseUntranslatable((text) => contracted.transcribe(text));
    const entries: HandoutEntry[] = [
      ...wordsOf("children", "knowledge"),
      { kind: "sentence", text: "The chick can eat much." },
      { kind: "signs", text: "⠡⠀⠩" },
    ];
    const made = makeHandout(
      { title: "Words with ch", date: "", entries },
      { ...USUAL_HANDOUT, linesPerPage: 12 },
      transcribe,
    );
    if (!made.ok) throw new Error(made.fault.message);
    // The texts by lou_translate 3.24 (en-us-brf.dis, en-ueb-g2.ctb); # = number sign, * = ch, % = sh.
    const rows = [
      ",^WS ) CH".padStart(24),
      "",
      "*N",
      "K",
      "",
      "  ,! *ICK C EAT M*4",
      "",
      "* %",
      "",
      ",MA*9E TRANSLAT$1 N PRO(R1D4",
      "",
      "#A".padStart(40),
    ];
    expect(brfOf(made.value)).toBe(`${rows.join("\r\n")}\r\n\f`);
  });

  it("ends every page with a form feed and every line with CR LF, and is ASCII", () => {
    const brf = brfOf(handoutOf(wordsOf(..."abcdefghij"), { linesPerPage: 5 }));
    const pages = brf.split("\f");
    expect(pages.pop()).toBe("");
    for (const page of pages) expect(page.split("\r\n")).toHaveLength(6);
    expect(brf).toMatch(/^[\u0020-\u005f\r\n\f]+$/);
  });

  it("refuses cells with dots 7 or 8, which it cannot write", () => {
    const refused = formatBrf(layOutPages(handoutOf([{ kind: "signs", text: "⣿" }])));
    expect(refused.ok ? undefined : refused.fault.code).toBe("eight-dots");
  });
});
