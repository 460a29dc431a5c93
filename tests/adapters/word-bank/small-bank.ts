import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { buildWordBank, type BuiltWordBank } from "../../../src/adapters/word-bank/word-bank-builder";

/** Builds a bank from a few words, with counts of a corpus; `bad` words hold that, a dictionary has all without `x`. */
export const buildSmallBank = async (words: Readonly<Record<string, number>>): Promise<BuiltWordBank> => {
  const translator = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("contracted");
  return buildWordBank(
    {
      frequencies: Object.entries(words).map(([word, count]) => ({ word, count })),
      isRatedBad: (word) => word.includes("bad"),
      isListed: (word) => !word.includes("x"),
      countSyllables: (word) => (word.match(/[aeiouy]+/g) ?? [""]).length,
    },
    translator,
  );
};
