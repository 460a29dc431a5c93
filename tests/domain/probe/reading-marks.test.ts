import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { scoreReading } from "../../../src/domain/probe/reading";
import {
  MARK_KINDS,
  NO_NOTES,
  clearMarks,
  endAt,
  formatHeard,
  markAt,
  noteHeard,
  toggleMark,
} from "../../../src/domain/probe/reading-marks";
import type { MarkKind, ReadingNotes } from "../../../src/domain/probe/reading-marks";
import { splitReadingWords } from "../../../src/domain/probe/reading-words";

const TEXT = "The heron stood in the cold water near a grey stone";
const WORDS = splitReadingWords(TEXT);
const mark = (...marks: readonly (readonly [number, MarkKind])[]): ReadingNotes =>
  marks.reduce((notes, [word, kind]) => toggleMark(notes, word, kind, WORDS.length), NO_NOTES);

describe("the response in the sheet's form", () => {
  it.each<[string, ReadingNotes, string]>([
    ["nothing marked", NO_NOTES, TEXT],
    ["misread, not noted as what", mark([1, "misread"]), TEXT.replace("heron", "(misread)")],
    ["left out", mark([5, "left out"]), TEXT.replace(" cold", "")],
    ["swapped", mark([5, "swapped"]), TEXT.replace("cold water", "water cold")],
    ["told", mark([9, "told"]), TEXT.replace("grey", "grey (told)")],
    ["self-corrected", mark([9, "self-corrected"]), TEXT.replace("grey", "(misread) (sc) grey")],
    ["added", mark([9, "added"]), TEXT.replace("grey", "grey (added)")],
    ["stopped early", endAt(NO_NOTES, 3), "The heron stood in ]"],
    [
      "a swap at the end is with the word before",
      mark([10, "swapped"]),
      TEXT.replace("grey stone", "stone grey"),
    ],
    ["a mark beyond the last word", endAt(mark([7, "misread"]), 3), "The heron stood in ]"],
    ["half a swapped pair attempted", endAt(mark([3, "swapped"]), 3), "The heron stood in ]"],
  ])("%s", (_, notes, heard) => {
    expect(formatHeard(WORDS, notes)).toBe(heard);
  });

  it("says what was heard where it was noted", () => {
    const notes = mark([1, "misread"]);
    const [first] = notes.marks;
    const noted = first ? noteHeard(notes, first, " horn ") : notes;
    expect(formatHeard(WORDS, noted)).toBe(TEXT.replace("heron", "horn"));
    const [again] = noted.marks;
    expect(again && noteHeard(noted, again, " ")).toEqual(notes);
  });
});

describe("marking", () => {
  it("takes the same mark off again, and lets another take its place", () => {
    expect(toggleMark(mark([1, "misread"]), 1, "misread", WORDS.length)).toEqual(NO_NOTES);
    expect(markAt(mark([1, "misread"], [1, "told"]), 1)?.kind).toBe("told");
  });
  it("takes a swapped pair off at either word", () => {
    expect(toggleMark(mark([5, "swapped"]), 6, "swapped", WORDS.length)).toEqual(NO_NOTES);
    expect(clearMarks(mark([5, "swapped"], [6, "added"]), 6)).toEqual(NO_NOTES);
  });
  it("keeps something added beside the word's own mark", () => {
    expect(mark([1, "added"], [1, "misread"]).marks.map(({ kind }) => kind)).toEqual(["misread", "added"]);
  });
  it("marks nothing outside the text, and swaps nothing in a text of one word", () => {
    expect(toggleMark(NO_NOTES, 11, "misread", 11)).toBe(NO_NOTES);
    expect(toggleMark(NO_NOTES, 0, "swapped", 1)).toBe(NO_NOTES);
  });
});

/** Marks far enough apart that the alignment has no other reading of them, on words that differ. */
const sparse = fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.constantFrom(...MARK_KINDS)), {
  selector: ([word]) => word,
  maxLength: 6,
});

it("is scored as it was marked", () => {
  const text = Array.from(
    { length: 41 },
    (_, place) => `w${String.fromCharCode(97 + (place % 26))}${String(place)}x`,
  );
  const words = splitReadingWords(text.join(" "));
  fc.assert(
    fc.property(sparse, (chosen) => {
      const notes = chosen.reduce(
        (so, [word, kind]) => toggleMark(so, 4 * word + 1, kind, words.length),
        NO_NOTES,
      );
      const score = scoreReading(text.join(" "), formatHeard(words, notes));
      const times = (kind: MarkKind): number => chosen.filter(([, each]) => each === kind).length;
      expect(score).toMatchObject({
        words: 41,
        misread: times("misread"),
        leftOut: times("left out") + times("told"),
        swapped: 2 * times("swapped"),
        added: times("added"),
        told: times("told"),
      });
      expect(score.miscues.filter(({ kind }) => kind === "self-corrected")).toHaveLength(
        times("self-corrected"),
      );
    }),
  );
});
