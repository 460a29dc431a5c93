import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { chancesOfWriting, summariseConfusions } from "../../../src/domain/probe/confusion";
import { expectBraille, expectText, parseWritten } from "../../../src/domain/probe/expected-cells";
import { scoreWriting } from "../../../src/domain/probe/writing";

const contracted = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("contracted");
const uncontracted = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("uncontracted");

const chancesOf = (print: string, text: string, translator = contracted) => {
  const expected = expectText(print, (part) => translator.transcribe(part), true);
  const written = parseWritten(text);
  if (!written.ok) throw new Error(written.fault.message);
  return chancesOfWriting(expected, scoreWriting(expected, written.value));
};

describe("what was written or read for what", () => {
  it("counts how often, of how many chances, with its interval", () => {
    const chances = [
      ...Array.from({ length: 8 }, () => ({ expected: "d", given: "d" })),
      { expected: "d", given: "f" },
      { expected: "d", given: "f" },
      { expected: "f", given: "d" },
      { expected: "f", given: "" },
    ];
    const summary = summariseConfusions(chances);
    expect(summary).toMatchObject([
      { expected: "d", given: "f", times: 2, chances: 10, share: 0.2 },
      { expected: "f", given: "d", times: 1, chances: 2, share: 0.5 },
      { expected: "f", given: "", times: 1, chances: 2, share: 0.5 },
    ]);
    // Jeffreys, 8 of 10: .497 to .956 (the project's shared page); of the other 2 the complement.
    expect(summary[0]?.interval.low).toBeCloseTo(1 - 0.956, 3);
    expect(summary[0]?.interval.high).toBeCloseTo(1 - 0.497, 3);
  });

  it("says nothing of nothing", () => {
    expect(summariseConfusions([])).toEqual([]);
  });

  it("takes writing a sign at a time", () => {
    // shortforms and initial-letter contractions have several cells
    expect(chancesOf("mother had him", '"n _d hm')).toEqual([
      { expected: "⠐⠍", given: "⠐⠝" },
      { expected: "⠸⠓", given: "⠸⠙" },
      { expected: "⠓⠍", given: "⠓⠍" },
    ]);
  });

  it("takes a contraction spelled out as what was given for it, a sign left out as nothing", () => {
    expect(chancesOf("the cat", "the ct")).toEqual([
      { expected: "⠮", given: "⠞⠓⠑" },
      { expected: "⠉", given: "⠉" },
      { expected: "⠁", given: "" },
      { expected: "⠞", given: "⠞" },
    ]);
  });

  it("leaves out letters that a contraction took the place of, and cells added", () => {
    expect(chancesOf("the cat", "! caat", uncontracted)).toEqual([
      { expected: "⠉", given: "⠉" },
      { expected: "⠁", given: "⠁" },
      { expected: "⠞", given: "⠞" },
    ]);
  });

  it("goes cell by cell where the signs are not known", () => {
    const expected = expectBraille("⠐⠍ ⠁");
    if (!expected.ok) throw new Error(expected.fault.message);
    expect(chancesOfWriting(expected.value, scoreWriting(expected.value, "⠐⠝⠀⠁"))).toEqual([
      { expected: "⠐", given: "⠐" },
      { expected: "⠍", given: "⠝" },
      { expected: "⠁", given: "⠁" },
    ]);
  });
});
