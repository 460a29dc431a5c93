import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { findUntaught, trimWord } from "../../../src/domain/contraction/untaught";
import { taughtSigns } from "./word-tables";

const library = nodeTranslatorLibrary(PACKAGE_LAYOUT);
const codes = {
  contracted: await library.translator("contracted"),
  uncontracted: await library.translator("uncontracted"),
};

const untaught = (text: string, taught: string[], code: keyof typeof codes = "contracted"): unknown[] =>
  findUntaught(codes[code].transcribe(text), taughtSigns(...taught)).map(({ sign, times, word }) => [
    sign.name,
    times,
    word,
  ]);

describe("untaught signs", () => {
  it("are told most used first, then in the order of the inventory, with the first word that has each", () => {
    // t(ea)(ch)(er), (and), o(the)rs, t(ea)(ch)
    expect(untaught("“The teacher,” and the others: teach!", ["the"])).toEqual([
      ["ch", 2, "teacher"],
      ["ea", 2, "teacher"],
      ["and", 1, "and"],
      ["er", 1, "teacher"],
    ]);
  });

  it.each<[string, string[], keyof typeof codes, unknown[]]>([
    ["in the inn", ["in wordsign", "the"], "contracted", [["in groupsign", 1, "inn"]]],
    [
      "a cat – a dog",
      ["a", "c", "t"],
      "contracted",
      [
        ["d", 1, "dog"],
        ["g", 1, "dog"],
        ["o", 1, "dog"],
      ],
    ],
    ["go, now", ["go", "ow", "full stop"], "contracted", [["comma", 1, "go,"]]],
    ["Tom has 12", ["capital"], "contracted", [["number sign", 1, "12"]]],
    ["the", ["t", "h"], "uncontracted", [["e", 1, "the"]]],
    ["the", ["the"], "uncontracted", []],
    ["", [], "contracted", []],
  ])("of %j with %j in %s", (text, taught, code, expected) => {
    expect(untaught(text, taught, code)).toEqual(expected);
  });
});

describe("a word without the punctuation around it", () => {
  it.each([
    ["“Stop!”", "Stop"],
    ["can't", "can't"],
    ["(a)", "a"],
    ["…", "…"],
    ["É!", "É"],
    ["mother-in-law.", "mother-in-law"],
  ])("%s is %s", (token, word) => {
    expect(trimWord(token)).toBe(word);
  });
});
