/** A stretch of a line that is translated by itself; half-open. A blank is one space. */
export interface Piece {
  readonly start: number;
  readonly end: number;
  readonly kind: "blank" | "word" | "passage";
}

/** Consecutive words in capitals that make a capitals passage. Source: UEB 2013 section 8.5.1 (from memory). */
const PASSAGE_WORDS = 3;
const LOWER = /\p{Ll}/u;
const UPPER = /\p{Lu}/u;
const LETTER_OR_DIGIT = /[\p{L}0-9]/u;
const NEEDS_CONTEXT = /["\p{Lu}]/u;

/**
 * A line split at its spaces, so that each word can be looked up. Exact for the UEB tables, because only two
 * things there depend on other words, and these stay one piece with the words that they depend on:
 * the indicators of a capitals passage, and the direction of a straight quotation mark beside no letter or digit.
 *
 * @param text - print without line breaks, every space U+0020
 * @returns pieces in order, without gap
 */
export const splitIntoPieces = (text: string): Piece[] => {
  const pieces: Piece[] = [];
  let start = 0;
  while (start < text.length) {
    if (text.charCodeAt(start) === 32) {
      pieces.push({ start, end: start + 1, kind: "blank" });
      start += 1;
      continue;
    }
    const space = text.indexOf(" ", start);
    const end = space === -1 ? text.length : space;
    pieces.push({ start, end, kind: "word" });
    start = end;
  }
  return NEEDS_CONTEXT.test(text) ? joinDependent(text, pieces) : pieces;
};

/** Joins the pieces of every stretch whose words depend on each other. */
const joinDependent = (text: string, pieces: readonly Piece[]): Piece[] => {
  const words: string[] = [];
  /** Where in `pieces` each word stands. */
  const places: number[] = [];
  for (const [index, piece] of pieces.entries()) {
    if (piece.kind === "blank") continue;
    words.push(text.slice(piece.start, piece.end));
    places.push(index);
  }
  const joined: Piece[] = [];
  let next = 0;
  for (const [first, last] of mergeStretches([...findCapitalRuns(words), ...findLoneQuotes(words)])) {
    const from = places[first] ?? 0;
    const to = places[last] ?? from;
    joined.push(...pieces.slice(next, from));
    joined.push({ start: pieces[from]?.start ?? 0, end: pieces[to]?.end ?? text.length, kind: "passage" });
    next = to + 1;
  }
  joined.push(...pieces.slice(next));
  return joined;
};

/** First and last word of a stretch, both included. */
type Stretch = readonly [first: number, last: number];

/**
 * Runs of three or more words without a lower-case letter, at least one of them with a capital, and the words
 * before and after each: the engine begins and ends a passage by what it stands between.
 */
const findCapitalRuns = (words: readonly string[]): Stretch[] => {
  const runs: Stretch[] = [];
  let first = 0;
  while (first < words.length) {
    let end = first;
    let capitals = 0;
    for (; end < words.length && !LOWER.test(words[end] ?? ""); end += 1) if (UPPER.test(words[end] ?? "")) capitals += 1;
    if (end - first >= PASSAGE_WORDS && capitals > 0) runs.push([Math.max(0, first - 1), Math.min(end, words.length - 1)]);
    first = end + 1;
  }
  return runs;
};

/** Words with a straight quotation mark and no letter or digit, with all words up to the nearest that has one. */
const findLoneQuotes = (words: readonly string[]): Stretch[] => {
  const stretches: Stretch[] = [];
  const isBare = (index: number): boolean => !LETTER_OR_DIGIT.test(words[index] ?? "");
  for (let index = 0; index < words.length; index += 1) {
    if (!(words[index] ?? "").includes('"') || !isBare(index)) continue;
    let first = index;
    while (first > 0 && isBare(first)) first -= 1;
    let last = index;
    while (last < words.length - 1 && isBare(last)) last += 1;
    stretches.push([first, last]);
    // Words between here and there are in the stretch already.
    index = Math.max(index, last - 1);
  }
  return stretches;
};

/** Stretches in order, those that share a word made one. */
const mergeStretches = (stretches: readonly Stretch[]): Stretch[] => {
  const merged: [number, number][] = [];
  for (const [first, last] of [...stretches].sort((one, other) => one[0] - other[0])) {
    const previous = merged.at(-1);
    if (previous !== undefined && first <= previous[1]) previous[1] = Math.max(previous[1], last);
    else merged.push([first, last]);
  }
  return merged;
};
