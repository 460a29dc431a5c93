/** A word as it counts in a reading probe. */
export interface ReadingWord {
  /** as printed, for showing */
  readonly shown: string;
  /** what decides whether two words are the same: lower case, letters, digits and inner apostrophes */
  readonly key: string;
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
 * @returns words in order, oldest spelling kept in `shown`
 */
export function splitReadingWords(text: string): readonly ReadingWord[] {
  return text
    .normalize("NFC")
    .split(/\s+|(?<=\S)--+(?=\S)|[\u2013\u2014\u2026/]/u)
    .flatMap(splitHyphens)
    .flatMap((shown) => {
      const key = keyOf(shown);
      return key === "" ? [] : [{ shown, key }];
    });
}

function splitHyphens(piece: string): readonly string[] {
  const parts = piece.split(/(?<=[\p{L}\p{N}])[-\u2010\u2011](?=[\p{L}\p{N}])/u);
  return parts.slice(0, -1).some((part) => BOUND_PARTS.has(keyOf(part))) ? [piece] : parts;
}

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
