/** Makes the word bank's file, once for each build: from word lists, with the braille engine. */
import { readPieces } from "../../domain/contraction/usage";
import type { Translator } from "../../ports/translator";
import { BANK_PALETTE, encodeIndex, printOfSigns, type IndexedWord } from "./index-format";
import { FRAGMENTS, SENTENCE_OPENERS } from "./subtitle-words";
import { formsOfBadWords, isUnsuitable } from "./unsuitable-words";

/** Where the words come from; handed in, so that the packages stay outside the bundle. */
export interface WordSources {
  /** words as a corpus of film subtitles prints them, with how often each is met */
  readonly frequencies: readonly { readonly word: string; readonly count: number }[];
  /** whether a list of bad words holds a word, small letters */
  readonly isRatedBad: (word: string) => boolean;
  /** whether a dictionary of English has a word, small letters */
  readonly isListed: (word: string) => boolean;
  /** syllables of a word, small letters */
  readonly countSyllables: (word: string) => number;
}

/** The file, and what became of the words. */
export interface BuiltWordBank {
  readonly bytes: Uint8Array;
  readonly kept: number;
  readonly fragments: number;
  readonly unsuitable: number;
  /** words whose cells are not those of signs in the inventory; there should be none */
  readonly unread: readonly string[];
}

/**
 * Builds the word bank.
 *
 * Left out are fragments that the corpus cut off at an apostrophe (don, ll), single letters but for a and I, and what
 * does not belong into a school: words that the lists of bad words hold, their other forms, and our own list of violence,
 * alcohol and sex. Words that the corpus prints with a capital because they often open a sentence are set in small letters.
 *
 * @param translator - contracted Unified English Braille
 */
export const buildWordBank = (sources: WordSources, translator: Translator): BuiltWordBank => {
  const counts = new Map<string, number>();
  const badForms = formsOfBadWords(
    sources.frequencies.map(({ word }) => word.toLowerCase()).filter(sources.isRatedBad),
  );
  let [fragments, unsuitable] = [0, 0];
  for (const { word, count } of sources.frequencies) {
    const lower = word.toLowerCase();
    if (FRAGMENTS.has(lower) || (word.length === 1 && word !== "a" && word !== "I")) fragments++;
    else if (sources.isRatedBad(lower) || badForms.has(lower) || isUnsuitable(lower)) unsuitable++;
    else {
      const printed = SENTENCE_OPENERS.has(lower) ? lower : word;
      counts.set(printed, (counts.get(printed) ?? 0) + count);
    }
  }
  const unread: string[] = [];
  const words: (IndexedWord & { readonly word: string })[] = [];
  for (const [word, count] of counts) {
    const signs = readSigns(word, translator);
    if (signs === undefined) unread.push(word);
    else {
      const lower = word.toLowerCase();
      const [syllables, isListed] = [sources.countSyllables(lower), sources.isListed(lower)];
      words.push({ word, signs, syllables, isListed, count });
    }
  }
  words.sort((one, other) => other.count - one.count || (one.word < other.word ? -1 : 1));
  return { bytes: encodeIndex(words), kept: words.length, fragments, unsuitable, unread };
};

const placeOf = new Map(BANK_PALETTE.map(({ name }, place) => [name, place]));

const readSigns = (word: string, translator: Translator): number[] | undefined => {
  const transcription = translator.transcribe(word);
  const signs: number[] = [];
  let cells = "";
  for (const { sign } of readPieces(transcription)) {
    const place = placeOf.get(sign.name);
    if (place === undefined) return undefined;
    signs.push(place);
    cells += sign.cells;
  }
  return cells === transcription.cells && printOfSigns(signs, 0, signs.length) === word ? signs : undefined;
};

/** How a dictionary of American English would spell a word spelled the British way: our choice of endings, no source. */
const AMERICAN: readonly (readonly [RegExp, string])[] = [
  [/our/, "or"],
  [/is(e|ed|es|er|ers|ing|ation|ations)$/, "iz$1"],
  [/ys(e|ed|es|ing)$/, "yz$1"],
  [/tre(s?)$/, "ter$1"],
  [/ll(ed|er|ers|ing)$/, "l$1"],
  [/ence(s?)$/, "ense$1"],
  [/ogue(s?)$/, "og$1"],
  [/mme(s?)$/, "m$1"],
];

/** The spellings under which a dictionary of American English may have a word: its own, its American one, its singular. */
export const dictionarySpellings = (word: string): string[] => [
  word,
  ...AMERICAN.flatMap(([british, american]) => (british.test(word) ? [word.replace(british, american)] : [])),
  ...(/[^s]s$/.test(word) ? [word.slice(0, -1)] : []),
];

/** Syllables of a pronunciation of the CMU dictionary: its vowels carry a digit for stress. */
export const syllablesOfPronunciation = (pronunciation: string): number =>
  pronunciation.match(/\d/g)?.length ?? 0;
