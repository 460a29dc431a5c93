import { findUses } from "../../src/domain/contraction/usage";
import type { PlacedWord } from "../../src/domain/probe/reading-words";
import type { Translator } from "../../src/ports/translator";
import type { ContractedLetters } from "./reading-words";

/**
 * Of each word of a text, the letters that a contraction stands for, or nothing where the code cannot write the text.
 *
 * @param translator - Unified English Braille
 * @param words - as split from the text
 */
export const findContractedLetters = (
  translator: Translator,
  text: string,
  words: readonly PlacedWord[],
): readonly (readonly ContractedLetters[])[] => {
  const composed = text.normalize("NFC");
  if (translator.untranslatable(composed).length > 0) return [];
  const uses = findUses(translator.transcribe(composed));
  let next = 0;
  return words.map(({ start, shown }) => {
    const letters: ContractedLetters[] = [];
    const end = start + shown.length;
    for (; next < uses.length; next += 1) {
      const use = uses[next];
      if (use === undefined || use.printStart >= end) break;
      // A contraction over a hyphen between parts is none, so each belongs to one word.
      if (use.printStart >= start) {
        letters.push({ from: use.printStart - start, to: Math.min(use.printEnd, end) - start });
      }
    }
    return letters;
  });
};
