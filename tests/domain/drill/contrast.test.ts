import { describe, expect, it } from "vitest";
import { findDotContrasts, findSignContrasts } from "../../../src/domain/drill/contrast";
import { signNamed, tableOf } from "../contraction/word-tables";

const TABLE = tableOf([
  ["chip", 50, "ch i p"],
  ["ship", 90, "sh i p"],
  ["chop", 10, "ch o p"],
  ["shop", 20, "sh o p"],
  ["chin", 80, "ch in_groupsign"],
  ["shin", 5, "sh in_groupsign"],
  ["rich", 80, "r i ch"],
  ["bit", 30, "b i t"],
  ["sit", 40, "s i t"],
  ["ait", 2, "a i t"],
  ["bet", 30, "b e t"],
]);
const all = { accepts: () => true, most: 10 };

describe("pairs of words that differ", () => {
  it("in one sign: the pair whose rarer word is commoner first", () => {
    expect(findSignContrasts(TABLE, signNamed("ch"), signNamed("sh"), all)).toEqual([
      { first: "chip", second: "ship" },
      { first: "chop", second: "shop" },
      { first: "chin", second: "shin" },
    ]);
  });

  it("only among words that may be given, and no more than wanted", () => {
    const accepts = (word: number): boolean => TABLE.word(word) !== "chip";
    expect(findSignContrasts(TABLE, signNamed("ch"), signNamed("sh"), { accepts, most: 1 })).toEqual([
      { first: "chop", second: "shop" },
    ]);
  });

  it("not at all where a sign is in no word, or is the same", () => {
    expect(findSignContrasts(TABLE, signNamed("ch"), signNamed("ing"), all)).toEqual([]);
    expect(findSignContrasts(TABLE, signNamed("ch"), signNamed("ch"), all)).toEqual([]);
  });

  it("in one dot: a (1) and b (12) by dot 2; ch (16) and sh (146), e (15) and none by dot 4", () => {
    expect(findDotContrasts(TABLE, 2, all)).toEqual([{ first: "ait", second: "bit" }]);
    expect(findDotContrasts(TABLE, 4, all)).toEqual([
      { first: "chip", second: "ship" },
      { first: "chop", second: "shop" },
      { first: "chin", second: "shin" },
    ]);
  });

  it("in no dot 7", () => {
    expect(() => findDotContrasts(TABLE, 7, all)).toThrow(RangeError);
  });
});
