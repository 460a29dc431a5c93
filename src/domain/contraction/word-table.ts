import { LETTERS, PUNCTUATION, type Sign } from "./sign";
import type { WordSigns } from "./passage";

/**
 * Words with their signs in columns, so that a hundred thousand of them are gone through in milliseconds.
 *
 * The signs of word `i` are `palette[signs[k]]` for `k` from `starts[i]` up to, not including, `starts[i + 1]`: in
 * order, repeated as used.
 */
export interface WordTable {
  /** how many words */
  readonly size: number;
  /** every sign that a word may use; a word holds their places in it */
  readonly palette: readonly Sign[];
  readonly signs: Uint8Array | Uint16Array;
  /** `size + 1` places in `signs` */
  readonly starts: Uint32Array;
  /** how often each word is met */
  readonly counts: Uint32Array;
  /** cells of each word */
  readonly cells: Uint16Array;
  /** The word as it is printed. */
  word(index: number): string;
}

/**
 * The running words of a passage as a table: each word once, in the order in which they first come, with its count.
 *
 * @param words - as a passage's reader gives them
 */
export const tabulateWords = (words: Iterable<WordSigns>): WordTable => {
  const counted = new Map<string, { readonly word: WordSigns; count: number }>();
  for (const word of words) {
    const known = counted.get(word.word);
    if (known === undefined) counted.set(word.word, { word, count: 1 });
    else known.count++;
  }
  const rows = [...counted.values()];
  const places = new Map<string, number>();
  const palette: Sign[] = [];
  const placeOf = (sign: Sign): number => {
    const known = places.get(sign.name);
    if (known !== undefined) return known;
    places.set(sign.name, palette.length);
    return palette.push(sign) - 1;
  };
  const starts = new Uint32Array(rows.length + 1);
  for (const [index, { word }] of rows.entries())
    starts[index + 1] = (starts[index] ?? 0) + word.sequence.length;
  const signs = new Uint16Array(starts[rows.length] ?? 0);
  let at = 0;
  for (const { word } of rows) for (const sign of word.sequence) signs[at++] = placeOf(sign);
  return {
    size: rows.length,
    palette,
    signs,
    starts,
    counts: Uint32Array.from(rows, ({ count }) => count),
    cells: Uint16Array.from(rows, ({ word }) => word.cells),
    word: (index) => rows[index]?.word.word ?? "",
  };
};

/**
 * A table with other signs for some of its words.
 *
 * @param own - the words to be read otherwise, by their place
 */
export const overrideWords = (table: WordTable, own: ReadonlyMap<number, WordSigns>): WordTable => {
  const palette = [...table.palette];
  const places = new Map(palette.map(({ name }, place) => [name, place]));
  const placeOf = (sign: Sign): number => {
    const known = places.get(sign.name);
    if (known !== undefined) return known;
    places.set(sign.name, palette.length);
    return palette.push(sign) - 1;
  };
  const starts = new Uint32Array(table.size + 1);
  const cells = table.cells.slice();
  const signs: number[] = [];
  for (let index = 0; index < table.size; index++) {
    const word = own.get(index);
    if (word !== undefined) cells[index] = word.cells;
    const read =
      word?.sequence.map(placeOf) ?? table.signs.subarray(table.starts[index], table.starts[index + 1]);
    for (const place of read) signs.push(place);
    starts[index + 1] = signs.length;
  }
  return { ...table, palette, signs: Uint16Array.from(signs), starts, cells };
};

/** Small letters and the two marks that words are written with; all else in a word is left to its own table. */
const SPELLING_SIGNS: readonly Sign[] = [
  ...LETTERS,
  ...PUNCTUATION.filter(({ name }) => name === "apostrophe" || name === "hyphen"),
];

/**
 * The words of a table as an uncontracted reader meets them: spelled out, the capital sign kept.
 *
 * @param contracted - words of small letters, apostrophes and hyphens, led by the capital sign where they have one
 */
export const spellTable = (contracted: WordTable): WordTable => {
  const capital = contracted.palette.find(({ name }) => name === "capital");
  const palette = capital === undefined ? SPELLING_SIGNS : [...SPELLING_SIGNS, capital];
  const places = new Map(
    palette.flatMap((sign, place) => printsOf(sign).map((print) => [print, place] as const)),
  );
  // Every sign of the contracted table becomes the letters of its print: no word has to be put together for that.
  const spelled = contracted.palette.map((sign) =>
    sign === capital
      ? [palette.length - 1]
      : [...printOf(sign)].flatMap((character) => places.get(character) ?? []),
  );
  const starts = new Uint32Array(contracted.size + 1);
  const cells = new Uint16Array(contracted.size);
  let length = 0;
  for (let index = 0; index < contracted.size; index++) {
    for (let at = contracted.starts[index] ?? 0; at < (contracted.starts[index + 1] ?? 0); at++)
      length += spelled[contracted.signs[at] ?? 0]?.length ?? 0;
    starts[index + 1] = length;
    cells[index] = length - (starts[index] ?? 0);
  }
  const signs = new Uint8Array(length);
  let at = 0;
  for (const place of contracted.signs) for (const letter of spelled[place] ?? []) signs[at++] = letter;
  return {
    size: contracted.size,
    palette,
    signs,
    starts,
    counts: contracted.counts,
    cells,
    word: (index) => contracted.word(index),
  };
};

const printsOf = (sign: Sign): readonly string[] => ("prints" in sign ? sign.prints : [sign.print]);

/** The first print form of a sign; "" for an indicator. */
export const printOf = (sign: Sign): string => printsOf(sign)[0] ?? "";
