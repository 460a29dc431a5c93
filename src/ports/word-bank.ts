import type { WordTable } from "../domain/contraction/word-table";

/** Common words with their signs, precomputed: what drills and the order of signs are taken from. */
export interface WordBank {
  /** The words most frequent first, their counts from a corpus of running words, in either code of UEB. */
  table(code: "contracted" | "uncontracted"): WordTable;
  /** syllables of each word, in the order of the tables */
  readonly syllables: Uint8Array;
  /**
   * Whether a word may go into a drill: a dictionary has it, in small letters. The others (names, places, foreign and
   * misspelled words) are there to be read, counted and read back.
   */
  suitsDrill(index: number): boolean;
  /** The place of a word in the tables, as it is printed there; undefined where it is not among them. */
  find(word: string): number | undefined;
}

/** Where the word bank comes from. */
export interface WordBankLibrary {
  /**
   * The bank, loaded when first needed.
   * @throws where its file is missing or belongs to another build
   */
  load(): Promise<WordBank>;
  /** The bank if it is loaded already, so that a sheet function can answer without a promise. */
  loaded(): WordBank | undefined;
}
