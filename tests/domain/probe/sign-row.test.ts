import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CONTRACTIONS, findContraction } from "../../../src/domain/contraction/inventory";
import { LETTERS, PUNCTUATION, DIGITS } from "../../../src/domain/contraction/sign";
import { cellsAlone, drawSignRow, layOutSigns } from "../../../src/domain/probe/sign-row";
import { seededRandom } from "../../../src/domain/seeded-random";

const signs = fc.uniqueArray(fc.constantFrom(...LETTERS, ...PUNCTUATION, ...CONTRACTIONS), {
  minLength: 1,
  maxLength: 20,
});
const count = (items: readonly string[]): readonly number[] => {
  const counts = new Map<string, number>();
  for (const item of items) counts.set(item, (counts.get(item) ?? 0) + 1);
  return [...counts.values()];
};

describe("a row of signs", () => {
  it("is as long as asked, has each sign equally often give or take one, and none twice in a row", () => {
    fc.assert(
      fc.property(signs, fc.integer({ min: 0, max: 60 }), fc.integer(), (pool, length, seed) => {
        const row = drawSignRow(pool, length, seededRandom(seed)).map(cellsAlone);
        const different = new Set(pool.map(cellsAlone)).size;
        expect(row).toHaveLength(length);
        const counts = count(row);
        if (length >= different) expect(counts).toHaveLength(different);
        if (length > 0) expect(Math.max(...counts) - Math.min(...counts)).toBeLessThanOrEqual(1);
        if (different > 1) expect(row.some((cells, at) => cells === row[at + 1])).toBe(false);
      }),
    );
  });

  it("is the same for the same seed and another for another one", () => {
    const rowOf = (seed: number) => drawSignRow(LETTERS, 26, seededRandom(seed)).map(({ name }) => name);
    expect(rowOf(7)).toEqual(rowOf(7));
    expect(rowOf(7)).not.toEqual(rowOf(8));
  });

  it("is empty without signs", () => {
    expect(drawSignRow([], 10, seededRandom(1))).toEqual([]);
  });

  it("names the first of signs that share their cells, and has it no oftener", () => {
    const [wordsign, groupsign, letter] = [
      findContraction("in wordsign"),
      findContraction("in groupsign"),
      LETTERS[0],
    ];
    if (!wordsign || !groupsign || !letter) throw new Error("no such sign");
    const row = drawSignRow([wordsign, groupsign, letter], 4, seededRandom(1)).map(({ name }) => name);
    expect([...row].sort()).toEqual(["a", "a", "in wordsign", "in wordsign"]);
  });
});

describe("a row in braille", () => {
  it("has the signs' own cells, which translating their print would spell out", () => {
    const row = ["ea", "ch", "ing"].flatMap((name) => findContraction(name) ?? []);
    expect(layOutSigns(row, 40)).toEqual({ ok: true, value: ["⠂⠀⠀⠡⠀⠀⠬"] });
  });

  it("leads a digit by the number sign", () => {
    expect(DIGITS.slice(0, 1).map(cellsAlone)).toEqual(["⠼⠁"]);
  });

  it("is never longer than its line", () => {
    fc.assert(
      fc.property(signs, fc.integer({ min: 4, max: 40 }), (row, most) => {
        const lines = layOutSigns(row, most);
        expect(lines.ok && lines.value.every((line) => line.length <= most)).toBe(true);
      }),
    );
  });
});
