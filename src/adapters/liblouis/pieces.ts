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

/**
 * A line split at its spaces, so that each word can be looked up. Exact for the UEB tables except in capitals
 * passages, whose indicators depend on the neighbouring words: a run of three or more words without a lower-case
 * letter stays one piece, words without letters inside it or after it included.
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
  return UPPER.test(text) ? joinPassages(text, pieces) : pieces;
};

const joinPassages = (text: string, pieces: readonly Piece[]): Piece[] => {
  const joined: Piece[] = [];
  let index = 0;
  while (index < pieces.length) {
    const run = measureRun(text, pieces, index);
    if (run.passage) {
      joined.push({ start: at(pieces, index).start, end: at(pieces, run.end - 1).end, kind: "passage" });
    } else joined.push(...pieces.slice(index, run.end));
    index = run.end;
  }
  return joined;
};

/** The run of words without a lower-case letter that begins here; one piece where there is none. */
const measureRun = (text: string, pieces: readonly Piece[], first: number): { end: number; passage: boolean } => {
  let end = first + 1;
  let words = 0;
  let capitals = 0;
  if (at(pieces, first).kind === "blank") return { end, passage: false };
  for (let index = first; index < pieces.length; index += 1) {
    const piece = at(pieces, index);
    if (piece.kind === "blank") continue;
    const word = text.slice(piece.start, piece.end);
    if (LOWER.test(word)) break;
    words += 1;
    if (UPPER.test(word)) capitals += 1;
    end = index + 1;
  }
  return { end, passage: words >= PASSAGE_WORDS && capitals >= 2 };
};

const at = (pieces: readonly Piece[], index: number): Piece => {
  const piece = pieces[index];
  if (piece === undefined) throw new RangeError(`no piece ${index}`);
  return piece;
};
