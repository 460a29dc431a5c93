/**
 * A stretch of a line that is translated by itself; half-open. A blank is one space; an opening is punctuation
 * that opens a passage; marks are part of a long row of punctuation.
 */
export interface Piece {
  readonly start: number;
  readonly end: number;
  readonly kind: "blank" | "word" | "opening" | "passage" | "marks";
}

/** Consecutive words in capitals that make a capitals passage. Source: UEB 2013 section 8.5.1 (from memory). */
export const PASSAGE_WORDS = 3;
const LOWER = /\p{Ll}/u;
const UPPER = /\p{Lu}/u;
const LETTER_OR_DIGIT = /[\p{L}0-9]/u;
/** Quotation marks, brackets and dashes that may open a passage. */
const OPENING = /^["\u201c\u2018'([{\u2013-]+(?=[\p{L}0-9])/u;
const NEEDS_CONTEXT = /["\p{Lu}]/u;

/**
 * A line split at its spaces, so that each word can be looked up. Exact for the UEB tables, because only two
 * things there depend on other words, and these stay one piece with the words that they depend on:
 * the indicators of a capitals passage, and the direction of a straight quotation mark beside no letter or digit.
 * What opens a capitals passage is a piece of its own, because the engine sees no passage behind it:
 * `"GUY GOOD OVER"` would come out as three words in capitals.
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
    pushWord(pieces, text, start, end);
    start = end;
  }
  return NEEDS_CONTEXT.test(text) ? joinDependent(text, pieces) : pieces;
};

/** Marks in a row without a letter or digit; longer runs with a quotation mark take the engine cubic time. */
const LONGEST_MARKS = 24;
const MARKS = new RegExp(`[^\\p{L}0-9]{${LONGEST_MARKS + 1},}`, "gu");

/** A word is one piece, unless quotation marks stand in a long row of marks: the row is cut, its marks have no side. */
const pushWord = (pieces: Piece[], text: string, start: number, end: number): void => {
  if (end - start <= LONGEST_MARKS || !text.slice(start, end).includes('"')) {
    pieces.push({ start, end, kind: "word" });
    return;
  }
  let from = start;
  for (const row of text.slice(start, end).matchAll(MARKS)) {
    const rowStart = start + row.index;
    if (rowStart > from) pieces.push({ start: from, end: rowStart, kind: "word" });
    const rowEnd = rowStart + row[0].length;
    for (from = rowStart; from < rowEnd; from += LONGEST_MARKS) {
      pieces.push({ start: from, end: Math.min(from + LONGEST_MARKS, rowEnd), kind: "marks" });
    }
    from = rowEnd;
  }
  if (from < end) pieces.push({ start: from, end, kind: "word" });
};

/** A line in as few pieces as can be: whole, but for what opens a capitals passage. */
export const splitAtOpenings = (text: string): Piece[] => {
  const pieces: Piece[] = [];
  let start = 0;
  for (const piece of splitIntoPieces(text)) {
    if (piece.kind !== "opening" && piece.kind !== "marks") continue;
    if (piece.start > start) pieces.push({ start, end: piece.start, kind: "passage" });
    pieces.push(piece);
    start = piece.end;
  }
  pieces.push({ start, end: text.length, kind: "passage" });
  return pieces;
};

/** Joins the pieces of every stretch whose words depend on each other. */
const joinDependent = (text: string, pieces: readonly Piece[]): Piece[] => {
  const words: string[] = [];
  /** Where in `pieces` each word stands. */
  const places: number[] = [];
  for (const [index, piece] of pieces.entries()) {
    if (piece.kind === "blank" || piece.kind === "marks") continue;
    words.push(text.slice(piece.start, piece.end));
    places.push(index);
  }
  const joined: Piece[] = [];
  let next = 0;
  for (const { first, last, opening } of mergeStretches([
    ...findCapitalRuns(words),
    ...findLoneQuotes(words),
  ])) {
    const from = places[first] ?? 0;
    const to = places[last] ?? from;
    const start = pieces[from]?.start ?? 0;
    joined.push(...pieces.slice(next, from));
    if (opening > 0) joined.push({ start, end: start + opening, kind: "opening" });
    joined.push({ start: start + opening, end: pieces[to]?.end ?? text.length, kind: "passage" });
    next = to + 1;
  }
  joined.push(...pieces.slice(next));
  return joined;
};

/** First and last word of a stretch, both included, and how many characters of its first word only open it. */
interface Stretch {
  readonly first: number;
  readonly last: number;
  readonly opening: number;
}

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
    for (; end < words.length && !LOWER.test(words[end] ?? ""); end += 1)
      if (UPPER.test(words[end] ?? "")) capitals += 1;
    if (end - first >= PASSAGE_WORDS && capitals > 0) {
      const opening = OPENING.exec(words[first] ?? "")?.[0].length ?? 0;
      runs.push({
        first: opening > 0 ? first : Math.max(0, first - 1),
        last: Math.min(end, words.length - 1),
        opening,
      });
    }
    first = end + 1;
  }
  return runs;
};

/** Words between a lone quotation mark and the nearest letter; behind more, the mark has no side to be on. */
const FARTHEST_LETTER = 10;

/** Words with a straight quotation mark and no letter or digit, with all words up to the nearest that has one. */
const findLoneQuotes = (words: readonly string[]): Stretch[] => {
  const stretches: Stretch[] = [];
  const isBare = (index: number): boolean => !LETTER_OR_DIGIT.test(words[index] ?? "");
  for (let index = 0; index < words.length; index += 1) {
    if (!(words[index] ?? "").includes('"') || !isBare(index)) continue;
    let first = index;
    while (first > 0 && isBare(first) && index - first < FARTHEST_LETTER) first -= 1;
    let last = index;
    while (last < words.length - 1 && isBare(last) && last - index < FARTHEST_LETTER) last += 1;
    if (isBare(first) && isBare(last) && last - first >= FARTHEST_LETTER) continue;
    stretches.push({ first, last, opening: 0 });
  }
  return stretches;
};

/** Stretches in order, those that share a word made one. */
const mergeStretches = (stretches: readonly Stretch[]): Stretch[] => {
  const merged: Stretch[] = [];
  for (const stretch of [...stretches].sort((one, other) => one.first - other.first)) {
    const previous = merged.at(-1);
    if (previous === undefined || stretch.first > previous.last) merged.push(stretch);
    else merged[merged.length - 1] = { ...previous, last: Math.max(previous.last, stretch.last) };
  }
  return merged;
};
