import type { WordTable } from "../contraction/word-table";

/** Words by their braille, those most often met first. */
export interface Lexicon {
  /** The words that have these cells; none for most cells. */
  wordsOf(cells: string): readonly string[];
  /** cells of the longest word */
  readonly longest: number;
}

/**
 * A lexicon of words with their braille.
 *
 * @param entries - word and Unicode braille, in the order in which words are preferred
 */
export const createLexicon = (entries: Iterable<readonly [word: string, cells: string]>): Lexicon => {
  const words = new Map<string, string[]>();
  let longest = 0;
  for (const [word, cells] of entries) {
    const known = words.get(cells);
    if (known === undefined) words.set(cells, [word]);
    else if (!known.includes(word)) known.push(word);
    longest = Math.max(longest, cells.length);
  }
  return { wordsOf: (cells) => words.get(cells) ?? [], longest };
};

/** The words of a table with the cells of their signs. */
export const lexiconOfTable = (table: WordTable): Lexicon => createLexicon(entriesOf(table));

function* entriesOf(table: WordTable): Generator<readonly [string, string]> {
  for (let index = 0; index < table.size; index++) {
    let cells = "";
    for (let at = table.starts[index] ?? 0; at < (table.starts[index + 1] ?? 0); at++)
      cells += table.palette[table.signs[at] ?? 0]?.cells ?? "";
    yield [table.word(index), cells];
  }
}

/** No words at all: every word is read contraction by contraction. */
export const EMPTY_LEXICON: Lexicon = createLexicon([]);
