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

/** Alignments of stretches met before; emptied when full, so that its size is bounded. */
const STRETCHES_KEPT = 20_000;
const alignedStretches = new Map<string, readonly Piece[] | undefined>();

/**
 * The signs of a text in order, with their places: contractions, letters, digits, punctuation and indicators;
 * white space is left out. The text is in Unified English Braille, contracted or not.
 *
 * Each group of print and cells that the engine reports is aligned by itself; where one cannot be (a rule of the
 * engine that reaches across groups) its whole word is, and a word that still cannot be aligned gives no piece.
 */
export const readPieces = (transcription: Transcription): Piece[] => {
  const pieces: Piece[] = [];
  for (const word of spansByWord(transcription)) {
    const ofGroups = alignGroups(transcription, word);
    const aligned = ofGroups ?? alignGroups(transcription, [hull(word)]);
    if (aligned !== undefined) for (const piece of aligned) pieces.push(piece);
  }
  return pieces;
};

const isWhiteSpace = (character: string): boolean => character.trim() === "";

/** The spans of each word: those between spans that hold only white space. */
const spansByWord = ({ print, spans }: Transcription): Span[][] => {
  const words: Span[][] = [];
  let word: Span[] = [];
  for (const span of spans) {
    if (isWhiteSpace(print.slice(span.printStart, span.printEnd))) {
      if (word.length > 0) words.push(word);
      word = [];
    } else word.push(span);
  }
  if (word.length > 0) words.push(word);
  return words;
};

const hull = (spans: readonly Span[]): Span => ({
  printStart: spans[0]?.printStart ?? 0,
  cellStart: spans[0]?.cellStart ?? 0,
  printEnd: spans.at(-1)?.printEnd ?? 0,
  cellEnd: spans.at(-1)?.cellEnd ?? 0,
});

const alignGroups = (transcription: Transcription, spans: readonly Span[]): Piece[] | undefined => {
  const pieces: Piece[] = [];
  for (const span of spans) {
    const letter = readLetter(transcription, span);
    if (letter !== undefined) {
      pieces.push({ sign: letter, ...span });
      continue;
    }
    const aligned = alignGroup(transcription, span);
    if (aligned === undefined) return undefined;
    for (const piece of aligned) {
      pieces.push({
        sign: piece.sign,
        printStart: piece.printStart + span.printStart,
        printEnd: piece.printEnd + span.printStart,
        cellStart: piece.cellStart + span.cellStart,
        cellEnd: piece.cellEnd + span.cellStart,
      });
    }
  }
  return pieces;
};

const lettersByCharacter = new Map(
  LETTERS.flatMap((letter) => [[letter.name, letter] as const, [letter.name.toUpperCase(), letter] as const]),
);

/** Most groups are one letter and its cell, which needs no alignment. */
const readLetter = ({ print, cells }: Transcription, span: Span): PlainSign | undefined => {
  if (span.printEnd - span.printStart !== 1 || span.cellEnd - span.cellStart !== 1) return undefined;
  const letter = lettersByCharacter.get(print.charAt(span.printStart));
  return letter?.cells === cells.charAt(span.cellStart) ? letter : undefined;
};

const alignGroup = (transcription: Transcription, span: Span): readonly Piece[] | undefined => {
  const print = lowerCase(transcription.print.slice(span.printStart, span.printEnd));
  const cells = transcription.cells.slice(span.cellStart, span.cellEnd);
  const letterBefore = isLetter(transcription.print.charAt(span.printStart - 1));
  const letterAfter = isLetter(transcription.print.charAt(span.printEnd));
  const key = `${print}\n${cells}${letterBefore ? "<" : ""}${letterAfter ? ">" : ""}`;
  const known = alignedStretches.get(key);
  if (known !== undefined || alignedStretches.has(key)) return known;
  const aligned = alignStretch({ print, cells, letterBefore, letterAfter });
  if (alignedStretches.size >= STRETCHES_KEPT) alignedStretches.clear();
  alignedStretches.set(key, aligned);
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
  for (const { sign, ...place } of readPieces(transcription)) {
    if (isContraction(sign)) uses.push({ contraction: sign, ...place });
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
