import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { alignSequences } from "../../../src/domain/probe/alignment";
import { scoreReading } from "../../../src/domain/probe/reading";
import { splitReadingWords } from "../../../src/domain/probe/reading-words";
import alignments from "../../check-values/word-alignment.json";

describe("alignment of word sequences", () => {
  /** Equally many edits; of such alignments ours keeps the one with more words the same (three here, not two). */
  const MORE_WORDS_SAME = new Set(["this is a test of skill"]);

  it.each(alignments.rows)(
    "as many edits as published: $expected | $heard",
    ({ expected, heard, ...counts }) => {
      const { steps } = alignSequences(expected.split(" "), heard.split(" "));
      const edits = steps.filter(({ kind }) => kind !== "same").length;
      expect(edits).toBe(counts.replaced + counts.missing + counts.extra + counts.swapped);
      if (counts.publishedWordErrorRate !== null && counts.swapped === 0) {
        expect(edits / expected.split(" ").length).toBeCloseTo(counts.publishedWordErrorRate, 12);
      }
    },
  );

  const split = alignments.rows.filter(({ expected }) => !MORE_WORDS_SAME.has(expected));
  it.each(split)("split the same way: $expected | $heard", ({ expected, heard, ...counts }) => {
    const { steps } = alignSequences(expected.split(" "), heard.split(" "));
    const count = (kind: string) => steps.filter((step) => step.kind === kind).length;
    expect({
      replaced: count("replaced"),
      missing: count("missing"),
      extra: count("extra"),
      swapped: count("swapped"),
    }).toEqual({
      replaced: counts.replaced,
      missing: counts.missing,
      extra: counts.extra,
      swapped: counts.swapped,
    });
  });

  it("is the same in a narrow band as over the full table", () => {
    // Distance by the plain recursion over the full table, written independently of the band.
    const distance = (one: readonly string[], two: readonly string[]): number => {
      const rows: number[][] = [];
      for (let i = 0; i <= one.length; i += 1) {
        const row: number[] = [];
        rows.push(row);
        for (let j = 0; j <= two.length; j += 1) {
          const at = (a: number, b: number) => rows[a]?.[b] ?? Infinity;
          let best =
            i === 0 && j === 0
              ? 0
              : Math.min(i > 0 ? at(i - 1, j) + 1 : Infinity, j > 0 ? (row[j - 1] ?? 0) + 1 : Infinity);
          if (i > 0 && j > 0) best = Math.min(best, at(i - 1, j - 1) + (one[i - 1] === two[j - 1] ? 0 : 1));
          if (i > 1 && j > 1 && one[i - 1] === two[j - 2] && one[i - 2] === two[j - 1])
            best = Math.min(best, at(i - 2, j - 2) + 1);
          row.push(best);
        }
      }
      return rows[one.length]?.[two.length] ?? Infinity;
    };
    const words = fc.array(fc.constantFrom("a", "b", "c", "d"), { maxLength: 60 });
    fc.assert(
      fc.property(words, words, (one, two) => {
        const { steps } = alignSequences(one, two);
        expect(steps.filter(({ kind }) => kind !== "same")).toHaveLength(distance(one, two));
      }),
    );
  });
});

/** US Department of Education, "Monitoring Reading" slides (archived): rule numbers; the sentences are our own. */
const RULES = [
  {
    rule: "1 misread",
    text: "We packed the blue kite",
    read: "We packed the blow kite",
    words: 5,
    correct: 4,
  },
  {
    rule: "2 self-corrected",
    text: "The barn is cold",
    read: "The barn is could (sc) cold",
    words: 4,
    correct: 4,
  },
  {
    rule: "7 left out",
    text: "Nora painted the tall gate",
    read: "Nora painted the gate",
    words: 5,
    correct: 4,
  },
  {
    rule: "8 told in its place",
    text: "They found an otter",
    read: "They found an (told)",
    words: 4,
    correct: 3,
  },
  {
    rule: "8 told, word written",
    text: "They found an otter",
    read: "They found an otter (told)",
    words: 4,
    correct: 3,
  },
  { rule: "9 swapped", text: "Otters swim quickly", read: "Otters quickly swim", words: 3, correct: 1 },
  {
    rule: "12 abbreviation spelled",
    text: "Mr. Lund opened the shop",
    read: "M-R Lund opened the shop",
    words: 5,
    correct: 4,
  },
  {
    rule: "12 abbreviation read",
    text: "Mr. Lund opened the shop",
    read: "mister Lund opened the shop",
    words: 5,
    correct: 5,
  },
  { rule: "added is no error", text: "The red hen", read: "The big red hen", words: 3, correct: 3 },
  { rule: "repeated is no error", text: "The red hen", read: "The red the red hen", words: 3, correct: 3 },
  {
    rule: "skipped line",
    text: "one two three four five six seven eight",
    read: "one two seven eight",
    words: 8,
    correct: 4,
  },
] as const;

describe("scoring a reading", () => {
  it.each(RULES)("rule $rule", ({ text, read, words, correct }) => {
    expect(scoreReading(text, read)).toMatchObject({ words, correct });
  });

  it.each([
    ["thirty-two", 2],
    ["mother-in-law", 3],
    ["Fifty-seven", 2],
    ["Daughter-in-law", 3],
    ["co-pilot", 1],
    ["re-enter", 1],
    ["co-opt", 1],
  ])("rule 11: %s counts %i", (text, count) => {
    expect(splitReadingWords(text)).toHaveLength(count);
  });

  it("ends the attempt at the last aligned word where the response ends with ]", () => {
    expect(scoreReading("the cat sat on the mat by the door", "the cat sit on ]")).toMatchObject({
      words: 4,
      correct: 3,
      misread: 1,
    });
  });

  it("counts a last misread word as attempted", () => {
    expect(scoreReading("the cat sat on the mat", "the cat sit ]")).toMatchObject({ words: 3, correct: 2 });
  });

  it("tells a telling after a wrong try from a telling after silence", () => {
    const { miscues } = scoreReading("he saw the otter today", "he was (told) the otter (told) today");
    expect(miscues).toEqual([
      { position: 2, expected: "saw", heard: "was", kind: "told" },
      { position: 4, expected: "otter", heard: "", kind: "told" },
    ]);
  });

  it.each([
    ["In 1999 we had 25 hens", "in nineteen ninety nine we had twenty-five hens", 6],
    ["We had twenty-five hens", "we had 25 hens", 5],
    ["There were 1,250 gulls", "there were one thousand two hundred and fifty gulls", 4],
  ])("numbers read out are the same: %s", (text, read, correct) => {
    expect(scoreReading(text, read)).toMatchObject({ words: correct, correct });
  });

  it.each([
    ["“Don’t!” she said.", "dont she said", 2],
    ["“Don’t!” she said.", "don't she said", 3],
    ["THE END", "the end", 2],
    ["naïve café", "naïve café".normalize("NFD"), 2],
  ])("case, punctuation and curly quotes do not count: %s | %s", (text, read, correct) => {
    expect(scoreReading(text, read).correct).toBe(correct);
  });

  it("never counts more words correct than attempted, and added words never lower the count", () => {
    const words = fc.array(fc.constantFrom("the", "cat", "sat", "on", "a", "mat"), { maxLength: 20 });
    fc.assert(
      fc.property(words, words, fc.boolean(), (text, read, stops) => {
        const score = scoreReading(text.join(" "), read.join(" ") + (stops ? " ]" : ""));
        expect(score.correct + score.misread + score.leftOut + score.swapped).toBe(score.words);
        expect(score.correct).toBeGreaterThanOrEqual(0);
        if (!stops) expect(score.words).toBe(text.length);
      }),
    );
    fc.assert(
      fc.property(words, fc.nat(20), (text, place) => {
        const read = [...text.slice(0, place), "zebra", ...text.slice(place)];
        expect(scoreReading(text.join(" "), read.join(" ")).correct).toBe(text.length);
      }),
    );
  });

  it("a response in another alphabet is no word right", () => {
    expect(scoreReading("the cat", "кот сидел")).toMatchObject({ words: 2, correct: 0, misread: 2 });
  });
});
