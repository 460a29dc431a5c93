import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { buildWordBank, type BuiltWordBank } from "../../../src/adapters/word-bank/word-bank-builder";

/** Builds a bank from a few words, with counts of a corpus; bad words are those that hold `bad`. */
export const buildSmallBank = async (words: Readonly<Record<string, number>>): Promise<BuiltWordBank> => {
  const translator = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("contracted");
  return buildWordBank(
    {
      frequencies: Object.entries(words).map(([word, count]) => ({ word, count })),
      isRatedBad: (word) => word.includes("bad"),
      countSyllables: (word) => (word.match(/[aeiouy]+/g) ?? [""]).length,
    },
    translator,
  );
};
