import { tabulateWords, type WordTable } from "../../src/domain/contraction/word-table";
import { CONTRACTIONS } from "../../src/domain/contraction/inventory";
import { PLAIN_SIGNS, type Sign } from "../../src/domain/contraction/sign";
import { parseSigns } from "../../src/domain/contraction/taught";
import { findSignContrasts } from "../../src/domain/drill/contrast";
import { makeDrill, type DrillItem } from "../../src/domain/drill/drill";
import type { HandoutEntry } from "../../src/domain/drill/handout-draft";
import { rankPassages, splitSentences, type Passage } from "../../src/domain/drill/passages";
import { makeSignLines } from "../../src/domain/drill/sign-lines";
import { printSignLine } from "../../src/domain/drill/sign-print";
import { refusal, success, type Result } from "../../src/domain/result";
import { seededRandom } from "../../src/domain/seeded-random";
import type { WordBank } from "../../src/ports/word-bank";
import type { HandoutBraille } from "./handout-braille";

/** What a drill is made of. */
export const DRILL_FORMS = ["words", "pairs", "lines", "sentences"] as const;
export type DrillForm = (typeof DRILL_FORMS)[number];

/** What she asks for. */
export interface DrillRequest {
  readonly form: DrillForm;
  /** as typed: `ch, sh` */
  readonly signs: string;
  readonly most: number;
  /** cells of a word or a line of signs at most; undefined for no limit on words */
  readonly mostCells: number | undefined;
  /** another number, another selection */
  readonly seed: number;
  /** words of her own to choose from; undefined for the built-in ones */
  readonly words: readonly string[] | undefined;
}

const USUAL_LINE_OF_SIGNS = 40;
const NO_SIGNS = refusal(
  "no-signs",
  "Name at least one sign to practise, such as ch. Part several by commas.",
);

/**
 * The items of a drill.
 *
 * @param loadBank - called only where the built-in words are needed
 * @param passages - her own, for sentences
 * @returns the entries, or why there are none and what to do
 * @throws where the words cannot be loaded
 */
export const makeDrillEntries = async (
  request: DrillRequest,
  braille: HandoutBraille,
  passages: readonly Passage[],
  loadBank: () => Promise<WordBank>,
): Promise<Result<readonly HandoutEntry[]>> => {
  const wanted = parseSigns([request.signs]);
  if (!wanted.ok) return wanted;
  if (request.form === "sentences") return chooseSentences(request, wanted.value, braille, passages);
  if (wanted.value.length === 0) return NO_SIGNS;
  if (request.form === "lines") return chooseLines(request, wanted.value, braille);
  const words = await openWords(request, braille, loadBank);
  if (request.form === "pairs") return choosePairs(request, wanted.value, braille, words);
  const made = makeDrill(words.table, {
    wanted: wanted.value,
    taught: braille.taught,
    most: request.most,
    mostCells: request.mostCells,
    accepts: words.accepts,
    random: seededRandom(request.seed),
  });
  return made.ok ? success(made.value.map((item) => entryOf(item, wanted.value))) : made;
};

interface Words {
  readonly table: WordTable;
  readonly accepts: (word: number) => boolean;
}

const openWords = async (
  { words }: DrillRequest,
  { reader, code }: HandoutBraille,
  loadBank: () => Promise<WordBank>,
): Promise<Words> => {
  if (words !== undefined) return { table: tabulateWords(readEach(words, reader)), accepts: () => true };
  const bank = await loadBank();
  return { table: bank.table(code), accepts: (word) => bank.suitsDrill(word) };
};

/** Words that the code has no cells for are no words for a drill. */
const readEach = (words: readonly string[], reader: HandoutBraille["reader"]) =>
  words.flatMap((word) => {
    try {
      return reader.read(word);
    } catch {
      return [];
    }
  });

const entryOf = ({ kind, text }: DrillItem, wanted: readonly Sign[]): HandoutEntry =>
  kind === "word" ? { kind: "word", text } : { kind: "signs", text, print: printSignLine(text, wanted) };

const chooseLines = (
  { most, mostCells = USUAL_LINE_OF_SIGNS, seed }: DrillRequest,
  wanted: readonly Sign[],
  { taught }: HandoutBraille,
): Result<readonly HandoutEntry[]> => {
  const known = [...CONTRACTIONS, ...PLAIN_SIGNS].filter(
    (sign) => sign.kind !== "indicator" && sign.cells.length <= 2 && taught.knows(sign),
  );
  const lines = makeSignLines({ wanted, known, lines: most, mostCells, random: seededRandom(seed) });
  return lines.length === 0
    ? refusal("nothing-to-give", `${mostCells} cells are too few for a line of signs: allow more.`)
    : success(lines.map(({ kind, cells }) => entryOf({ kind, text: cells }, wanted)));
};

/** Signs that a single wanted sign is paired with, at most: our choice, no source. */
const MOST_PARTNERS = 12;

/** Two words that differ in one sign: between the wanted signs; of a single one, with signs taught. */
const choosePairs = (
  { most, mostCells = Infinity }: DrillRequest,
  wanted: readonly Sign[],
  { taught }: HandoutBraille,
  { table, accepts }: Words,
): Result<readonly HandoutEntry[]> => {
  const [first] = wanted;
  const others = wanted.length > 1 ? wanted.slice(1) : partnersOf(first, table, taught);
  const isKnown = table.palette.map((sign) => taught.knows(sign) || wanted.includes(sign));
  const fits = (word: number): boolean =>
    accepts(word) &&
    (table.cells[word] ?? 0) <= mostCells &&
    table.signs.subarray(table.starts[word], table.starts[word + 1]).every((sign) => isKnown[sign] === true);
  const pairs = others.flatMap((other, place) =>
    (wanted.length > 1 ? wanted.slice(0, place + 1) : wanted).flatMap((sign) =>
      findSignContrasts(table, sign, other, { accepts: fits, most }),
    ),
  );
  const entries = pairs
    .slice(0, most)
    .map((pair): HandoutEntry => ({ kind: "word", text: `${pair.first} ${pair.second}` }));
  return entries.length > 0
    ? success(entries)
    : refusal(
        "nothing-to-give",
        "No two words that the pupil can read differ in these signs alone: name other signs, allow longer words, or choose lines of signs.",
      );
};

const partnersOf = (
  sign: Sign | undefined,
  { palette }: WordTable,
  taught: HandoutBraille["taught"],
): readonly Sign[] =>
  palette
    .filter((other) => other !== sign && other.cells.length === sign?.cells.length && taught.knows(other))
    .slice(0, MOST_PARTNERS);

/** The most readable sentences of her passages, those with a wanted sign where signs are named. */
const chooseSentences = (
  { most }: DrillRequest,
  wanted: readonly Sign[],
  { reader, taught }: HandoutBraille,
  passages: readonly Passage[],
): Result<readonly HandoutEntry[]> => {
  const sentences = [...new Set(passages.flatMap(({ text }) => splitSentences(text)))];
  const names = new Set(wanted.map(({ name }) => name));
  const suiting = sentences.filter((text) => {
    const words = readEach([text], reader);
    return (
      words.length > 0 &&
      (names.size === 0 || words.some(({ signs }) => signs.some(({ name }) => names.has(name))))
    );
  });
  if (suiting.length === 0)
    return refusal(
      "nothing-to-give",
      passages.length === 0
        ? "There are no passages in this workbook: write some into a table with the columns Title and Text, or choose words."
        : "No sentence of your passages uses these signs: name others, or add passages.",
    );
  const ranked = rankPassages(
    suiting.map((text) => ({ title: "", text })),
    reader,
    taught,
  );
  return success(
    ranked.slice(0, most).map(({ passage }): HandoutEntry => ({ kind: "sentence", text: passage.text })),
  );
};
