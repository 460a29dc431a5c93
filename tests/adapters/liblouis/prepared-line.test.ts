import { describe, expect, it } from "vitest";
import { prepareLine, prepareUebLine, UNTRANSLATABLE } from "../../../src/adapters/liblouis/prepared-line";
import { WordMemo } from "../../../src/adapters/liblouis/word-memo";

describe("a line made ready for the UEB tables", () => {
  it.each([
    ["a curly apostrophe between letters", "o’clock", "o'clock"],
    ["a curly apostrophe at the start of a word", "’twas", "'twas"],
    ["a curly apostrophe at the end of a word", "the dogs’ bowls", "the dogs' bowls"],
    ["a closing quotation mark", "‘go’", "‘go’"],
    ["an apostrophe inside quotation marks", "‘don’t’", "‘don't’"],
    ["an em dash as the dash", "a—b", "a–b"],
    ["spaces of other widths", "a\u2009b\u00a0c\td", "a b c d"],
    ["what cannot be seen", "\ufeffa\u00adb\u200bc\ufe0f", "abc"],
    ["a control character", "a\u0007", `a${UNTRANSLATABLE}`],
    ["a private character", "a\ue000", `a${UNTRANSLATABLE}`],
    ["a combining accent", "cafe\u0301s", "cafés"],
  ])("%s", (_what, line, text) => {
    const prepared = prepareUebLine(line);
    expect(prepared.text).toBe(text);
    expect(prepared.origins).toHaveLength(text.length);
  });

  it("knows where each character stood", () => {
    expect(prepareUebLine("\ufeffe\u0301a")).toEqual({ text: "éa", origins: [1, 3] });
  });

  it("leaves dashes and apostrophes to other tables", () => {
    expect(prepareLine("l’eau — e\u0301").text).toBe("l’eau — é");
  });
});

describe("the word memo", () => {
  it("never holds more than its capacity and keeps what is used", () => {
    const memo = new WordMemo<number>(10);
    memo.keep("often", 1);
    for (let index = 0; index < 1000; index += 1) {
      memo.keep(`word ${index}`, index);
      expect(memo.get("often")).toBe(1);
      expect(memo.size).toBeLessThanOrEqual(10);
    }
    expect(memo.get("word 0")).toBeUndefined();
    expect(memo.get("word 999")).toBe(999);
  });

  it("is empty when cleared", () => {
    const memo = new WordMemo<number>(10);
    memo.keep("a", 1);
    memo.clear();
    expect([memo.size, memo.get("a")]).toEqual([0, undefined]);
  });
});
