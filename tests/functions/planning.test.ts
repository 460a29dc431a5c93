import { beforeAll, describe, expect, it } from "vitest";
import { bracket, next, signs, untaught } from "../../functions/functions";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../src/adapters/liblouis/node-engine";
import { IndexedWordBank } from "../../src/adapters/word-bank/indexed-word-bank";
import { buildSmallBank } from "../adapters/word-bank/small-bank";
import { answerOfCall, standInForCustomFunctions } from "./cell-error-stand-in";

const translators = nodeTranslatorLibrary(PACKAGE_LAYOUT);

beforeAll(async () => {
  standInForCustomFunctions();
  await translators.translator("contracted");
  await translators.translator("uncontracted");
  const { bytes } = await buildSmallBank({ the: 600, she: 200, cat: 100, there: 60, dog: 40 });
  const bank = new IndexedWordBank(bytes);
  globalThis.cellwrightFunctionHost = {
    translators,
    wordBank: { load: () => Promise.resolve(bank), loaded: () => bank },
  };
});

const NA = { error: "#N/A" };
const one = (cell: unknown): unknown[][] => [[cell]];
const error = (code: string, message: RegExp): unknown => ({
  code,
  message: expect.stringMatching(message) as string,
});

describe("BRACKET", () => {
  it("maps cell by cell, blanks and errors in their own place", () => {
    expect(
      bracket([
        ["teach", null],
        [NA, "Mother can’t!"],
        ["", "a cat"],
      ]),
    ).toEqual([
      ["t(ea)(ch)", ""],
      [NA, "(Mother) (can)’t!"],
      ["", "a cat"],
    ]);
  });

  it.each([
    ["the teacher's own braille", one("Andy and"), [["Andy", "⠠⠁⠝⠙⠽"]], "Andy (and)"],
    ["a character without braille", one("the 😀"), undefined, error("#VALUE!", /U\+1F600/)],
    ["an error in the exceptions", one("the"), one(NA), NA],
    ["a list of three columns", one("the"), [["a", "b", "c"]], error("#VALUE!", /two columns/)],
    ["an empty cell handed over as null", null as never, undefined, ""],
    ["a long text", one("the ".repeat(7000)), undefined, error("#VALUE!", /32,767/)],
  ])("of %s", async (_what, text, exceptions, expected) => {
    expect(await answerOfCall(() => bracket(text, exceptions))).toEqual(one(expected));
  });
});

describe("UNTAUGHT", () => {
  it("gives rows of sign, times used, and a word that has it, of all texts together", () => {
    expect(
      untaught(
        [
          ["The children", "and"],
          [null, "the teacher, and"],
        ],
        [["the", "ch"]],
      ),
    ).toEqual([
      ["and", 2, "and"],
      ["er", 1, "teacher"],
      ["ea", 1, "teacher"],
      ["children", 1, "children"],
    ]);
  });

  it("lists letters for an uncontracted reader, and keeps the two uses of in apart", () => {
    expect(untaught(one("the cat"), [[..."teac"]], "uncontracted")).toEqual([["h", 1, "the"]]);
    expect(untaught(one("in the inn"), [["the", "in wordsign"]])).toEqual([["in groupsign", 1, "inn"]]);
  });

  it.each([
    [
      "a text of taught signs",
      one("the"),
      one("the"),
      undefined,
      error("#N/A", /Every sign of the text is taught/),
    ],
    ["a text without letters", one("3 – 4"), one("the"), undefined, error("#N/A", /taught/)],
    ["a range of blanks", [[null, ""]], one("the"), undefined, ""],
    ["an error cell", [["the", NA]], one("the"), undefined, NA],
    ["an error in the list", one("the"), one(NA), undefined, NA],
    ["an unknown sign", one("the"), [["the", "qx"]], undefined, error("#VALUE!", /“qx” is not a sign/)],
    ["another code", one("the"), one("the"), "fr-bfu-comp6.utb", error("#VALUE!", /Unified English/)],
    ["a control character", one("the\u0007"), one("the"), undefined, error("#VALUE!", /U\+0007/)],
  ])("of %s", async (_what, text, taught, code, expected) => {
    expect(await answerOfCall(() => untaught(text, taught, code))).toEqual(one(expected));
  });
});

describe("NEXT", () => {
  it("gives rows of sign, kind, running words gained and share readable then", () => {
    expect(
      next(
        [
          ["the shed", "the shed"],
          ["and a", null],
        ],
        one("sh"),
      ),
    ).toEqual([
      ["the", "strong-contraction", 2, 3 / 6],
      ["ed", "strong-groupsign", 2, 5 / 6],
      ["and", "strong-contraction", 1, 1],
    ]);
  });

  it("gives n rows at most", () => {
    expect(next(one("the and of"), one("sh"), 2)).toHaveLength(2);
  });

  it("of a blank text ranks by the word bank, running words told of a million", () => {
    // Of 1,000 running words 340 are readable; `there` is a sign of its own.
    expect(next([[null, ""]], one("sh"), 5)).toEqual([
      ["the", "strong-contraction", 600_000, 0.94],
      ["there", "initial-letter-contraction", 60_000, 1],
    ]);
  });

  it("of a blank text takes the teacher's own braille for a word of the bank", () => {
    const rows = next(one(""), one("sh"), 5, undefined, [["there", "⠮⠗⠑"]]);
    expect(rows[0]).toEqual(["the", "strong-contraction", 660_000, 1]);
  });

  it("ranks letters for an uncontracted reader", () => {
    expect(next(one("tea set"), [[..."te"]], undefined, "uncontracted")).toEqual([
      ["a", "letter", 1, 1 / 2],
      ["s", "letter", 1, 1],
    ]);
  });

  it.each([
    ["a text of taught signs", one("the"), one("the"), 5, undefined, error("#N/A", /readable .*already/)],
    ["a text without words", one("– …"), one("the"), 5, undefined, error("#N/A", /no words/)],
    ["no rows", one("the"), one("a"), 0, undefined, error("#NUM!", /whole number from 1, not 0/)],
    ["half a row", one("the"), one("a"), 2.5, undefined, error("#NUM!", /whole number/)],
    [
      "text for a number",
      one("the"),
      one("a"),
      "five" as never,
      undefined,
      error("#VALUE!", /n is to be a number/),
    ],
    ["another code", one("the"), one("the"), 5, "de-de-comp8.ctb", error("#VALUE!", /Unified English/)],
    ["an unknown sign", one("the"), one("qx"), 5, undefined, error("#VALUE!", /“qx” is not a sign/)],
    ["an error cell", one(NA), one("the"), 5, undefined, NA],
  ])("of %s", async (_what, text, taught, n, code, expected) => {
    expect(await answerOfCall(() => next(text, taught, n, code))).toEqual(one(expected));
  });
});

describe("SIGNS", () => {
  it("gives rows of sign, cells, dots, kind and rule section", () => {
    expect(signs("lower wordsign")).toEqual([
      ["be wordsign", "⠆", "23", "lower-wordsign", "10.5"],
      ["enough", "⠢", "26", "lower-wordsign", "10.5"],
      ["were", "⠶", "2356", "lower-wordsign", "10.5"],
      ["his", "⠦", "236", "lower-wordsign", "10.5"],
      ["in wordsign", "⠔", "35", "lower-wordsign", "10.5"],
      ["was", "⠴", "356", "lower-wordsign", "10.5"],
    ]);
  });

  it.each([
    ["shortform", 75],
    ["Alphabetic-wordsigns", 23],
    ["letter", 26],
    ["digit", 10],
    ["indicator", 9],
  ])("of the kind %s are %d", (kind, count) => {
    expect(signs(kind)).toHaveLength(count);
  });

  it("without a kind are all: the 182 uses of contractions first", () => {
    const rows = signs();
    expect(rows.slice(0, 182).every(([, , , , section]) => String(section).startsWith("10."))).toBe(true);
    expect(rows[182]).toEqual(["a", "⠁", "1", "letter", "4.1"]);
    expect(signs("")).toEqual(rows);
  });

  it("of an unknown kind names the kinds", async () => {
    expect(await answerOfCall(() => signs("verbs"))).toEqual(
      one(error("#VALUE!", /“verbs” .*shortform.*letter/)),
    );
    expect(await answerOfCall(() => signs(NA))).toEqual(one(NA));
  });
});
