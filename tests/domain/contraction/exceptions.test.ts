import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import type { Transcription } from "../../../src/domain/braille/transcription";
import { parseExceptions, type Exceptions } from "../../../src/domain/contraction/exceptions";
import { findUses } from "../../../src/domain/contraction/usage";

const contracted = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("contracted");
const engine = (text: string): ReturnType<typeof contracted.transcribe> => contracted.transcribe(text);

const exceptionsOf = (rows: readonly (readonly string[])[]): Exceptions => {
  const parsed = parseExceptions(rows);
  if (!parsed.ok) throw new TypeError(parsed.fault.message);
  return parsed.value;
};
const translate = (rows: readonly (readonly string[])[], text: string): string =>
  exceptionsOf(rows).transcribe(engine, text).cells;

const US = ["US", "⠠⠠⠥⠎"];
const THEO = ["Theo", "⠠⠞⠓⠑⠕"];
const SHED = ["shed", "⠎⠓⠫"];

describe("exceptions", () => {
  it.each([
    ["Unicode braille", "⠠⠠⠥⠎"],
    ["ASCII braille", ",,us"],
    ["dot numbers", "6-6-136-234"],
  ])("take braille as %s", (_form, braille) => {
    expect(translate([["US", braille]], "the US flag")).toBe("⠮⠀⠠⠠⠥⠎⠀⠋⠇⠁⠛");
  });

  it.each([
    ["a whole word", [US], "US", "⠠⠠⠥⠎"],
    ["a word beside punctuation", [US], "(US),", "⠐⠣⠠⠠⠥⠎⠐⠜⠂"],
    ["a word between quotation marks", [US], "“US”", "⠦⠠⠠⠥⠎⠴"],
    ["the possessive", [US], "US's", "⠠⠠⠥⠎⠄⠎"],
    ["the possessive with a curly apostrophe", [THEO], "Theo’s", "⠠⠞⠓⠑⠕⠄⠎"],
    ["a word between hyphens", [SHED], "wood-shed", "⠺⠕⠕⠙⠤⠎⠓⠫"],
    ["two words", [["New Heron", "⠠⠝⠺⠀⠠⠓"]], "in New Heron today", "⠔⠀⠠⠝⠺⠀⠠⠓⠀⠞⠙"],
    ["twice in a text", [SHED], "shed, shed", "⠎⠓⠫⠂⠀⠎⠓⠫"],
    ["the later of two rows", [["US", "⠥"], US], "US", "⠠⠠⠥⠎"],
    [
      "the longer of two words",
      [
        ["New", "⠝"],
        ["New Heron", "⠝⠓"],
      ],
      "New Heron",
      "⠝⠓",
    ],
  ])("match %s", (_what, rows, text, cells) => {
    expect(translate(rows, text)).toBe(cells);
  });

  it.each([
    ["a part of a word", [SHED], "shedding"],
    ["a word beside a digit", [US], "US2"],
    ["a word with an apostrophe", [["can", "⠉⠁⠝"]], "can't"],
    ["a word with capitals in small letters", [US], "us"],
    ["a name in small letters", [THEO], "theo"],
    ["mixed capitals", [SHED], "sHed"],
    ["nothing", [], "shed"],
  ])("leave %s to the engine", (_what, rows, text) => {
    expect(translate(rows, text)).toBe(contracted.translate(text));
  });

  it.each([
    ["a small word with a first capital", [SHED], "Shed", "⠠⠎⠓⠫"],
    ["a small word in full capitals", [SHED], "SHED", "⠠⠠⠎⠓⠫"],
    ["a name in full capitals", [THEO], "THEO", "⠠⠠⠞⠓⠑⠕"],
    ["a grade 1 sign before the capital sign", [["ab", "⠰⠁⠃"]], "Ab", "⠰⠠⠁⠃"],
    ["two words in full capitals", [["red shed", "⠗⠫⠀⠎⠓⠫"]], "RED SHED", "⠠⠠⠗⠫⠀⠠⠠⠎⠓⠫"],
  ])("put the capital sign before %s", (_what, rows, text, cells) => {
    expect(translate(rows, text)).toBe(cells);
  });

  it("keep spans without gap and say where they stand", () => {
    const { cells, spans, excepted } = exceptionsOf([SHED]).transcribe(engine, "The shed’s “shed”.");
    expect(
      excepted.map(({ printStart, printEnd, cellStart, cellEnd }) => [
        printStart,
        printEnd,
        cells.slice(cellStart, cellEnd),
      ]),
    ).toEqual([
      [4, 8, "⠎⠓⠫"],
      [12, 16, "⠎⠓⠫"],
    ]);
    let [print, cell] = [0, 0];
    for (const span of spans) {
      expect([span.printStart, span.cellStart]).toEqual([print, cell]);
      [print, cell] = [span.printEnd, span.cellEnd];
    }
    expect([print, cell]).toEqual([18, cells.length]);
  });

  it("cut the text where an engine joins them with their surroundings", () => {
    const oneSpan = (print: string): Transcription => ({
      print,
      cells: print.replace(/./g, "⠿"),
      spans:
        print === "" ? [] : [{ printStart: 0, printEnd: print.length, cellStart: 0, cellEnd: print.length }],
    });
    expect(exceptionsOf([SHED]).transcribe(oneSpan, "a shed, shed")).toEqual({
      print: "a shed, shed",
      cells: "⠿⠿⠎⠓⠫⠿⠿⠎⠓⠫",
      spans: [
        { printStart: 0, printEnd: 2, cellStart: 0, cellEnd: 2 },
        { printStart: 2, printEnd: 6, cellStart: 2, cellEnd: 5 },
        { printStart: 6, printEnd: 8, cellStart: 5, cellEnd: 7 },
        { printStart: 8, printEnd: 12, cellStart: 7, cellEnd: 10 },
      ],
      excepted: [
        { printStart: 2, printEnd: 6, cellStart: 2, cellEnd: 5 },
        { printStart: 8, printEnd: 12, cellStart: 7, cellEnd: 10 },
      ],
    });
  });

  it("count for the contractions that a text uses", () => {
    const uses = findUses(exceptionsOf([SHED]).transcribe(engine, "Shed the shed"));
    expect(uses.map(({ contraction }) => contraction.name)).toEqual(["ed", "the", "ed"]);
  });

  it("skip blank rows and the header", () => {
    expect(exceptionsOf([["Word", "Braille"], ["", " "], US]).size).toBe(1);
    expect(exceptionsOf([[""]]).size).toBe(0);
  });

  it.each([
    ["three columns", [["US", "⠥", "x"]], "exceptions-shape", "two columns"],
    ["no braille", [US, ["Theo", ""]], "exception-incomplete", "Row 2"],
    ["no word", [["", "⠥"]], "exception-incomplete", "Row 1"],
    ["the number that a sheet makes of 1-2, a date", [["US", "46024"]], "exception-not-braille", "“46024”"],
    ["something else than braille", [["US", "☃"]], "exception-not-braille", "“☃” is not braille"],
  ])("refuse %s and say where", (_what, rows, code, words) => {
    const parsed = parseExceptions(rows);
    expect(parsed).toMatchObject({ ok: false, fault: { code } });
    expect(parsed.ok ? "" : parsed.fault.message).toContain(words);
  });
});
