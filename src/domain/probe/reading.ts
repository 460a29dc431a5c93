import { alignSequences, EDIT, type AlignmentStep } from "./alignment";
import { parseHeard, type HeardItem } from "./heard";
import { splitReadingWords, type ReadingWord } from "./reading-words";

/** What can happen to a word that is read aloud. The first four lower the count of words read correctly. */
export const MISCUE_KINDS = [
  "misread",
  "left out",
  "swapped",
  "told",
  "added",
  "repeated",
  "self-corrected",
] as const;
export type MiscueKind = (typeof MISCUE_KINDS)[number];

/** One departure from the text. */
export interface Miscue {
  /** the word's place in the text from 1; for something added, of the word that it follows (0 before the first) */
  readonly position: number;
  /** "" for something added */
  readonly expected: string;
  /** "" for something left out */
  readonly heard: string;
  readonly kind: MiscueKind;
}

/** A reading scored. `words = correct + misread + leftOut + swapped`. */
export interface ReadingScore {
  /** words attempted: all expected ones, or up to the last aligned one where the attempt stopped */
  readonly words: number;
  readonly correct: number;
  /** another word came, told after a wrong try included */
  readonly misread: number;
  /** no word came, told after the wait included */
  readonly leftOut: number;
  /** words of swapped pairs, two a pair: each is an error */
  readonly swapped: number;
  /** words heard that the text does not have, repetitions included; never an error */
  readonly added: number;
  /** told after the wait; each is among `misread` or `leftOut` */
  readonly told: number;
  readonly miscues: readonly Miscue[];
}

/**
 * Scores a reading: the words of a text against the words heard, by optimal string alignment.
 *
 * Errors: misread, left out (each word of a skipped line), told after the wait, each word of a swapped pair. Not
 * errors: words added, repetitions, self-corrections.
 *
 * Source: US Department of Education, "Monitoring Reading" slides (archived), rules 1–12; alignment agrees with the
 * unit-cost cases of Morris, Maier & Green 2004.
 *
 * @param expected - the text as printed
 * @param heard - the response as noted, with the marks of {@link parseHeard}
 */
export function scoreReading(expected: string, heard: string): ReadingScore {
  const words = splitReadingWords(expected);
  const { items, stopped } = parseHeard(heard, new Set(words.map(({ key }) => key)));
  const { steps, covered } = alignSequences(
    words.map(({ key }) => key),
    // A mark is like no word.
    items.map((item) => (item.kind === "word" ? item.word.key : ` ${item.kind}`)),
    {
      openEnd: stopped,
      // One more than an edit: a last word misread was attempted, not added.
      extra: (place) => (items[place]?.kind === "word" ? EDIT + 1 : 1),
      // A self-correction may stand for its word (no error), a telling for a word that never came (an error); where
      // a word can take that place instead, it does.
      ...(items.some(({ kind }) => kind === "self-corrected") && {
        replace: (_: number, place: number) => (items[place]?.kind === "self-corrected" ? 2 : EDIT),
      }),
    },
  );
  return countMiscues(listMiscues(words, items, steps), covered);
}

function listMiscues(
  words: readonly ReadingWord[],
  items: readonly HeardItem[],
  steps: readonly AlignmentStep[],
): Miscue[] {
  const miscues: Miscue[] = [];
  const shown = (place: number): string => words[place]?.shown ?? "";
  const said = (place: number): string => {
    const item = items[place];
    return item?.kind === "word"
      ? item.word.shown
      : item?.kind === "self-corrected"
        ? (item.tried?.shown ?? "")
        : "";
  };
  let position = 0;
  /** the place among the items of the word heard just before, where that word was paired */
  let paired = -1;
  for (const step of steps) {
    switch (step.kind) {
      case "same":
        position = step.first + 1;
        paired = step.second;
        break;
      case "missing":
        position = step.first + 1;
        miscues.push({ position, expected: shown(step.first), heard: "", kind: "left out" });
        break;
      case "swapped":
        step.first.forEach((place, which) => {
          position = place + 1;
          miscues.push({
            position,
            expected: shown(place),
            heard: said(step.second[which] ?? -1),
            kind: "swapped",
          });
        });
        paired = step.second[1];
        break;
      case "replaced": {
        position = step.first + 1;
        paired = step.second;
        const kind = items[step.second]?.kind;
        miscues.push({
          position,
          expected: shown(step.first),
          heard: said(step.second),
          kind: kind === "word" || kind === undefined ? "misread" : kind,
        });
        break;
      }
      case "extra":
        noteExtra(step.second);
        break;
      case "rewritten":
        throw new RangeError("words are never rewritten in runs");
    }
  }
  return miscues;

  function noteExtra(place: number): void {
    const item = items[place];
    if (item === undefined) return;
    if (item.kind === "told") {
      // It speaks of the word heard just before it, if that word belongs to the text.
      if (paired !== place - 1 || position === 0) return;
      const before = miscues.at(-1);
      if (before?.position === position && before.kind === "misread") miscues.pop();
      miscues.push({
        position,
        expected: shown(position - 1),
        heard: before?.position === position && before.kind === "misread" ? before.heard : "",
        kind: "told",
      });
      return;
    }
    if (item.kind === "self-corrected") {
      // The corrected word comes next.
      miscues.push({
        position: position + 1,
        expected: shown(position),
        heard: said(place),
        kind: item.kind,
      });
      return;
    }
    miscues.push({
      position,
      expected: "",
      heard: item.word.shown,
      kind: isRepetition(place) ? "repeated" : "added",
    });
  }

  /** Whether a word heard only says again what stands within the few words around it. */
  function isRepetition(place: number): boolean {
    const item = items[place];
    if (item?.kind !== "word") return false;
    const near = [...items.slice(Math.max(0, place - 4), place), ...items.slice(place + 1, place + 5)];
    return near.some((other) => other.kind === "word" && other.word.key === item.word.key);
  }
}

function countMiscues(miscues: readonly Miscue[], words: number): ReadingScore {
  const count = (wanted: (miscue: Miscue) => boolean): number => miscues.filter(wanted).length;
  const misread = count(({ kind, heard }) => kind === "misread" || (kind === "told" && heard !== ""));
  const leftOut = count(({ kind, heard }) => kind === "left out" || (kind === "told" && heard === ""));
  const swapped = count(({ kind }) => kind === "swapped");
  return {
    words,
    correct: words - misread - leftOut - swapped,
    misread,
    leftOut,
    swapped,
    added: count(({ kind }) => kind === "added" || kind === "repeated"),
    told: count(({ kind }) => kind === "told"),
    miscues,
  };
}
