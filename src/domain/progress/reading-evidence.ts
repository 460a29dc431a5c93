import type { Transcribe } from "../contraction/passage";
import type { Piece } from "../contraction/alignment";
import { isContraction, type Sign } from "../contraction/sign";
import { readPieces } from "../contraction/usage";
import type { ReadWord, WordOutcome } from "../probe/word-outcomes";
import type { Day } from "../units";
import type { WordEvidence } from "./knowledge-evidence";

/**
 * What the words of a reading tell of their signs. Right speaks for all signs of a word. A word misread speaks against
 * those that the word heard does not have (all, where it has every one); a word told, or one left out by itself,
 * against all. Several words left out in a row are a line skipped and tell nothing, nor do words not attempted.
 *
 * Source: our choice, no source. A miss may be language, speech or vocabulary as well; the model's slip stands for that.
 *
 * @param text - the text that was read, in Unicode's composed form (NFC), as the outcomes have their places in it
 * @param transcribe - in the code that it was read in, Unified English Braille
 */
export const weighReading = (
  text: string,
  outcomes: readonly ReadWord[],
  day: Day,
  transcribe: Transcribe,
): readonly WordEvidence[] => {
  const signsAt = groupPieces(readPieces(transcribe(text)), outcomes);
  return outcomes.flatMap(({ outcome, heard }, place): readonly WordEvidence[] => {
    const signs = signsAt[place] ?? [];
    const isSkipped =
      outcome === "left out" &&
      [place - 1, place + 1].some((beside) => outcomes[beside]?.outcome === "left out");
    if (signs.length === 0 || outcome === "not attempted" || isSkipped) return [];
    if (isRight(outcome)) return [{ day, signs, isRight: true }];
    return [
      { day, signs: outcome === "misread" ? blameSigns(signs, heard, transcribe) : signs, isRight: false },
    ];
  });
};

const isRight = (outcome: WordOutcome): boolean => outcome === "correct" || outcome === "swapped";

/** The signs of a missed word that may be to blame: those that the word given for it does not have. */
export const blameSigns = (
  signs: readonly string[],
  given: string,
  transcribe: Transcribe,
): readonly string[] => {
  if (given.trim() === "") return signs;
  const shared = new Set(namesOf(readPieces(transcribe(given))));
  const blamed = signs.filter((sign) => !shared.has(sign));
  return blamed.length === 0 ? signs : blamed;
};

/** The names of the signs that a word, read aloud, shows: each once. */
export const namesOf = (pieces: readonly Piece[]): readonly string[] => [
  ...new Set(pieces.filter(({ sign }) => isHeard(sign)).map(({ sign }) => sign.name)),
];

/** Capitals and punctuation cannot be heard; a number without its sign is another word. */
const isHeard = (sign: Sign): boolean =>
  isContraction(sign) || sign.kind === "letter" || sign.kind === "digit" || sign.name === "number sign";

/** The signs of each word, both lists being in order of their places. */
const groupPieces = (
  pieces: readonly Piece[],
  words: readonly ReadWord[],
): readonly (readonly string[])[] => {
  let next = 0;
  return words.map(({ word: { start, shown } }) => {
    const end = start + shown.length;
    const own: Piece[] = [];
    for (; next < pieces.length; next++) {
      const piece = pieces[next];
      if (piece === undefined || piece.printStart >= end) break;
      if (piece.printStart >= start) own.push(piece);
    }
    return namesOf(own);
  });
};
