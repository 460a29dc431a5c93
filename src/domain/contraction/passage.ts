import type { Transcription } from "../braille/transcription";
import type { Contraction } from "./inventory";
import { isContraction, type Sign } from "./sign";
import { readPieces } from "./usage";

/** Turns print into the cells of one code, with its spans. */
export type Transcribe = (text: string) => Transcription;

/** One running word of a passage with the signs that reading it takes. */
export interface WordSigns {
  readonly word: string;
  /** every sign in it in order, repeated as used */
  readonly sequence: readonly Sign[];
  /** every sign in it, each once */
  readonly signs: readonly Sign[];
  /** its contractions in order, repeated as used */
  readonly contractions: readonly Contraction[];
  /** how many cells it takes */
  readonly cells: number;
}

/** Reads passages word by word and remembers the words. */
export interface PassageReader {
  /** The running words of a text in order: what stands between white space and holds a letter or a digit. */
  read(text: string): WordSigns[];
}

/** Words remembered; the memo is emptied when full, so that its size is bounded. */
const WORDS_KEPT = 100_000;
const WORD = /\S+/g;
const LETTER_OR_DIGIT = /[\p{L}\p{N}]/u;

/**
 * A reader of passages in one code.
 *
 * Words are read one by one, which is exact but for the indicators of a passage in capitals: there each word in
 * capitals counts as marked by itself.
 *
 * @param transcribe - in Unified English Braille, contracted or uncontracted
 */
export const createPassageReader = (transcribe: Transcribe): PassageReader => {
  const remembered = new Map<string, WordSigns | undefined>();
  const readWord = (word: string): WordSigns | undefined => {
    if (!LETTER_OR_DIGIT.test(word)) return undefined;
    const transcription = transcribe(word);
    const sequence = readPieces(transcription).map(({ sign }) => sign);
    return {
      word,
      sequence,
      signs: [...new Set(sequence)],
      contractions: sequence.filter(isContraction),
      cells: transcription.cells.length,
    };
  };
  const recall = (word: string): WordSigns | undefined => {
    const known = remembered.get(word);
    if (known !== undefined || remembered.has(word)) return known;
    const read = readWord(word);
    if (remembered.size >= WORDS_KEPT) remembered.clear();
    remembered.set(word, read);
    return read;
  };
  return {
    read: (text) => {
      const words: WordSigns[] = [];
      for (const [token] of text.matchAll(WORD)) {
        const word = recall(token);
        if (word !== undefined) words.push(word);
      }
      return words;
    },
  };
};
