import type { ReadingWord } from "./reading-words";

/** What a listener can mark at a word while a pupil reads, in the terms of the miscues. */
export const MARK_KINDS = ["misread", "left out", "swapped", "told", "self-corrected", "added"] as const;
export type MarkKind = (typeof MARK_KINDS)[number];

/** One mark at one word of the text. */
export interface ReadingMark {
  /** place of the word from 0; of a swapped pair the first, of something added the word that it follows */
  readonly word: number;
  readonly kind: MarkKind;
  /** what was heard instead or besides, where the listener noted it */
  readonly heard?: string;
}

/** What a listener noted of one reading. Every word without a mark was read as printed. */
export interface ReadingNotes {
  /** in the order of the words; at most one mark a word, and one of something added besides */
  readonly marks: readonly ReadingMark[];
  /** place of the last word attempted; undefined where the text was read to its end */
  readonly last?: number;
}

export const NO_NOTES: ReadingNotes = { marks: [] };

/** Stands in a response where it was not noted which other word came. */
export const UNNOTED_WORD = "(misread)";
/** Stands in a response where it was not noted which word was added. */
export const UNNOTED_ADDITION = "(added)";

/** The words that a mark covers: a swapped pair is two. */
const covers = (mark: ReadingMark, word: number): boolean =>
  mark.kind === "added" ? false : mark.word === word || (mark.kind === "swapped" && mark.word + 1 === word);

/** The mark on a word itself, that of a swapped pair included. */
export const markAt = (notes: ReadingNotes, word: number): ReadingMark | undefined =>
  notes.marks.find((mark) => covers(mark, word));

/** The mark of something added after a word. */
export const additionAfter = (notes: ReadingNotes, word: number): ReadingMark | undefined =>
  notes.marks.find((mark) => mark.kind === "added" && mark.word === word);

const ordered = (marks: readonly ReadingMark[]): readonly ReadingMark[] =>
  [...marks].sort(
    (one, other) => one.word - other.word || Number(one.kind === "added") - Number(other.kind === "added"),
  );

/**
 * Marks a word, or takes the same mark off again. Another mark on the word gives way; one of something added stays
 * beside it. A last word that is swapped was swapped with the one before it.
 *
 * @param words - how many words the text has
 */
export const toggleMark = (
  notes: ReadingNotes,
  word: number,
  kind: MarkKind,
  words: number,
): ReadingNotes => {
  if (word < 0 || word >= words) return notes;
  const there = kind === "added" ? additionAfter(notes, word) : markAt(notes, word);
  const others = notes.marks.filter((mark) => mark !== there);
  if (there?.kind === kind) return { ...notes, marks: others };
  if (kind !== "swapped") return { ...notes, marks: ordered([...others, { word, kind }]) };
  const first = word + 1 < words ? word : word - 1;
  if (first < 0) return notes;
  const free = others.filter((mark) => !covers(mark, first) && !covers(mark, first + 1));
  return { ...notes, marks: ordered([...free, { word: first, kind }]) };
};

/** Takes every mark off a word. */
export const clearMarks = (notes: ReadingNotes, word: number): ReadingNotes => ({
  ...notes,
  marks: notes.marks.filter((mark) => !covers(mark, word) && !(mark.kind === "added" && mark.word === word)),
});

/** Notes what was heard at a mark; blank text takes the note off. */
export const noteHeard = (notes: ReadingNotes, mark: ReadingMark, heard: string): ReadingNotes => ({
  ...notes,
  marks: notes.marks.map((each) => {
    if (each !== mark) return each;
    const { word, kind } = each;
    return heard.trim() === "" ? { word, kind } : { word, kind, heard: heard.trim() };
  }),
});

/** Sets the last word attempted. */
export const endAt = (notes: ReadingNotes, last: number | undefined): ReadingNotes =>
  last === undefined ? { marks: notes.marks } : { marks: notes.marks, last };

/**
 * The response as it goes into the sheet: the words as heard, `(sc)` after a corrected try, `(told)` after a word that
 * was told, `]` where the attempt ended before the text did. Marks beyond the last word attempted are left out.
 */
export const formatHeard = (words: readonly ReadingWord[], notes: ReadingNotes): string => {
  const end = Math.min(notes.last ?? words.length - 1, words.length - 1);
  const heard: string[] = [];
  for (let place = 0; place <= end; place++) {
    const shown = words[place]?.shown ?? "";
    const mark = markAt(notes, place);
    switch (mark?.kind) {
      case undefined:
      case "added":
        heard.push(shown);
        break;
      case "misread":
        heard.push(mark.heard ?? UNNOTED_WORD);
        break;
      case "left out":
        break;
      case "told":
        heard.push(mark.heard === undefined ? `${shown} (told)` : `${mark.heard} (told)`);
        break;
      case "self-corrected":
        heard.push(`${mark.heard ?? UNNOTED_WORD} (sc) ${shown}`);
        break;
      case "swapped": {
        // The second of a pair whose first is the last word attempted was not attempted: nothing was swapped.
        if (mark.word === place && place + 1 > end) heard.push(shown);
        else heard.push(words[mark.word === place ? place + 1 : place - 1]?.shown ?? "");
        break;
      }
    }
    const addition = additionAfter(notes, place);
    if (addition !== undefined) heard.push(addition.heard ?? UNNOTED_ADDITION);
  }
  return `${heard.join(" ")}${end < words.length - 1 ? " ]" : ""}`;
};
