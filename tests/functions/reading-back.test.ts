import { beforeAll, describe, expect, it } from "vitest";
import { print, slate, translate } from "../../functions/functions";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../src/adapters/liblouis/node-engine";
import { IndexedWordBank } from "../../src/adapters/word-bank/indexed-word-bank";
import { buildSmallBank } from "../adapters/word-bank/small-bank";
import { answerOfCall, standInForCustomFunctions } from "./cell-error-stand-in";

beforeAll(async () => {
  standInForCustomFunctions();
  const translators = nodeTranslatorLibrary(PACKAGE_LAYOUT);
  await translators.translator("contracted");
  await translators.translator("uncontracted");
  const { bytes } = await buildSmallBank({ which: 90, king: 50, her: 40, children: 30 });
  const bank = new IndexedWordBank(bytes);
  globalThis.cellwrightFunctionHost = {
    translators,
    wordBank: { load: () => Promise.resolve(bank), loaded: () => bank },
  };
});

const NA = { error: "#N/A" };
const one = (cell: unknown): unknown[][] => [[cell]];
const valueError = (message: RegExp): unknown =>
  one({
    code: "#VALUE!",
    message: expect.stringMatching(message) as string,
  });

describe("PRINT", () => {
  it.each([
    ["Unicode braille", "\u2821\u281d", "children"],
    ["ASCII braille", "*n", "children"],
    ["dot numbers", "16-1345", "children"],
    ["a blank cell in dot numbers", "16-1345-0-13-346", "children king"],
  ])("tells %s by what it holds", (_form, braille, text) => {
    expect(print(one(braille))).toEqual(one(text));
  });

  it("reads dots as ASCII braille where the form says so", async () => {
    expect(print(one("#AB"), undefined, "ascii")).toEqual(one("12"));
    expect(await answerOfCall(() => print(one("#AB"), undefined, "dots"))).toEqual(
      valueError(/is not a cell/),
    );
  });

  it("keeps the shape of a range, blanks and errors", () => {
    expect(
      print(
        [
          ["her", null],
          ["", NA],
        ].map((row) => row.map((cell) => (cell === "her" ? "h]" : cell))),
      ),
    ).toEqual([
      ["her", ""],
      ["", NA],
    ]);
  });

  it("refuses what is no braille, another form and another code, and says what to do", async () => {
    expect(await answerOfCall(() => print(one("caf\u00e9")))).toEqual(valueError(/not ASCII braille/));
    expect(await answerOfCall(() => print(one("a"), undefined, "morse"))).toEqual(
      valueError(/"unicode", "ascii" or "dots"/),
    );
    expect(await answerOfCall(() => print(one("a"), "fr-bfu-g2.ctb"))).toEqual(
      valueError(/Unified English Braille only/),
    );
  });

  it("reads uncontracted braille", () => {
    expect(print(translate(one("which children"), "uncontracted"), "uncontracted")).toEqual(
      one("which children"),
    );
  });
});

describe("SLATE", () => {
  it("mirrors print and braille", () => {
    expect(slate(one("bad"))).toEqual(one("\u280b\u2808\u2818"));
    expect(slate(slate(one("bad")))).toEqual(translate(one("bad")));
  });

  it("keeps the shape of a range, blanks and errors", () => {
    expect(slate([["a", null, NA]])).toEqual([["\u2808", "", NA]]);
  });
});
