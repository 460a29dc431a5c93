import type { Span, Transcription } from "../braille/transcription";
import { alignStretch, isLetter, type Piece } from "./alignment";
import type { Contraction } from "./inventory";
import { isContraction, LETTERS, type PlainSign } from "./sign";

/** One use of a contraction in a text: what, and where in the print and in the cells (half-open). */
export interface ContractionUse {
  readonly contraction: Contraction;
  readonly printStart: number;
  readonly printEnd: number;
  readonly cellStart: number;
  readonly cellEnd: number;
}

/** A contraction and how often a text uses it. */
export interface ContractionCount {
  readonly contraction: Contraction;
  readonly times: number;
}

/** Alignments kept of each neighbourhood; emptied when full, so that their number is bounded. */
const STRETCHES_KEPT = 10_000;

/** Alignments of stretches met before, by the letters beside them: none, before, after, both; null for none possible. */
const alignedStretches = Array.from({ length: 4 }, () => new Map<string, readonly Piece[] | null>());

/**
 * The signs of a text in order, with their places: contractions, letters, digits, punctuation and indicators;
 * white space is left out. The text is in Unified English Braille, contracted or not.
 *
 * Each group of print and cells that the engine reports is aligned by itself; where one cannot be (a rule of the
 * engine that reaches across groups) its whole word is, and a word that still cannot be aligned gives no piece.
 */
export const readPieces = (transcription: Transcription): Piece[] => {
  const { print, spans } = transcription;
  const pieces: Piece[] = [];
  let start = 0;
  for (let at = 0; at <= spans.length; at++) {
    const span = spans[at];
    if (span !== undefined && !isWhiteSpace(print, span)) continue;
    if (at > start) readWord(transcription, start, at, pieces);
    start = at + 1;
  }
  return pieces;
};

/** Whether a span holds white space only; a blank is by far the commonest. */
const isWhiteSpace = (print: string, { printStart, printEnd }: Span): boolean => {
  const first = print.charCodeAt(printStart);
  return (first <= 32 || first > 127) && print.slice(printStart, printEnd).trim() === "";
};

/** Adds the signs of one word, the spans from `start` up to `end`. */
const readWord = (transcription: Transcription, start: number, end: number, pieces: Piece[]): void => {
  const before = pieces.length;
  for (let at = start; at < end; at++) {
    const span = transcription.spans[at];
    if (span === undefined || alignGroup(transcription, span, pieces)) continue;
    pieces.length = before;
    alignGroup(transcription, hull(transcription.spans.slice(start, end)), pieces);
    return;
  }
};

const hull = (spans: readonly Span[]): Span => ({
  printStart: spans[0]?.printStart ?? 0,
  cellStart: spans[0]?.cellStart ?? 0,
  printEnd: spans.at(-1)?.printEnd ?? 0,
  cellEnd: spans.at(-1)?.cellEnd ?? 0,
});

const lettersByCharacter = new Map(
  LETTERS.flatMap((letter) => [[letter.name, letter] as const, [letter.name.toUpperCase(), letter] as const]),
);

/** Most groups are one letter and its cell, which needs no alignment. */
const readLetter = ({ print, cells }: Transcription, span: Span): PlainSign | undefined => {
  if (span.printEnd - span.printStart !== 1 || span.cellEnd - span.cellStart !== 1) return undefined;
  const letter = lettersByCharacter.get(print.charAt(span.printStart));
  return letter?.cells === cells.charAt(span.cellStart) ? letter : undefined;
};

/** Adds the signs of one group; false, and nothing added, where they do not add up to its cells. */
const alignGroup = (transcription: Transcription, span: Span, pieces: Piece[]): boolean => {
  const { printStart, printEnd, cellStart, cellEnd } = span;
  const letter = readLetter(transcription, span);
  if (letter !== undefined) {
    pieces.push({ sign: letter, printStart, printEnd, cellStart, cellEnd });
    return true;
  }
  const aligned = alignSpan(transcription, span);
  if (aligned === undefined) return false;
  for (const piece of aligned) {
    pieces.push({
      sign: piece.sign,
      printStart: piece.printStart + printStart,
      printEnd: piece.printEnd + printStart,
      cellStart: piece.cellStart + cellStart,
      cellEnd: piece.cellEnd + cellStart,
    });
  }
  return true;
};

const alignSpan = (transcription: Transcription, span: Span): readonly Piece[] | undefined => {
  const print = lowerCase(transcription.print.slice(span.printStart, span.printEnd));
  const cells = transcription.cells.slice(span.cellStart, span.cellEnd);
  const letterBefore = isLetter(transcription.print.charAt(span.printStart - 1));
  const letterAfter = isLetter(transcription.print.charAt(span.printEnd));
  const ofNeighbours = alignedStretches[(letterBefore ? 1 : 0) + (letterAfter ? 2 : 0)];
  const key = `${print}\n${cells}`;
  const known = ofNeighbours?.get(key);
  if (known !== undefined) return known ?? undefined;
  const aligned = alignStretch({ print, cells, letterBefore, letterAfter });
  if (ofNeighbours !== undefined) {
    if (ofNeighbours.size >= STRETCHES_KEPT) ofNeighbours.clear();
    ofNeighbours.set(key, aligned ?? null);
  }
  return aligned;
};

/** Small letters without change of length, which toLowerCase does not promise (İ). */
const lowerCase = (print: string): string => {
  const lower = print.toLowerCase();
  return lower.length === print.length ? lower : print.replace(/[A-Z]/g, (letter) => letter.toLowerCase());
};

/**
 * The contractions that a text uses, in order, each with its place.
 *
 * Source: the method is exact, not a search for letters: it reads the engine's cells, so that the conditions of
 * meaning and pronunciation (UEB 2013, sections 10.7, 10.10, 10.11) are those of its table.
 */
export const findUses = (transcription: Transcription): ContractionUse[] => {
  const uses: ContractionUse[] = [];
  for (const { sign, printStart, printEnd, cellStart, cellEnd } of readPieces(transcription)) {
    if (isContraction(sign)) uses.push({ contraction: sign, printStart, printEnd, cellStart, cellEnd });
  }
  return uses;
};

/** How often each contraction is used: most used first, then in the order of the inventory. */
export const countUses = (uses: readonly ContractionUse[]): ContractionCount[] => {
  const times = new Map<Contraction, number>();
  for (const { contraction } of uses) times.set(contraction, (times.get(contraction) ?? 0) + 1);
  return [...times]
    .map(([contraction, count]) => ({ contraction, times: count }))
    .sort((one, other) => other.times - one.times || one.contraction.order - other.contraction.order);
};

/** Print with the letters of each contraction in parentheses: `t(ea)(ch)`. */
export const formatBrackets = (print: string, uses: readonly ContractionUse[]): string => {
  let bracketed = "";
  let end = 0;
  for (const { printStart, printEnd } of uses) {
    bracketed += `${print.slice(end, printStart)}(${print.slice(printStart, printEnd)})`;
    end = printEnd;
  }
  return bracketed + print.slice(end);
};
