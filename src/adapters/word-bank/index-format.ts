/**
 * The word bank's file: for each word its signs, from which its print and its cells follow, its syllables and its count.
 *
 * All numbers little-endian. `CWB2`; 4 bytes check of the palette; 4 bytes number of words; 4 bytes number of signs;
 * one byte a word: how many signs it has; one byte a word: syllables, high bit set where a dictionary has the word; the counts, most frequent word first, as the
 * first count and then each drop to the next, seven bits a byte, high bit set where another follows; one byte a sign:
 * its place in the palette.
 */
import { CONTRACTIONS } from "../../domain/contraction/inventory";
import { PLAIN_SIGNS, type Sign } from "../../domain/contraction/sign";
import { printOf } from "../../domain/contraction/word-table";

/** The signs that words of the bank use: contractions, then letters, digits, punctuation, indicators. */
export const BANK_PALETTE: readonly Sign[] = [...CONTRACTIONS, ...PLAIN_SIGNS];

/** One word as it goes into the file. */
export interface IndexedWord {
  /** places in the palette */
  readonly signs: readonly number[];
  /** at most 127 */
  readonly syllables: number;
  /** whether a dictionary has the word */
  readonly isListed: boolean;
  readonly count: number;
}

/** What the file holds, in columns. */
export interface WordIndex {
  readonly size: number;
  readonly signs: Uint8Array;
  /** `size + 1` places in `signs` */
  readonly starts: Uint32Array;
  readonly counts: Uint32Array;
  readonly syllables: Uint8Array;
  /** 1 for the words that a dictionary has */
  readonly listed: Uint8Array;
}

const MARK = 0x3242_5743;
const HEADER_BYTES = 16;
const LISTED = 0x80;

/** A sum over the palette's names (FNV-1a), so that a file of another order of signs is refused. */
const paletteCheck = (): number => {
  let sum = 0x811c_9dc5;
  for (const { name, cells } of BANK_PALETTE) {
    for (const character of `${name}${cells}\n`)
      sum = Math.imul(sum ^ (character.codePointAt(0) ?? 0), 0x0100_0193);
  }
  return sum >>> 0;
};

/**
 * Writes the file.
 *
 * @param words - most frequent first
 * @throws {RangeError} where a number does not fit
 */
export const encodeIndex = (words: readonly IndexedWord[]): Uint8Array => {
  const signs = words.reduce((sum, word) => sum + word.signs.length, 0);
  const counts = encodeCounts(words.map(({ count }) => count));
  const bytes = new Uint8Array(HEADER_BYTES + 2 * words.length + counts.length + signs);
  const header = new DataView(bytes.buffer);
  for (const [place, number] of [MARK, paletteCheck(), words.length, signs].entries())
    header.setUint32(place * 4, number, true);
  let at = HEADER_BYTES;
  const put = (numbers: readonly number[]): void => {
    for (const number of numbers) {
      if (number < 0 || number > 255)
        throw new RangeError(`${number} does not fit into a byte of the word bank`);
      bytes[at++] = number;
    }
  };
  put(words.map((word) => word.signs.length));
  put(words.map(({ syllables, isListed }) => (isListed ? syllables | LISTED : syllables & ~LISTED)));
  put(counts);
  for (const word of words) put(word.signs);
  return bytes;
};

const encodeCounts = (counts: readonly number[]): number[] => {
  const bytes: number[] = [];
  let before: number | undefined;
  for (const count of counts) {
    let rest = before === undefined ? count : before - count;
    if (rest < 0) throw new RangeError("the words of the bank are to come most frequent first");
    before = count;
    for (; rest > 127; rest >>>= 7) bytes.push((rest & 127) | 128);
    bytes.push(rest);
  }
  return bytes;
};

/**
 * Reads the file.
 *
 * @throws {TypeError} where it is none, is cut short, or belongs to another build
 */
export const decodeIndex = (bytes: Uint8Array): WordIndex => {
  const header = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < HEADER_BYTES || header.getUint32(0, true) !== MARK)
    throw new TypeError("This is no word bank of Cellwright.");
  if (header.getUint32(4, true) !== paletteCheck())
    throw new TypeError("The word bank belongs to another version of Cellwright: build it again.");
  const [size, length] = [header.getUint32(8, true), header.getUint32(12, true)];
  if (bytes.length < HEADER_BYTES + 2 * size + length) throw new TypeError("The word bank is cut short.");
  const starts = new Uint32Array(size + 1);
  for (let word = 0; word < size; word++)
    starts[word + 1] = (starts[word] ?? 0) + (bytes[HEADER_BYTES + word] ?? 0);
  const { counts, end } = decodeCounts(bytes, HEADER_BYTES + 2 * size, size);
  if (end + length !== bytes.length || starts[size] !== length)
    throw new TypeError("The word bank is cut short.");
  const marked = bytes.subarray(HEADER_BYTES + size, HEADER_BYTES + 2 * size);
  return {
    size,
    starts,
    counts,
    syllables: marked.map((byte) => byte & ~LISTED),
    listed: marked.map((byte) => byte >> 7),
    signs: bytes.subarray(end),
  };
};

const decodeCounts = (
  bytes: Uint8Array,
  from: number,
  size: number,
): { counts: Uint32Array; end: number } => {
  const counts = new Uint32Array(size);
  let at = from;
  let count = 0;
  for (let word = 0; word < size; word++) {
    let number = 0;
    for (let shift = 0; ; shift += 7) {
      const byte = bytes[at++] ?? 0;
      number |= (byte & 127) << shift;
      if (byte < 128) break;
    }
    count = word === 0 ? number : count - number;
    counts[word] = count;
  }
  return { counts, end: at };
};

/** The print of signs in a row: a letter after the capital sign is a capital. */
export const printOfSigns = (signs: ArrayLike<number>, from: number, to: number): string => {
  let print = "";
  let capital = false;
  for (let at = from; at < to; at++) {
    const place = signs[at] ?? 0;
    if (place === CAPITAL) capital = true;
    else {
      const own = PRINTS[place] ?? "";
      print += capital ? own.charAt(0).toUpperCase() + own.slice(1) : own;
      capital = false;
    }
  }
  return print;
};

const PRINTS = BANK_PALETTE.map(printOf);

/** The place of the capital sign in the palette. */
export const CAPITAL = BANK_PALETTE.findIndex(({ name }) => name === "capital");
