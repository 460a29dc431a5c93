/** A word as it counts in a reading probe. */
export interface ReadingWord {
  /** as printed, for showing */
  readonly shown: string;
  /** what decides whether two words are the same: lower case, letters, digits and inner apostrophes */
  readonly key: string;
}

/** A word of a text with its place. */
export interface PlacedWord extends ReadingWord {
  /** where `shown` begins in the text in Unicode's composed form (NFC), in UTF-16 code units */
  readonly start: number;
}

/** Parts that do not stand alone as words: a hyphenated word that begins with one counts once (co-pilot). */
const BOUND_PARTS = new Set(
  "anti bi co counter de dis ex extra hyper inter intra micro mid mis multi neo non post pre pro proto pseudo quasi re semi sub super tele trans tri ultra un uni vice".split(
    " ",
  ),
);

/** Abbreviations are read as the word they stand for. */
const ABBREVIATION_OF = new Map([
  ["mister", "mr"],
  ["missus", "mrs"],
  ["doctor", "dr"],
  ["professor", "prof"],
  ["saint", "st"],
  ["versus", "vs"],
  ["etcetera", "etc"],
]);

/**
 * The words of a text as a reading probe counts them: hyphenated words by their parts that stand alone (fifty-seven
 * 2, daughter-in-law 3, co-opt 1), stretches without a letter or digit not at all.
 *
 * Source: US Department of Education, "Monitoring Reading" slides, rules 11 and 12 (archived).
 *
 * @returns words in order, each as it is spelled in the text's composed form (NFC)
 */
export function splitReadingWords(text: string): readonly PlacedWord[] {
  const words: PlacedWord[] = [];
  for (const piece of splitAt(text.normalize("NFC"), 0, BETWEEN_WORDS)) {
    const parts = splitAt(piece.shown, piece.start, BETWEEN_PARTS);
    const isOneWord = parts.slice(0, -1).some(({ shown }) => BOUND_PARTS.has(keyOf(shown)));
    for (const { shown, start } of isOneWord ? [piece] : parts) {
      const key = keyOf(shown);
      if (key !== "") words.push({ shown, key, start });
    }
  }
  return words;
}

const BETWEEN_WORDS = /\s+|(?<=\S)--+(?=\S)|[\u2013\u2014\u2026/]/gu;
const BETWEEN_PARTS = /(?<=[\p{L}\p{N}])[-\u2010\u2011](?=[\p{L}\p{N}])/gu;

interface Stretch {
  readonly shown: string;
  readonly start: number;
}

/** What stands between the matches of a pattern, with its place counted from `offset`. */
const splitAt = (text: string, offset: number, between: RegExp): readonly Stretch[] => {
  const stretches: Stretch[] = [];
  let start = 0;
  for (const { index, 0: found } of text.matchAll(between)) {
    stretches.push({ shown: text.slice(start, index), start: offset + start });
    start = index + found.length;
  }
  stretches.push({ shown: text.slice(start), start: offset + start });
  return stretches;
};

function keyOf(shown: string): string {
  const plain = shown
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[\u2018\u2019\u02bc\uff07]/g, "'")
    .replace(/(?<=\d)[,\u00a0](?=\d{3})/g, "")
    .replace(/[^\p{L}\p{M}\p{N}']/gu, "")
    .replace(/^'+|'+$/g, "");
  return ABBREVIATION_OF.get(plain) ?? plain;
}
