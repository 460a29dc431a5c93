/**
 * Which sign each part of a text became, found exactly: of all ways to lay signs over the print and its cells, the
 * one of minimum cost. Capitals and grade 1 indicators cost 0, a letter 1, a contraction 1 if its print and its
 * cells both match and its place in the word allows it.
 */
import { CONTRACTIONS, type Contraction } from "./inventory";
import { DIGITS, INDICATORS, LETTERS, PUNCTUATION, type PlainSign, type Sign } from "./sign";

/** A sign with the print and the cells that it takes up, half-open, counted from the start of the text. */
export interface Piece {
  readonly sign: Sign;
  readonly printStart: number;
  readonly printEnd: number;
  readonly cellStart: number;
  readonly cellEnd: number;
}

/** A stretch of print with its cells and what stands around it. */
export interface Stretch {
  /** small letters */
  readonly print: string;
  readonly cells: string;
  /** whether a letter stands directly before and after it */
  readonly letterBefore: boolean;
  readonly letterAfter: boolean;
}

/** Keeps an indicator from being read as two, and another character from swallowing its neighbour's cells. */
const SLIGHT = 1 / 1024;

/** No character of the code takes more cells than this. */
const MOST_CELLS_OF_A_CHARACTER = 8;

/** Whether a character belongs to a run of letters. */
export const isLetter = (character: string): boolean =>
  (character >= "a" && character <= "z") ||
  (character >= "A" && character <= "Z") ||
  (character > "\u007f" && /[\p{L}\p{M}]/u.test(character));

const contractionsByInitial = new Map<string, Contraction[]>();
for (const contraction of CONTRACTIONS) {
  const initial = contraction.print.charAt(0);
  contractionsByInitial.set(initial, [...(contractionsByInitial.get(initial) ?? []), contraction]);
}

const plainByCharacter = new Map<string, PlainSign[]>();
for (const sign of [...LETTERS, ...DIGITS, ...PUNCTUATION]) {
  for (const print of sign.prints)
    plainByCharacter.set(print, [...(plainByCharacter.get(print) ?? []), sign]);
}

/** A step of the alignment: a sign, the characters and the cells it takes, its cost. */
interface Step {
  readonly sign: Sign;
  readonly print: number;
  readonly cells: number;
  readonly cost: number;
}

/**
 * The signs of a stretch in order, or undefined where none of the inventory's signs add up to its cells.
 * @returns pieces counted from the start of the stretch
 */
export const alignStretch = (stretch: Stretch): readonly Piece[] | undefined => {
  const { print, cells } = stretch;
  const width = cells.length + 1;
  const size = (print.length + 1) * width;
  const costs = new Float64Array(size).fill(Infinity);
  const best = new Array<Step | undefined>(size);
  costs[size - 1] = 0;
  for (let at = print.length; at >= 0; at--) {
    for (let cell = cells.length; cell >= 0; cell--) {
      const here = at * width + cell;
      for (const step of stepsFrom(stretch, at, cell)) {
        const cost = step.cost + (costs[here + step.print * width + step.cells] ?? Infinity);
        if (cost < (costs[here] ?? Infinity)) {
          costs[here] = cost;
          best[here] = step;
        }
      }
    }
  }
  return costs[0] === Infinity ? undefined : walk(best, width, size - 1);
};

const walk = (best: readonly (Step | undefined)[], width: number, end: number): Piece[] => {
  const pieces: Piece[] = [];
  let here = 0;
  while (here < end) {
    const step = best[here];
    if (step === undefined) throw new RangeError("The alignment has a gap.");
    const printStart = Math.floor(here / width);
    const cellStart = here % width;
    const [printEnd, cellEnd] = [printStart + step.print, cellStart + step.cells];
    pieces.push({ sign: step.sign, printStart, printEnd, cellStart, cellEnd });
    here += step.print * width + step.cells;
  }
  return pieces;
};

const stepsFrom = (stretch: Stretch, at: number, cell: number): Step[] => {
  const { print, cells } = stretch;
  const steps: Step[] = [];
  for (const sign of INDICATORS) {
    if (cells.startsWith(sign.cells, cell))
      steps.push({ sign, print: 0, cells: sign.cells.length, cost: SLIGHT });
  }
  if (at === print.length) return steps;
  const character = print.charAt(at);
  for (const sign of contractionsByInitial.get(character) ?? []) {
    if (print.startsWith(sign.print, at) && cells.startsWith(sign.cells, cell) && fits(sign, stretch, at)) {
      steps.push({ sign, print: sign.print.length, cells: sign.cells.length, cost: 1 });
    }
  }
  const plain = plainByCharacter.get(character) ?? [];
  for (const sign of plain) {
    if (cells.startsWith(sign.cells, cell)) steps.push({ sign, print: 1, cells: sign.cells.length, cost: 1 });
  }
  if (plain[0] === undefined || plain[0].kind === "punctuation") steps.push(...otherSteps(stretch, at, cell));
  return steps;
};

/** A wordsign is a whole run of letters; `be` and `in` as groupsigns never are (section 10.5, 10.6). */
const fits = (sign: Contraction, stretch: Stretch, at: number): boolean => {
  const end = at + sign.print.length;
  const before = at === 0 ? stretch.letterBefore : isLetter(stretch.print.charAt(at - 1));
  const after = end === stretch.print.length ? stretch.letterAfter : isLetter(stretch.print.charAt(end));
  const whole = !before && !after;
  if (sign.places.length === 1 && sign.places[0] === "whole") return whole;
  return !(whole && (sign.name === "be groupsign" || sign.name === "in groupsign"));
};

/** A character outside the tables stands for itself and takes the cells that are left for it. */
const otherSteps = ({ print, cells }: Stretch, at: number, cell: number): Step[] => {
  const length = (print.codePointAt(at) ?? 0) > 0xffff ? 2 : 1;
  const character = print.slice(at, at + length);
  const steps: Step[] = [];
  for (let taken = 0; taken <= Math.min(MOST_CELLS_OF_A_CHARACTER, cells.length - cell); taken++) {
    const sign = otherSign(character, cells.slice(cell, cell + taken));
    steps.push({ sign, print: length, cells: taken, cost: 1 + SLIGHT * (2 + taken) });
  }
  return steps;
};

/** The sign of a character that no table holds: a letter with an accent, or a symbol among the punctuation. */
const otherSign = (character: string, cells: string): PlainSign => ({
  name: character,
  prints: [character],
  cells,
  dots: "",
  kind: isLetter(character) ? "letter" : "punctuation",
  section: "3",
  aliases: [],
});
