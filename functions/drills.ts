/** How the sheet function DRILL finds words and lines of signs. */
import { tabulateWords, type WordTable } from "../src/domain/contraction/word-table";
import { trimWord } from "../src/domain/contraction/untaught";
import { makeDrill } from "../src/domain/drill/drill";
import type { Fault } from "../src/domain/result";
import { seededRandom } from "../src/domain/seeded-random";
import type { Translator } from "../src/ports/translator";
import { codeOf, exceptionsOf, isUeb, readSigns, readTaught } from "./braille";
import { countOf, numberOf, pooledText } from "./cell-reading";
import { withTranslator, withWordBank } from "./function-host";
import { attempt, ONLY_UEB, readerFor } from "./passages";
import { asBlock, giveRows, isBlank, type Block } from "./shape";

/** The optional arguments of a drill as the host hands them over. */
export interface DrillArguments {
  readonly n: unknown;
  readonly maxCells: unknown;
  readonly words: Block | null | undefined;
  readonly seed: unknown;
  readonly code: string | null | undefined;
}

/** Items of a drill where n is missing: our choice, no source. */
const USUAL_ITEMS = 10;
/** More than this is a slip of the hand, and would hold up the sheet for seconds: our choice, no source. */
const MOST_ITEMS = 10_000;
const USUAL_SEED = 1;

const NO_SIGNS: Fault = {
  code: "no-signs",
  message: "Name at least one sign to practise, such as ch.",
};

/** Rows of words in print, then of lines of signs in Unicode braille where too few words fit. */
export const drillRows = (
  signs: Block | null | undefined,
  taught: Block | null | undefined,
  { n, maxCells, words, seed, code: givenCode }: DrillArguments,
): unknown[][] | Promise<unknown[][]> => {
  const code = codeOf(givenCode);
  if (!isUeb(code)) return giveRows([], () => ONLY_UEB);
  const lists = [signs, taught, [[n, maxCells]], words, [[seed]]];
  const drill = (tableOf: () => WordTable, accepts?: (word: number) => boolean): unknown[][] =>
    giveRows(lists, () => {
      const wanted = readSigns(signs ?? []);
      if (!wanted.ok) return wanted.fault;
      if (wanted.value.length === 0) return NO_SIGNS;
      const known = readTaught(taught ?? []);
      if (!known.ok) return known.fault;
      const most = countOf(n, "n", USUAL_ITEMS, MOST_ITEMS);
      if (!most.ok) return most.fault;
      const mostCells = countOf(maxCells, "maxCells", undefined);
      if (!mostCells.ok) return mostCells.fault;
      const start = isBlank(seed) ? { ok: true as const, value: USUAL_SEED } : numberOf(seed, "seed");
      if (!start.ok) return start.fault;
      return attempt(() => {
        const made = makeDrill(tableOf(), {
          wanted: wanted.value,
          taught: known.value,
          most: most.value,
          mostCells: mostCells.value,
          random: seededRandom(start.value),
          ...(accepts === undefined ? {} : { accepts }),
        });
        return made.ok ? made.value.map(({ text }) => [text]) : made.fault;
      });
    });
  if (asBlock(words).flat().every(isBlank)) {
    return withWordBank((bank) =>
      drill(
        () => bank.table(code === "uncontracted" ? "uncontracted" : "contracted"),
        (word) => bank.suitsDrill(word),
      ),
    );
  }
  return withTranslator(code, (translator) => drill(() => ownWords(translator, pooledText(words))));
};

/** The words of the teacher's own lists or texts, each once, without the punctuation around them. */
const ownWords = (translator: Translator, text: string): WordTable => {
  const exceptions = exceptionsOf(undefined);
  if (!exceptions.ok) throw new TypeError("No exceptions are no fault.");
  const byLower = new Map<string, string>();
  for (const token of text.split(/[\s,;]+/)) {
    const word = trimWord(token);
    const known = byLower.get(word.toLowerCase());
    // A word that also stands in small letters is no name.
    if (known === undefined || word === word.toLowerCase()) byLower.set(word.toLowerCase(), word);
  }
  return tabulateWords(readerFor(translator, exceptions.value).read([...byLower.values()].join(" ")));
};
