import { beforeAll, describe, expect, it } from "vitest";
import { contractions, coverage } from "../../functions/functions";
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

describe("CONTRACTIONS", () => {
  it("gives rows of sign, dots, kind, section and times, most used first, then in inventory order", () => {
    expect(contractions(one("In the inn, the teacher and the child"))).toEqual([
      ["the", "2346", "strong-contraction", "10.3", 3],
      ["child", "16", "strong-wordsign", "10.2", 1],
      ["and", "12346", "strong-contraction", "10.3", 1],
      ["ch", "16", "strong-groupsign", "10.4", 1],
      ["er", "12456", "strong-groupsign", "10.4", 1],
      ["in wordsign", "35", "lower-wordsign", "10.5", 1],
      ["ea", "2", "lower-groupsign", "10.6.5-10.6.7", 1],
      ["in groupsign", "35", "lower-groupsign", "10.6.8-10.6.10", 1],
    ]);
  });

  it("pools a range", () => {
    expect(
      contractions([
        ["the", null],
        ["the", "upon"],
      ]),
    ).toEqual([
      ["the", "2346", "strong-contraction", "10.3", 2],
      ["upon", "45-136", "initial-letter-contraction", "10.7", 1],
    ]);
  });

  it("reads the teacher's own braille", () => {
    expect(contractions(one("Andy and"), [["Andy", "⠠⠁⠝⠙⠽"]])).toEqual([
      ["and", "12346", "strong-contraction", "10.3", 1],
    ]);
  });

  it.each([
    ["a text without contractions", one("a cat sat"), error("#N/A", /no contractions/)],
    ["a text without letters", one("3 – 4"), error("#N/A", /no contractions/)],
    ["a blank", [[null, ""]], ""],
    ["an empty cell that the host hands over as null", null as never, ""],
    ["an error cell", [["the", NA]], NA],
    ["a character without braille", one("the 😀"), error("#VALUE!", /U\+1F600/)],
  ])("of %s", async (_what, text, expected) => {
    expect(await answerOfCall(() => contractions(text))).toEqual(one(expected));
  });
});

describe("COVERAGE", () => {
  const TAUGHT = [["the"], ["in"], [null], ["the"]];

  it("maps cell by cell, blanks and errors in their own place", () => {
    expect(
      coverage(
        [
          ["the cat sat in the shed", null],
          [NA, "the child"],
        ],
        TAUGHT,
      ),
    ).toEqual([
      [5 / 6, ""],
      [NA, 1 / 2],
    ]);
  });

  it.each([
    ["words", "contracted", 5 / 6],
    [null, null, 5 / 6],
    ["Signs", "contracted", 3 / 5],
    ["distinct", "contracted", 2 / 4],
    ["words", "uncontracted", 1],
    ["distinct", "uncontracted", 1],
  ])("by %s in %s", (measure, code, share) => {
    expect(coverage(one("the cat sat in the shed"), TAUGHT, measure as string, code as string)).toEqual(
      one(share),
    );
  });

  it.each([
    ["no words", one("– …"), TAUGHT, undefined, undefined, error("#N/A", /no words/)],
    ["no contractions to count", one("a cat"), TAUGHT, "signs", undefined, error("#N/A", /measure "words"/)],
    ["an unknown measure", one("the"), TAUGHT, "letters", undefined, error("#VALUE!", /“letters”.*"words"/)],
    [
      "an unknown sign",
      one("the"),
      [["the"], ["qx"]],
      undefined,
      undefined,
      error("#VALUE!", /“qx” is not a sign/),
    ],
    ["another code", one("the"), TAUGHT, undefined, "fr-bfu-comp6.utb", error("#VALUE!", /Unified English/)],
    ["an error in the list", one("the"), one(NA), undefined, undefined, NA],
  ])("of %s", async (_what, text, taught, measure, code, expected) => {
    expect(await answerOfCall(() => coverage(text, taught, measure, code))).toEqual(one(expected));
  });

  it("takes the teacher's own braille for a word", () => {
    expect(coverage(one("the shed"), one("the"))).toEqual(one(1 / 2));
    expect(coverage(one("the shed"), one("the"), undefined, undefined, [["shed", "⠎⠓⠑⠙"]])).toEqual(one(1));
  });
});
