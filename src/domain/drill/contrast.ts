import { cellOf } from "../braille/cell";
import type { Sign } from "../contraction/sign";
import type { WordTable } from "../contraction/word-table";

/** Two words that differ in one thing only, so that reading one for the other shows the confusion. */
export interface ContrastPair {
  readonly first: string;
  readonly second: string;
}

/** Which words may be used, and how many pairs are wanted. */
export interface ContrastWish {
  /** whether the pupil may be given a word */
  readonly accepts: (word: number) => boolean;
  /** pairs at most */
  readonly most: number;
}

/**
 * Pairs of words that differ in one sign: one has a sign where the other has the sign it is confused with, all other
 * signs are the same (`ou` and `ow`: shout, show is none; out of `loud` and `lowd` only words come).
 *
 * @param table - the words in the code that the pupil reads
 * @returns the first word of each pair with `first`, the second with `second`; pairs whose rarer word is commoner first
 */
export const findSignContrasts = (
  table: WordTable,
  first: Sign,
  second: Sign,
  { accepts, most }: ContrastWish,
): ContrastPair[] => {
  const [one, other] = [first, second].map(({ name }) =>
    table.palette.findIndex((sign) => sign.name === name),
  );
  if (one === undefined || other === undefined || one < 0 || other < 0 || one === other) return [];
  const withOther = new Map<string, number>();
  eachWord(table, accepts, (word, signs) => {
    if (signs.includes(other)) withOther.set(String.fromCharCode(...signs), word);
  });
  const pairs: [number, number][] = [];
  eachWord(table, accepts, (word, signs) => {
    for (const [at, sign] of signs.entries()) {
      if (sign !== one) continue;
      const changed = withOther.get(
        String.fromCharCode(...signs.slice(0, at), other, ...signs.slice(at + 1)),
      );
      if (changed !== undefined) pairs.push([word, changed]);
    }
  });
  return commonestFirst(table, pairs, most);
};

/**
 * Pairs of words of as many cells that differ in one dot of one cell.
 *
 * @param dot - 1 to 6
 * @returns the first word of each pair lacks the dot, the second has it; pairs whose rarer word is commoner first
 * @throws {RangeError} where it is no dot
 */
export const findDotContrasts = (
  table: WordTable,
  dot: number,
  { accepts, most }: ContrastWish,
): ContrastPair[] => {
  if (!(dot >= 1 && dot <= 6)) throw new RangeError(`no dot ${dot} of a six-dot cell`);
  const bit = cellOf([dot]).charCodeAt(0) - cellOf([]).charCodeAt(0);
  const byCells = new Map<string, number[]>();
  eachWord(table, accepts, (word, signs) => {
    const cells = signs.map((sign) => table.palette[sign]?.cells ?? "").join("");
    const known = byCells.get(cells);
    if (known === undefined) byCells.set(cells, [word]);
    else known.push(word);
  });
  const pairs: [number, number][] = [];
  for (const [cells, words] of byCells) {
    for (let at = 0; at < cells.length; at++) {
      const cell = cells.charCodeAt(at);
      if ((cell & bit) !== 0) continue;
      const changed = byCells.get(cells.slice(0, at) + String.fromCharCode(cell | bit) + cells.slice(at + 1));
      for (const word of words) for (const partner of changed ?? []) pairs.push([word, partner]);
    }
  }
  return commonestFirst(table, pairs, most);
};

const eachWord = (
  { size, signs, starts }: WordTable,
  accepts: (word: number) => boolean,
  visit: (word: number, signs: number[]) => void,
): void => {
  for (let word = 0; word < size; word++) {
    if (accepts(word)) visit(word, [...signs.subarray(starts[word], starts[word + 1])]);
  }
};

const commonestFirst = (
  { counts, word }: WordTable,
  pairs: readonly (readonly [number, number])[],
  most: number,
): ContrastPair[] => {
  const rarer = ([one, other]: readonly [number, number]): number =>
    Math.min(counts[one] ?? 0, counts[other] ?? 0);
  return [...pairs]
    .sort((one, other) => rarer(other) - rarer(one) || one[0] - other[0] || one[1] - other[1])
    .slice(0, most)
    .map(([one, other]) => ({ first: word(one), second: word(other) }));
};
