import { existsSync } from "node:fs";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { BANK_PALETTE, decodeIndex, encodeIndex } from "../../../src/adapters/word-bank/index-format";
import { IndexedWordBank } from "../../../src/adapters/word-bank/indexed-word-bank";
import { nodeWordBank } from "../../../src/adapters/word-bank/node-word-bank";
import { FRAGMENTS } from "../../../src/adapters/word-bank/subtitle-words";
import { formsOfBadWords, isUnsuitable } from "../../../src/adapters/word-bank/unsuitable-words";
import {
  dictionarySpellings,
  syllablesOfPronunciation,
} from "../../../src/adapters/word-bank/word-bank-builder";
import { buildSmallBank } from "./small-bank";

const WORDS = {
  What: 90,
  children: 50,
  Peter: 40,
  teacher: 30,
  don: 20,
  s: 99,
  a: 15,
  I: 80,
  badly: 7,
  murdered: 6,
  it: 5,
  xrick: 3,
};

describe("the word bank", () => {
  it("keeps words most frequent first, with their signs, cells and syllables", async () => {
    const { bytes } = await buildSmallBank(WORDS);
    const bank = new IndexedWordBank(bytes);
    const { size, signs, starts, palette, counts, cells, word } = bank.table("contracted");
    const rows = Array.from({ length: size }, (_, index) => [
      word(index),
      counts[index],
      [...signs.subarray(starts[index], starts[index + 1])].map((place) => palette[place]?.name).join(" "),
      cells[index],
      bank.syllables[index],
      bank.suitsDrill(index),
    ]);
    expect(rows).toEqual([
      ["what", 90, "wh a t", 3, 1, true],
      ["I", 80, "capital i", 2, 1, false],
      ["children", 50, "children", 2, 2, true],
      ["Peter", 40, "capital p e t er", 5, 2, false],
      ["teacher", 30, "t ea ch er", 4, 2, true],
      ["a", 15, "a", 1, 1, true],
      ["it", 5, "it", 1, 1, true],
      ["xrick", 3, "x r i c k", 5, 1, false],
    ]);
    expect(bank.find("teacher")).toBe(4);
    expect(bank.find("Teacher")).toBeUndefined();
    expect(bank.table("uncontracted").cells[4]).toBe(7);
  });

  it("leaves out fragments, words rated as bad, and those of our own list, and says how many", async () => {
    expect(await buildSmallBank(WORDS)).toMatchObject({ kept: 8, fragments: 2, unsuitable: 2, unread: [] });
  });

  it("refuses bytes that are none, are cut short, or are of another order of signs", async () => {
    const { bytes } = await buildSmallBank(WORDS);
    const other = bytes.slice();
    other[5] = (other[5] ?? 0) ^ 1;
    expect(() => new IndexedWordBank(new Uint8Array(40))).toThrow(/no word bank/);
    expect(() => new IndexedWordBank(bytes.subarray(0, -1))).toThrow(/cut short/);
    expect(() => new IndexedWordBank(bytes.subarray(0, 30))).toThrow(/cut short/);
    expect(() => new IndexedWordBank(other)).toThrow(/another version/);
  });

  it("is read once, and again after a failure", async () => {
    const directory = await mkdtemp(path.join(tmpdir(), "cellwright-"));
    try {
      const library = nodeWordBank(directory);
      await expect(library.load()).rejects.toThrow(/ENOENT/);
      expect(library.loaded()).toBeUndefined();
      await writeFile(path.join(directory, "word-bank.bin"), (await buildSmallBank(WORDS)).bytes);
      const bank = await library.load();
      expect(await library.load()).toBe(bank);
      expect(library.loaded()).toBe(bank);
    } finally {
      await rm(directory, { recursive: true });
    }
  });
});

describe("the file of the word bank", () => {
  it("fits every sign into a byte", () => {
    expect(BANK_PALETTE.length).toBeLessThanOrEqual(256);
  });

  it("gives back what was put in", () => {
    const word = fc.record({
      signs: fc.array(fc.nat(BANK_PALETTE.length - 1), { minLength: 1, maxLength: 30 }),
      syllables: fc.nat(127),
      isListed: fc.boolean(),
      count: fc.nat(2 ** 31 - 1),
    });
    fc.assert(
      fc.property(fc.array(word), (words) => {
        const sorted = [...words].sort((one, other) => other.count - one.count);
        const index = decodeIndex(encodeIndex(sorted));
        expect(index.size).toBe(sorted.length);
        for (const [place, { signs, syllables, isListed, count }] of sorted.entries()) {
          expect([...index.signs.subarray(index.starts[place], index.starts[place + 1])]).toEqual(signs);
          expect([index.syllables[place], index.listed[place] === 1, index.counts[place]]).toEqual([
            syllables,
            isListed,
            count,
          ]);
        }
      }),
    );
  });
});

describe("words that do not belong into a school", () => {
  it.each([
    "kill",
    "killed",
    "guns",
    "stabbing",
    "beer",
    "wines",
    "vodka",
    "smoking",
    "naked",
    "murderer",
    "brandies",
  ])("%s goes by our own list", (word) => expect(isUnsuitable(word)).toBe(true));
  it.each([
    "skill",
    "begin",
    "ginger",
    "grape",
    "drape",
    "scrape",
    "bomb-free",
    "winery-like",
    "bride",
    "heroines",
    "luster",
    "public",
    "bulletin",
    "assignment",
    "classic",
    "sussex",
  ])("%s stays", (word) => expect(isUnsuitable(word)).toBe(false));
});

describe("the forms of words that a list of bad words holds", () => {
  it.each([
    ["turd", "turds", true],
    ["grope", "groping", true],
    ["fondle", "fondled", true],
    ["spank", "spanking", true],
    ["sissy", "sissies", true],
    ["teste", "tested", false],
    ["spic", "spices", false],
    ["asse", "assess", false],
    ["god", "goddess", false],
    ["ho", "hood", false],
  ])("%s: whether %s goes with it is %s", (word, form, goes) => {
    expect(formsOfBadWords([word]).has(form)).toBe(goes);
  });
});

describe("a word is looked for in a dictionary of American English", () => {
  it.each([
    ["colour", "color"],
    ["favourite", "favorite"],
    ["realised", "realized"],
    ["centre", "center"],
    ["travelling", "traveling"],
    ["defences", "defenses"],
    ["enchants", "enchant"],
    ["cat", "cat"],
  ])("%s as %s too", (word, spelling) => expect(dictionarySpellings(word)).toContain(spelling));

  it("a word in double s as no plural", () => {
    expect(dictionarySpellings("princess")).toEqual(["princess"]);
  });
});

describe("syllables", () => {
  // Pronunciations as the CMU dictionary writes them.
  it.each([
    ["T IY1 CH ER0", 2],
    ["DH AH0", 1],
    ["IH2 L EH2 K T R IH1 S AH0 T IY0", 5],
    ["M", 0],
  ])("of %s are %d", (pronunciation, syllables) => {
    expect(syllablesOfPronunciation(pronunciation)).toBe(syllables);
  });
});

/** What the build made: checked where there is a build, as `npm test` has it. */
describe.skipIf(!existsSync("dist/word-bank.bin"))("the built word bank", async () => {
  const bank = existsSync("dist/word-bank.bin") ? await nodeWordBank("dist").load() : undefined;
  const translator = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("contracted");
  const uncontracted = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("uncontracted");

  it("has more than 70,000 words in less than 1 MB", () => {
    expect(bank?.table("contracted").size).toBeGreaterThan(70_000);
    expect(bank?.table("contracted").signs.length).toBeLessThan(1_000_000);
  });

  it("tells the cells that the engine gives, in both codes, for every 50th word", () => {
    for (const [code, engine] of [
      ["contracted", translator],
      ["uncontracted", uncontracted],
    ] as const) {
      const table = bank?.table(code);
      for (let word = 0; word < (table?.size ?? 0); word += 50) {
        const print = table?.word(word) ?? "";
        expect([print, table?.cells[word]]).toEqual([print, engine.translate(print).length]);
      }
    }
  });

  it("drills neither names nor words that no dictionary has, but British spellings too", () => {
    const suits = (word: string): boolean => bank?.suitsDrill(bank.find(word) ?? -1) === true;
    expect(["Peter", "muchachos", "chatta", "tellin"].filter(suits)).toEqual([]);
    expect(["teacher", "colour", "favourite", "realised"].filter((word) => !suits(word))).toEqual([]);
  });

  it("has no fragment, no doubled word, and none of a few words that no lesson wants", () => {
    const table = bank?.table("contracted");
    const words = Array.from({ length: table?.size ?? 0 }, (_, word) => table?.word(word) ?? "");
    expect(new Set(words).size).toBe(words.length);
    expect(words.filter((word) => FRAGMENTS.has(word.toLowerCase()))).toEqual([]);
    for (const word of [
      "shit",
      "murder",
      "cocaine",
      "whiskey",
      "naked",
      "Hitler",
      "bitch",
      "damn",
      "farts",
      "hell",
    ])
      expect(words).not.toContain(word);
    for (const word of ["teacher", "children", "school", "what", "false", "grape"])
      expect(words).toContain(word);
  });

  // Counted by hand: teach-er, chil-dren, im-por-tant, the, e-lec-tric-i-ty.
  it.each([
    ["teacher", 2],
    ["children", 2],
    ["important", 3],
    ["the", 1],
    ["electricity", 5],
  ])("says that %s has %d syllables", (word, syllables) => {
    expect(bank?.syllables[bank.find(word) ?? -1]).toBe(syllables);
  });
});
