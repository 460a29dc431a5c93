import { beforeAll, describe, expect, it } from "vitest";
import { cellerrors, writing } from "../../functions/functions";
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
const column = (...cells: unknown[]): unknown[][] => cells.map((cell) => [cell]);
const error = (code: string, message: RegExp): unknown => ({
  code,
  message: expect.stringMatching(message) as string,
});

/** Counts and shares by hand: c 14, a 1, t 2345, o 135, the 2346, ch 16, st 34. */
describe("WRITING", () => {
  it.each([
    ["cat", "⠉⠁⠞", [3, 3, 0, 0, 0, 1, 1]],
    ["cat", "14-1-2345", [3, 3, 0, 0, 0, 1, 1]],
    ["cat", "cat", [3, 3, 0, 0, 0, 1, 1]],
    ["cat", "cot", [3, 2, 1, 0, 0, 2 / 3, 7 / 9]],
    ["cat", "ct", [3, 2, 0, 1, 0, 2 / 3, 6 / 7]],
    ["cat", "caat", [3, 3, 0, 0, 1, 1, 7 / 8]],
    ["the cat", "! cat", [5, 5, 0, 0, 0, 1, 1]],
    ["the cat", "the cat", [5, 4, 1, 0, 2, 0.8, expect.any(Number) as number]],
    ["⠡⠁⠞", "/at", [3, 2, 1, 0, 0, 2 / 3, 5 / 9]],
    ["cat", " ", [3, 0, 0, 3, 0, 0, 0]],
  ])("%s written %s", (expected, written, row) => {
    const [given] = writing(one(expected), one(written));
    expect(given?.slice(0, 5)).toEqual(row.slice(0, 5));
    expect(given?.[5]).toBeCloseTo(row[5] as number, 12);
    if (typeof row[6] === "number") expect(given?.[6]).toBeCloseTo(row[6], 12);
  });

  it("compares ranges of as many cells item by item, leaving out items that are blank on either side", () => {
    expect(writing(column("cat", "dog", null, "hen"), column("cat", null, "x", "h5"))).toEqual([
      [5, 5, 0, 0, 0, 1, 1],
    ]);
  });

  it("compares other ranges as one text, a blank between", () => {
    expect(writing(column("a cat", "sat"), one("a cat sat"))).toEqual([[9, 9, 0, 0, 0, 1, 1]]);
  });

  it("reads a number cell as dots", () => {
    expect(writing(one("h"), one(125), "uncontracted")).toEqual([[1, 1, 0, 0, 0, 1, 1]]);
  });

  it("takes signs from the inventory where the code is signs", () => {
    expect(writing(one("ea, ch, ing"), one("⠂ ⠡ ⠬"), "signs")).toEqual([[3, 3, 0, 0, 0, 1, 1]]);
    expect(writing(column("ea", "ch", "full stop"), column("2", "16", "256"), "Signs")).toEqual([
      [3, 3, 0, 0, 0, 1, 1],
    ]);
    expect(writing(one("ch"), one("⠡"), "contracted")[0]?.[1]).toBe(0);
  });

  it.each([
    ["nothing noted", one("the cat"), one(""), undefined, ""],
    ["an empty cell that the host hands over as null", one("the cat"), null as never, undefined, ""],
    ["no text", one(""), one("cat"), undefined, error("#N/A", /nothing to compare/)],
    ["a text without cells", one("  "), one("cat"), undefined, error("#N/A", /nothing to compare/)],
    ["writing that is no braille", one("cat"), one("cät"), undefined, error("#VALUE!", /ASCII braille/)],
    ["dots that are none", one("cat"), one("19-1"), undefined, error("#VALUE!", /is not a cell/)],
    ["a character without braille", one("😀"), one("cat"), undefined, error("#VALUE!", /U\+1F600/)],
    ["what is no sign", one("ch, qz"), one("*"), "signs", error("#VALUE!", /“qz” is not a sign/)],
    ["an unknown code", one("cat"), one("cat"), "klingon", error("#VALUE!", /klingon/)],
    ["an error cell", one("cat"), one(NA), undefined, NA],
    ["an error among the items", column("cat", NA), column("cat", "dog"), "signs", NA],
  ])("of %s", async (_what, expected, written, code, answer) => {
    expect(await answerOfCall(() => writing(expected, written, code))).toEqual([[answer]]);
  });
});

describe("CELLERRORS", () => {
  it("gives rows of position, cells, dots and kind", () => {
    expect(cellerrors(one("The bread is dim"), one("! bred is fixx"))).toEqual([
      [1, "⠠", "", "6", "", "indicator missing"],
      [6, "⠂", "⠑", "2", "15", "one cell for another"],
      [12, "⠙", "⠋", "145", "124", "reversal"],
      [13, "", "⠭", "", "1346", "cell added"],
      [14, "⠍", "⠭", "134", "1346", "added dot"],
    ]);
  });

  it("names what happened", () => {
    const kinds = (expected: string, written: string, code?: string): unknown =>
      cellerrors(one(expected), one(written), code).map((row) => row[5]);
    expect(kinds("b", "a", "signs")).toEqual(["missed dot"]);
    expect(kinds("a", "b", "signs")).toEqual(["added dot"]);
    expect(kinds("d", "f", "signs")).toEqual(["reversal"]);
    expect(kinds("m", "u", "signs")).toEqual(["inversion"]);
    expect(kinds("b", "⠆", "signs")).toEqual(["one row lower"]);
    expect(kinds("⠢", "e")).toEqual(["one row higher"]);
    expect(kinds("d", "j", "signs")).toEqual(["one cell for another"]);
    expect(kinds("cat", "ct")).toEqual(["cell left out"]);
    expect(kinds("cat", "catt")).toEqual(["cell added"]);
    expect(kinds("the", "the")).toEqual(["contraction not used"]);
    expect(kinds("the", "!", "uncontracted")).toEqual(["contraction wrongly used"]);
    expect(kinds("Tom", "tom")).toEqual(["indicator missing"]);
  });

  it("counts positions over all items", () => {
    expect(cellerrors(column("cat", "dog"), column("cat", "fog"))).toEqual([
      [4, "⠙", "⠋", "145", "124", "reversal"],
    ]);
    expect(cellerrors(one("ch, sh, th"), one("* % %"), "signs")).toEqual([
      [3, "⠹", "⠩", "1456", "146", "missed dot"],
    ]);
  });

  it.each([
    ["no error", one("cat"), one("cat"), error("#N/A", /no errors/)],
    ["nothing noted", one("cat"), one(null), ""],
    ["no text", one(null), one("cat"), error("#N/A", /nothing to compare/)],
    ["an error cell", one(NA), one("cat"), NA],
  ])("of %s", async (_what, expected, written, answer) => {
    expect(await answerOfCall(() => cellerrors(expected, written))).toEqual([[answer]]);
  });
});
