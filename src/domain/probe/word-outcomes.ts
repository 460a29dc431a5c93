import type { MiscueKind, ReadingScore } from "./reading";
import { splitReadingWords, type PlacedWord } from "./reading-words";

/** What became of a word of the text. */
export type WordOutcome =
  "correct" | "not attempted" | Extract<MiscueKind, "misread" | "left out" | "swapped" | "told">;

/** A word of the text and what became of it. */
export interface ReadWord {
  readonly word: PlacedWord;
  readonly outcome: WordOutcome;
  /** what came in its place; "" where nothing did or the word is correct */
  readonly heard: string;
}

/**
 * What became of each word of a text. A self-corrected word is correct; words added or repeated are none of the text.
 *
 * @param expected - the text that was scored
 * @param score - the same text's score
 * @returns one entry a word of the text, in order; those after the attempt's end are `not attempted`
 */
export const listOutcomes = (expected: string, score: ReadingScore): readonly ReadWord[] => {
  const outcomes: ReadWord[] = splitReadingWords(expected).map((word, place) => ({
    word,
    outcome: place < score.words ? "correct" : "not attempted",
    heard: "",
  }));
  for (const { position, kind, heard } of score.miscues) {
    const at = outcomes[position - 1];
    if (at === undefined || kind === "added" || kind === "repeated" || kind === "self-corrected") continue;
    outcomes[position - 1] = { word: at.word, outcome: kind, heard };
  }
  return outcomes;
};

/**
 * The part of a text that was attempted: from its beginning to the end of the last word attempted, every stretch of
 * white space one space.
 *
 * @param words - words attempted, as {@link ReadingScore.words} counts them
 */
export const attemptedText = (expected: string, words: number): string => {
  const last = splitReadingWords(expected)[words - 1];
  if (last === undefined) return "";
  const end = last.start + last.shown.length;
  return expected.normalize("NFC").slice(0, end).trim().replace(/\s+/gu, " ");
};
