import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  HANDOUT_NOTICE,
  makeHandout,
  USUAL_HANDOUT,
  type HandoutOptions,
} from "../../../src/domain/drill/handout";
import { readEntry, type HandoutEntry } from "../../../src/domain/drill/handout-draft";
import { refusal } from "../../../src/domain/result";
import { handoutOf, spellOut, wordsOf } from "./handouts";

const refused = (entries: readonly HandoutEntry[], options: Partial<HandoutOptions> = {}) => {
  const made = makeHandout({ title: "t", date: "", entries }, { ...USUAL_HANDOUT, ...options }, (text) =>
    text.includes("☃") ? refusal("untranslatable", `“☃” has no cells in “${text}”.`) : spellOut(text),
  );
  return made.ok ? undefined : made.fault;
};

describe("a handout", () => {
  it("always ends with the note, in print and in braille", () => {
    const { notice } = handoutOf(wordsOf("heron"));
    expect(notice.print).toBe("Machine translated, not proofread.");
    expect(notice.print).toBe(HANDOUT_NOTICE);
    expect(notice.lines.length).toBeGreaterThan(0);
  });

  it("has each word with its braille", () => {
    const { items } = handoutOf(wordsOf("egg", "  nest\t", "   "));
    expect(items.map(({ print, cells }) => [print, cells])).toEqual([
      ["egg", "⠑⠛⠛"],
      ["nest", "⠝⠑⠎⠞"],
    ]);
  });

  it("breaks a sentence into lines, each with its print, and begins it in cell 3", () => {
    const { items } = handoutOf([{ kind: "sentence", text: "an egg is in the nest" }], { cellsPerLine: 12 });
    expect(items[0]?.lines).toEqual([
      { cells: "⠀⠀⠁⠝⠀⠑⠛⠛⠀⠊⠎", print: "an egg is" },
      { cells: "⠊⠝⠀⠞⠓⠑⠀⠝⠑⠎⠞", print: "in the nest" },
    ]);
  });

  it("keeps the paragraphs of a passage and leaves out empty ones", () => {
    const { items } = handoutOf([{ kind: "passage", text: "an egg\r\n\r\n  a nest " }]);
    expect(items[0]?.lines.map(({ cells }) => cells)).toEqual(["⠀⠀⠁⠝⠀⠑⠛⠛", "⠀⠀⠁⠀⠝⠑⠎⠞"]);
    expect(items[0]?.print).toBe("an egg\na nest");
  });

  it("takes lines of signs as they stand, with the print that is given for them", () => {
    const { items } = handoutOf([{ kind: "signs", text: "⠡⠀⠩⠀⠡", print: "ch sh ch" }]);
    expect(items[0]).toMatchObject({ print: "ch sh ch", lines: [{ cells: "⠡⠀⠩⠀⠡", print: "ch sh ch" }] });
  });

  it("centres the title", () => {
    expect(handoutOf(wordsOf("a"), { cellsPerLine: 11 }).title.lines).toEqual([
      { cells: "⠀⠀⠀⠓⠑⠗⠕⠝", print: "Heron" },
    ]);
  });

  it("names an empty title Handout, and has no date where none is given", () => {
    const { title, date } = handoutOf(wordsOf("a"), {}, { title: " " });
    expect([title.print, date]).toEqual(["Handout", undefined]);
    expect(handoutOf(wordsOf("a"), {}, { date: "25 Nov 2026" }).date?.print).toBe("25 Nov 2026");
  });
});

describe("what a handout is refused for", () => {
  it.each([
    ["nothing on it", wordsOf(" ", "\n"), {}, "The handout is empty"],
    ["too few cells", wordsOf("a"), { cellsPerLine: 7 }, "8 to 100 cells, not 7"],
    ["half a cell", wordsOf("a"), { cellsPerLine: 20.5 }, "8 to 100 cells, not 20.5"],
    ["too many lines", wordsOf("a"), { linesPerPage: 101 }, "4 to 100 lines, not 101"],
    ["a character without cells", wordsOf("egg", "☃"), {}, "Item 2: “☃” has no cells"],
    ["several", wordsOf("☃", "☃", "☃", "☃", "☃"), {}, "The same goes for 2 more items."],
    ["one more", wordsOf("☃", "☃", "☃", "☃"), {}, "The same goes for 1 more item."],
  ])("%s", (_what, entries, options, message) => {
    expect(refused(entries, options)?.message).toContain(message);
  });
});

describe("what an entry is", () => {
  it.each([
    ["heron", "word"],
    ["brood patch", "word"],
    ["Stop!", "word"],
    ["The heron flew.", "sentence"],
    ["“Did it fly?”", "sentence"],
    ["One line.\nAnother.", "passage"],
    ["⠡⠀⠩", "signs"],
  ])("%j is a %s", (text, kind) => {
    expect(readEntry(text)).toEqual({ kind, text });
  });
});

it("has no line longer than its cells, whatever stands on it", () => {
  const text = fc.string({ unit: fc.constantFrom("a", "b", "c", "é", " ", " ", "\n", "."), maxLength: 120 });
  const entry = fc.record({ kind: fc.constantFrom("word", "sentence", "passage"), text });
  const entries = fc.array(entry, { minLength: 1, maxLength: 5 });
  const property = fc.property(
    entries,
    text,
    text,
    fc.integer({ min: 8, max: 45 }),
    (items, title, date, cellsPerLine) => {
      fc.pre(items.some((item) => item.text.trim() !== ""));
      const handout = handoutOf(items as HandoutEntry[], { cellsPerLine }, { title, date });
      const { date: day, notice } = handout;
      for (const { lines } of [handout.title, ...(day === undefined ? [] : [day]), ...handout.items, notice])
        for (const { cells } of lines) expect(cells.length).toBeLessThanOrEqual(cellsPerLine);
    },
  );
  fc.assert(property, { numRuns: 300 });
});
