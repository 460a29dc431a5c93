import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { makeDrill, type DrillWish } from "../../../src/domain/drill/drill";
import { seededRandom } from "../../../src/domain/seeded-random";
import { signsNamed, tableOf, taughtSigns } from "../contraction/word-tables";

const TABLE = tableOf([
  ["chat", 90, "ch a t"],
  ["chin", 80, "ch in_groupsign"],
  ["chop", 70, "ch o p"],
  ["rich", 60, "r i ch"],
  ["much", 50, "much"],
  ["such", 50, "such"],
  ["each", 40, "ea ch"],
  ["ache", 30, "a ch e"],
  ["richer", 20, "r i ch er"],
  ["chest", 10, "ch e st"],
  ["cat", 99, "c a t"],
  ["child", 99, "child"],
]);

const wish = (signs: string[], taught: string[], more: Partial<DrillWish> = {}): DrillWish => ({
  wanted: signsNamed(...signs),
  taught: taughtSigns(...taught),
  most: 4,
  mostCells: undefined,
  random: seededRandom(1),
  ...more,
});
const textsOf = (...args: Parameters<typeof makeDrill>): string[] => {
  const made = makeDrill(...args);
  if (!made.ok) throw new TypeError(made.fault.message);
  return made.value.map(({ text }) => text);
};

describe("a drill", () => {
  it("has words that use a wanted sign and otherwise only taught ones", () => {
    const words = textsOf(TABLE, wish(["ch"], ["er"], { most: 5 }));
    expect([...words].sort()).toEqual(["ache", "chat", "chop", "rich", "richer"]);
  });

  it("takes two wanted signs in one word, neither of them taught", () => {
    expect(
      textsOf(TABLE, wish(["ea", "ch"], [], { most: 1, accepts: (word) => TABLE.word(word) === "each" })),
    ).toEqual(["each"]);
  });

  it("meets the sign in start, middle and end in turn", () => {
    // Start: chat, chop. Middle: ache, richer. End: rich. Six words of five fit: one place runs out.
    const words = textsOf(TABLE, wish(["ch"], ["er"], { most: 3 }));
    expect(
      words.map((word) => (word.startsWith("ch") ? "start" : word.endsWith("ch") ? "end" : "middle")),
    ).toEqual(["start", "middle", "end"]);
  });

  it("is the same for the same seed, and another for another", () => {
    const drill = (seed: number): string =>
      textsOf(TABLE, wish(["ch"], ["er", "ea", "in", "st"], { random: seededRandom(seed) })).join();
    expect(drill(7)).toBe(drill(7));
    expect(new Set([1, 2, 3, 4, 5, 6].map(drill)).size).toBeGreaterThan(1);
  });

  it("caps the cells of a word", () => {
    expect(textsOf(TABLE, wish(["ch"], ["ea", "in"], { most: 2, mostCells: 2 }))).toEqual(
      expect.arrayContaining(["each", "chin"]),
    );
  });

  it("is filled up with lines of signs where too few words fit", () => {
    const made = makeDrill(TABLE, wish(["much"], [], { most: 4, mostCells: 9 }));
    expect(made.ok && made.value.map(({ kind }) => kind)).toEqual([
      "word",
      "singles",
      "pairs",
      "same or different",
    ]);
    expect(made.ok && made.value.slice(1).every(({ text }) => /^[⠀-⣿]{1,9}$/.test(text))).toBe(true);
    expect(made.ok && made.value[1]?.text).toBe("⠍⠡⠀⠍⠡⠀⠍⠡");
  });

  it.each<[string, string[], string[], number, RegExp]>([
    [
      "a sign not taught",
      ["ence"],
      ["h"],
      3,
      /No word with “ence” fits: f blocks most of the 2 short enough\./,
    ],
    [
      "the length",
      ["much"],
      [],
      1,
      /The only word with “much” is longer than 1 cell: allow more; 1 cell is too few/,
    ],
    [
      "no word at all",
      ["ing", "sh"],
      [],
      1,
      /No word uses “ing” or “sh”: give other words; 1 cell is too few/,
    ],
  ])(
    "is refused where nothing fits, not even a line, because of %s",
    (_what, wanted, taught, mostCells, message) => {
      const table = tableOf([
        ["fence", 3, "f ence"],
        ["fence f", 3, "f ence"],
        ["much", 3, "much"],
        ["silence", 3, "s i l ence"],
      ]);
      const made = makeDrill(table, wish(wanted, taught, { mostCells }));
      expect(made).toMatchObject({ ok: false, fault: { code: "nothing-to-give" } });
      expect(made.ok ? "" : made.fault.message).toMatch(message);
    },
  );

  const NAMES = ["ch", "sh", "er", "ea", "a", "t", "o"];
  it("never breaks its promises", () => {
    const rows = fc.array(fc.array(fc.constantFrom(...NAMES), { minLength: 1, maxLength: 5 }), {
      minLength: 1,
      maxLength: 40,
    });
    fc.assert(
      fc.property(
        rows,
        fc.subarray(NAMES, { minLength: 1 }),
        fc.subarray(["ch", "sh", "er", "ea"]),
        fc.integer({ min: 1, max: 12 }),
        fc.integer(),
        (words, wanted, taught, most, seed) => {
          const table = tableOf(words.map((names, index) => [`w${index}`, 1 + index, names.join(" ")]));
          const made = makeDrill(table, wish(wanted, taught, { most, random: seededRandom(seed) }));
          const items = made.ok ? made.value : [];
          expect(items.length).toBe(most);
          const drilled = items.flatMap(({ kind, text }) =>
            kind === "word" ? [words[Number(text.slice(1))] ?? []] : [],
          );
          expect(new Set(items.filter(({ kind }) => kind === "word").map(({ text }) => text)).size).toBe(
            drilled.length,
          );
          const allowed = new Set([...wanted, ...taught, "a", "t", "o"]);
          for (const names of drilled) {
            expect(names.some((name) => wanted.includes(name))).toBe(true);
            expect(names.every((name) => allowed.has(name))).toBe(true);
          }
          const fitting = words.filter(
            (names) =>
              names.some((name) => wanted.includes(name)) && names.every((name) => allowed.has(name)),
          );
          expect(drilled.length).toBe(Math.min(most, fitting.length));
        },
      ),
    );
  });

  it("meets signs that stand alone in plenty of words equally often, in each place equally often", () => {
    const rows = ["ch", "sh"].flatMap((sign) =>
      Array.from({ length: 90 }, (_, index) => {
        const signs = [`${sign} a t`, `a ${sign} t`, `a t ${sign}`][index % 3] ?? "";
        return [`${sign}${index}`, 1 + index * index, signs] as const;
      }),
    );
    const words = textsOf(tableOf(rows), wish(["ch", "sh"], [], { most: 30, random: seededRandom(5) }));
    const met = new Map<string, number>();
    for (const word of words) {
      const place = `${word.slice(0, 2)} ${Number(word.slice(2)) % 3}`;
      met.set(place, (met.get(place) ?? 0) + 1);
    }
    expect([...met.values()]).toEqual([5, 5, 5, 5, 5, 5]);
  });
});
