import type { Sign } from "../contraction/sign";
import type { TaughtSigns } from "../contraction/taught";
import type { WordTable } from "../contraction/word-table";
import type { RandomSource } from "../seeded-random";
import { Shelf } from "./shelf";
import { meetSigns, SIGN_PLACES } from "./sign-places";

/** What words are wanted for. */
export interface WordWish {
  /** the signs to practise; they need not be taught */
  readonly wanted: readonly Sign[];
  readonly taught: TaughtSigns;
  /** words at most */
  readonly most: number;
  /** cells a word at most */
  readonly mostCells: number;
  /** whether a word may be taken at all: a bank leaves names out */
  readonly accepts: (word: number) => boolean;
  readonly random: RandomSource;
}

/** The words chosen, or why there are none. */
export interface WordChoice {
  readonly words: readonly string[];
  /** words that use a wanted sign, are short enough, and use signs that are not taught */
  readonly blocked: number;
  /** the sign that stands in the way of most of them: alone if it is so for any, else with others */
  readonly blocking: Sign | undefined;
  /** words that use a wanted sign and are too long, whatever else they use */
  readonly tooLong: number;
}

/**
 * Words that use a wanted sign and otherwise only known ones, so chosen that each wanted sign is met about equally
 * often, and each about equally often as a whole word, at the start, in the middle and at the end, as far as there
 * are such words: each step takes a word for the sign met least so far, in its place met least so far.
 *
 * Among words that serve equally, chance decides, common words being likelier: in proportion to their counts.
 * Source of the draw: Efraimidis & Spirakis 2006, Information Processing Letters 97(5).
 */
export const chooseWords = (table: WordTable, wish: WordWish): WordChoice => {
  const marks = markSigns(table, wish);
  const { candidates, ...obstacles } = findCandidates(table, wish, marks);
  const shelves = fillShelves(table, candidates, marks, wish);
  return { words: takeInTurns(table, shelves, marks, wish.most), ...obstacles };
};

interface SignMarks {
  /** 1 for the wanted signs of the palette */
  readonly isWanted: Uint8Array;
  /** 1 for the signs that may stand in a word */
  readonly isAllowed: Uint8Array;
}

const markSigns = ({ palette }: WordTable, { wanted, taught }: WordWish): SignMarks => {
  const names = new Set(wanted.map(({ name }) => name));
  const isWanted = Uint8Array.from(palette, ({ name }) => (names.has(name) ? 1 : 0));
  const isAllowed = Uint8Array.from(palette, (sign) => (names.has(sign.name) || taught.knows(sign) ? 1 : 0));
  return { isWanted, isAllowed };
};

const findCandidates = (
  table: WordTable,
  { mostCells, accepts }: WordWish,
  { isWanted, isAllowed }: SignMarks,
): { readonly candidates: number[] } & Omit<WordChoice, "words"> => {
  const { size, signs, starts, cells, palette } = table;
  const candidates: number[] = [];
  const alone = new Uint32Array(palette.length);
  const together = new Uint32Array(palette.length);
  let [blocked, tooLong] = [0, 0];
  for (let word = 0; word < size; word++) {
    let serves = false;
    let strangers: number[] | undefined;
    for (let at = starts[word] ?? 0; at < (starts[word + 1] ?? 0); at++) {
      const sign = signs[at] ?? 0;
      if (isWanted[sign] === 1) serves = true;
      else if (isAllowed[sign] === 0 && strangers?.includes(sign) !== true) (strangers ??= []).push(sign);
    }
    if (!serves || !accepts(word)) continue;
    if ((cells[word] ?? 0) > mostCells) tooLong++;
    else if (strangers === undefined) candidates.push(word);
    else {
      blocked++;
      const tally = strangers.length === 1 ? alone : together;
      for (const sign of strangers) tally[sign] = (tally[sign] ?? 0) + 1;
    }
  }
  return { candidates, blocked, tooLong, blocking: palette[mostOf(alone) ?? mostOf(together) ?? -1] };
};

/** The place of the largest number, the first of several; undefined where all are 0. */
const mostOf = (numbers: Uint32Array): number | undefined => {
  let best: number | undefined;
  for (const [place, number] of numbers.entries()) {
    if (number > (best === undefined ? 0 : (numbers[best] ?? 0))) best = place;
  }
  return best;
};

const shelfOf = (sign: number, place: number): number => sign * SIGN_PLACES.length + place;

/** A shelf for each sign in each place; a word stands on all that it serves. */
const fillShelves = (
  table: WordTable,
  candidates: readonly number[],
  { isWanted }: SignMarks,
  { most, random }: WordWish,
): [number, Shelf][] => {
  const shelves: (Shelf | undefined)[] = [];
  for (const word of candidates) {
    const key = -Math.log(1 - random()) / (table.counts[word] ?? 1);
    meetSigns(table, word, isWanted, (sign, place) => {
      (shelves[shelfOf(sign, place)] ??= new Shelf(most)).add(word, key);
    });
  }
  return shelves.flatMap((shelf, place) => (shelf === undefined ? [] : [[place, shelf]]));
};

const takeInTurns = (
  table: WordTable,
  shelves: readonly (readonly [number, Shelf])[],
  { isWanted }: SignMarks,
  most: number,
): string[] => {
  const taken = new Set<number>();
  const metInPlace = new Map<number, number>();
  const met = new Uint32Array(table.palette.length);
  while (taken.size < most) {
    let best: { readonly word: number; readonly met: number; readonly inPlace: number } | undefined;
    for (const [key, shelf] of shelves) {
      const word = shelf.firstBut(taken);
      if (word === undefined) continue;
      const candidate = {
        word,
        met: met[Math.floor(key / SIGN_PLACES.length)] ?? 0,
        inPlace: metInPlace.get(key) ?? 0,
      };
      if (
        best === undefined ||
        candidate.met < best.met ||
        (candidate.met === best.met && candidate.inPlace < best.inPlace)
      )
        best = candidate;
    }
    if (best === undefined) break;
    taken.add(best.word);
    meetSigns(table, best.word, isWanted, (sign, place) => {
      const key = shelfOf(sign, place);
      metInPlace.set(key, (metInPlace.get(key) ?? 0) + 1);
      met[sign] = (met[sign] ?? 0) + 1;
    });
  }
  return [...taken].map((word) => table.word(word));
};
