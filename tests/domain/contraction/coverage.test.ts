import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { measureCoverage, type CoverageMeasure } from "../../../src/domain/contraction/coverage";
import { findContraction } from "../../../src/domain/contraction/inventory";
import { createPassageReader } from "../../../src/domain/contraction/passage";
import { PLAIN_SIGNS } from "../../../src/domain/contraction/sign";
import { parseTaught, type TaughtSigns } from "../../../src/domain/contraction/taught";

const library = nodeTranslatorLibrary(PACKAGE_LAYOUT);
const readers = {
  contracted: createPassageReader((text) => contracted.transcribe(text)),
  uncontracted: createPassageReader((text) => uncontracted.transcribe(text)),
};
const contracted = await library.translator("contracted");
const uncontracted = await library.translator("uncontracted");

const taughtSigns = (...cells: string[]): TaughtSigns => {
  const parsed = parseTaught(cells);
  if (!parsed.ok) throw new TypeError(parsed.fault.message);
  return parsed.value;
};

describe("a list of taught signs", () => {
  it.each([
    ["in", ["in wordsign", "in groupsign"]],
    ["be", ["be wordsign", "be groupsign"]],
    ["in wordsign", ["in wordsign"]],
    ["  The ", ["the"]],
    ["-ing", ["ing"]],
    ["(er)", ["er"]],
    ["period", ["full stop"]],
    ["?", ["question mark"]],
    ["numeric indicator", ["number sign"]],
    ["ch, sh; th\nwh", ["ch", "sh", "th", "wh"]],
    [",", ["comma"]],
    ["é", ["é"]],
    ["", []],
  ])("reads %j as %j", (cell, names) => {
    expect(taughtSigns(cell).names).toEqual(names);
  });

  it("takes duplicates and both uses once", () => {
    expect(taughtSigns("ch", "in", "CH", "in groupsign").names).toEqual([
      "ch",
      "in wordsign",
      "in groupsign",
    ]);
  });

  it("names every text that is no sign, once", () => {
    const parsed = parseTaught(["ch", "xq", "to", "xq, into"]);
    expect(parsed).toMatchObject({ ok: false, fault: { code: "unknown-signs" } });
    expect(parsed.ok ? "" : parsed.fault.message).toMatch(/^“xq”, “to”, “into” are not signs: write/);
  });

  it("counts letters, digits, punctuation and indicators as known unless it names one of that kind", () => {
    const sign = (name: string): (typeof PLAIN_SIGNS)[number] => {
      const found = PLAIN_SIGNS.find((candidate) => candidate.name === name);
      if (found === undefined) throw new TypeError(name);
      return found;
    };
    const taught = taughtSigns("a", "b", "full stop");
    expect(["a", "c", "7", "full stop", "comma", "capital"].map((name) => taught.knows(sign(name)))).toEqual([
      true,
      false,
      true,
      true,
      false,
      true,
    ]);
    const the = findContraction("the");
    expect(the && taught.knows(the)).toBe(false);
  });
});

describe("coverage", () => {
  it.each<[string, string[], CoverageMeasure, keyof typeof readers, number]>([
    // the (cat) sat (in) (the) shed: sh ed
    ["the cat sat in the shed", ["the"], "words", "contracted", 4 / 6],
    ["the cat sat in the shed", ["the", "in"], "words", "contracted", 5 / 6],
    ["the cat sat in the shed", ["the", "in groupsign", "sh"], "words", "contracted", 4 / 6],
    ["the cat sat in the shed", ["the"], "signs", "contracted", 2 / 5],
    ["the cat sat in the shed", ["the"], "distinct", "contracted", 1 / 4],
    ["the cat sat in the shed", [], "words", "contracted", 2 / 6],
    ["the cat sat in the shed", ["the", "in", "sh", "ed"], "distinct", "contracted", 1],
    ["the cat sat in the shed", [..."aehcts"], "words", "uncontracted", 4 / 6],
    ["the cat sat in the shed", [], "words", "uncontracted", 1],
    // 18 letters, of which t 4, h 3, e 3; 9 different ones.
    ["the cat sat in the shed", [..."the"], "signs", "uncontracted", 10 / 18],
    ["the cat sat in the shed", [..."the"], "distinct", "uncontracted", 3 / 9],
    ["the cat sat in the shed", ["the"], "signs", "uncontracted", 1],
    ["A 7, a 7", ["a"], "distinct", "uncontracted", 1],
    ["A cat. A dog, a hen", ["full stop"], "words", "contracted", 4 / 6],
    ["A cat. A dog, a pig", ["full stop"], "words", "contracted", 5 / 6],
    ["Tom is 7", ["capital"], "words", "contracted", 2 / 3],
    ["Tom is 7", ["capital", "number sign"], "words", "contracted", 1],
    ["Tom is 7", [..."tomis"], "words", "contracted", 1],
    ["Tom is 7", ["1", "2"], "words", "contracted", 2 / 3],
    ["a – b ... c", [], "words", "contracted", 1],
    ["against", ["st"], "words", "contracted", 0],
  ])("of %j with %j by %s, %s, is %d", (text, names, measure, code, share) => {
    const result = measureCoverage(readers[code].read(text), taughtSigns(...names), measure, code);
    expect(result).toEqual({ ok: true, value: expect.closeTo(share, 12) as number });
  });

  it.each<[string, CoverageMeasure, keyof typeof readers, string, RegExp]>([
    ["", "words", "contracted", "no-words", /no words/],
    ["– … !", "words", "contracted", "no-words", /no words/],
    ["a cat sat", "signs", "contracted", "nothing-to-give", /no contractions: use the measure "words"/],
    ["a cat sat", "distinct", "contracted", "nothing-to-give", /no contractions/],
    ["7, 8", "signs", "uncontracted", "nothing-to-give", /no letters/],
  ])("of %j by %s, %s, is refused: %s", (text, measure, code, refused, message) => {
    expect(measureCoverage(readers[code].read(text), taughtSigns(), measure, code)).toMatchObject({
      ok: false,
      fault: { code: refused, message: expect.stringMatching(message) as string },
    });
  });
});
