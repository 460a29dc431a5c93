import { beforeAll, describe, expect, it } from "vitest";
import { cells, miscues, reading } from "../../functions/functions";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../src/adapters/liblouis/node-engine";
import { answerOfCall, standInForCustomFunctions } from "./cell-error-stand-in";

beforeAll(async () => {
  standInForCustomFunctions();
  const translators = nodeTranslatorLibrary(PACKAGE_LAYOUT);
  await translators.translator("contracted");
  await translators.translator("uncontracted");
  globalThis.cellwrightFunctionHost = { translators };
});

const NA = { error: "#N/A" };
const one = (cell: unknown): unknown[][] => [[cell]];
const error = (code: string, message: RegExp): unknown => ({
  code,
  message: expect.stringMatching(message) as string,
});

/** Counts by the rules of the US Department of Education's slides (archived); sentences are our own. */
describe("READING", () => {
  it.each([
    ["The otter swam home", "the otter swam home", [4, 4, 0, 0, 0, 0, 1, "", ""]],
    ["The otter swam home", "the utter swam", [4, 2, 1, 1, 0, 0, 0.5, "", ""]],
    ["Otters swim quickly", "Otters quickly swim", [3, 1, 0, 0, 2, 0, 1 / 3, "", ""]],
    ["The red hen", "The big red the red hen", [3, 3, 0, 0, 0, 3, 1, "", ""]],
    ["The barn is cold", "The barn is could (sc) cold", [4, 4, 0, 0, 0, 0, 1, "", ""]],
    ["They found an otter", "They found an (told)", [4, 3, 0, 1, 0, 0, 0.75, "", ""]],
    ["the cat sat on the mat", "the cat sit ]", [3, 2, 1, 0, 0, 0, 2 / 3, "", ""]],
    ["The red hen", "-", [3, 0, 0, 3, 0, 0, 0, "", ""]],
  ])("%s | %s", (expected, heard, row) => {
    expect(reading(one(expected), one(heard))).toEqual([row]);
  });

  it("gives words correct and cells a minute in the pupil's code", () => {
    const text = "The children read about the otter";
    const [row] = reading(one(text), one("the children read about an otter"), 30);
    expect(row?.slice(0, 2)).toEqual([6, 5]);
    expect(row?.[7]).toBe(10);
    // The rate times the mean cells of a word: CELLS gives 27 in 6 words.
    const [[count]] = cells(one(text)) as [[number]];
    expect(row?.[8]).toBeCloseTo((10 * count) / 6, 12);
    const [spelled] = reading(one(text), one("the children read about an otter"), 30, "uncontracted");
    const [[longer]] = cells(one(text), "uncontracted") as [[number]];
    expect(spelled?.[8]).toBeCloseTo((10 * longer) / 6, 12);
    expect(longer).toBeGreaterThan(count);
  });

  it("counts the cells of the text attempted only", () => {
    const [row] = reading(one("a cat children people knowledge"), one("a cat ]"), 60);
    expect(row?.slice(7)).toEqual([2, 5]);
  });

  it("pools a range, and prorates a probe finished early (95 words, 3 errors, 52 s: 106.15)", () => {
    const words = Array.from({ length: 95 }, (_, index) => (index % 2 === 0 ? "otter" : "heron"));
    const heard = words.map((word, index) => (index % 40 === 7 ? "boat" : word));
    const range = [[words.slice(0, 50).join(" ")], [words.slice(50).join(" ")], [null]];
    const [row] = reading(range, one(heard.join(" ")), 52);
    expect(row?.[0]).toBe(95);
    expect(row?.[1]).toBe(92);
    expect(row?.[7]).toBeCloseTo(106.15384615384616, 10);
  });

  it.each([
    ["nothing noted", one("the cat"), one(""), 60, ""],
    ["an empty cell that the host hands over as null", one("the cat"), null as never, null, ""],
    ["no text", one(""), one("the cat"), 60, error("#N/A", /no words/)],
    ["a text without words", one("— ?"), one("the cat"), 60, error("#N/A", /no words/)],
    ["seconds 0", one("the cat"), one("the cat"), 0, error("#NUM!", /more than 0/)],
    ["a clock time", one("the cat"), one("the cat"), 0.5 / 1440, error("#NUM!", /clock time/)],
    [
      "text for seconds",
      one("the cat"),
      one("the cat"),
      "soon",
      error("#VALUE!", /seconds is to be a number/),
    ],
    ["an error cell", one("the cat"), one(NA), 60, NA],
    ["an error for seconds", one("the cat"), one("the cat"), NA, NA],
    ["a character without braille", one("the 😀 cat"), one("the cat"), 60, error("#VALUE!", /U\+1F600/)],
  ])("of %s", async (_what, expected, heard, seconds, answer) => {
    expect(await answerOfCall(() => reading(expected, heard, seconds))).toEqual([[answer]]);
  });

  it("of an unknown code is #VALUE!", async () => {
    expect(await answerOfCall(() => reading(one("a"), one("a"), 60, "klingon"))).toEqual([
      [error("#VALUE!", /klingon/)],
    ]);
  });

  it("has no accuracy where nothing was attempted", async () => {
    expect(await answerOfCall(() => reading(one("the cat"), one("]"), 60))).toEqual([
      [0, 0, 0, 0, 0, 0, error("#N/A", /No words were attempted/), 0, 0],
    ]);
  });

  it("of a response in another alphabet has no word right", () => {
    expect(reading(one("the cat"), one("кот сидел"))).toEqual([[2, 0, 2, 0, 0, 0, 0, "", ""]]);
  });
});

describe("MISCUES", () => {
  it("gives rows of position, expected, heard, kind and signs", () => {
    expect(
      miscues(
        one("The teacher and her children saw Tom, the otter."),
        one("The the preacher (told) and her big chilled (sc) children was the Tom utter"),
      ),
    ).toEqual([
      [1, "", "the", "repeated", ""],
      [2, "teacher", "preacher", "told", "t, ea, ch, er"],
      [4, "", "big", "added", ""],
      [5, "children", "chilled", "self-corrected", "children"],
      [6, "saw", "was", "misread", "s, a, w"],
      [7, "Tom,", "the", "swapped", "capital, t, o, m"],
      [8, "the", "Tom", "swapped", "the"],
      [9, "otter.", "utter", "misread", "o, t, er"],
    ]);
  });

  it("tells signs where the word stands: parts of a hyphenated word, letters in uncontracted", () => {
    expect(miscues(one("mother-in-law"), one("brother in"))).toEqual([
      [1, "mother", "brother", "misread", "mother"],
      [3, "law", "", "left out", "l, a, w"],
    ]);
    expect(miscues(one("the end"), one("the and"), "uncontracted")).toEqual([
      [2, "end", "and", "misread", "e, n, d"],
    ]);
  });

  it.each([
    ["no miscue", one("the cat"), one("the cat"), undefined, error("#N/A", /no miscues/)],
    ["nothing noted", one("the cat"), one(null), undefined, ""],
    ["no text", one(null), one("the cat"), undefined, error("#N/A", /no words/)],
    ["another code", one("the cat"), one("the"), "de-g2.ctb", error("#VALUE!", /Unified English Braille/)],
    ["an error cell", one(NA), one("the"), undefined, NA],
    ["a character without braille", one("the 😀 cat"), one("the"), undefined, error("#VALUE!", /U\+1F600/)],
  ])("of %s", async (_what, expected, heard, code, answer) => {
    expect(await answerOfCall(() => miscues(expected, heard, code))).toEqual([[answer]]);
  });
});
