import { USUAL_LINE } from "../braille/page";
import { CONTRACTIONS } from "../contraction/inventory";
import { PLAIN_SIGNS, type Sign } from "../contraction/sign";
import type { TaughtSigns } from "../contraction/taught";
import type { WordTable } from "../contraction/word-table";
import { refusal, success, type Result } from "../result";
import type { RandomSource } from "../seeded-random";
import { chooseWords, type WordChoice } from "./selection";
import { makeSignLines, type SignLineKind } from "./sign-lines";

/** What a drill is to practise. */
export interface DrillWish {
  readonly wanted: readonly Sign[];
  readonly taught: TaughtSigns;
  /** items of the drill */
  readonly most: number;
  /** cells a word, or a line of signs, at most; a line of the usual length where there is no limit */
  readonly mostCells: number | undefined;
  /** whether a word of the table may be taken */
  readonly accepts?: (word: number) => boolean;
  readonly random: RandomSource;
}

/** One item of a drill: a word in print, or a line of signs in Unicode braille. */
export interface DrillItem {
  readonly kind: "word" | SignLineKind;
  readonly text: string;
}

/**
 * A drill: words that use a wanted sign and otherwise only taught ones and, where they are fewer than wanted, lines of
 * the wanted signs after them. The same seed of chance gives the same drill.
 *
 * @param table - the words to choose from, in the code that the pupil reads
 * @returns at most `most` items; or `nothing-to-give`, naming the sign that blocks most words
 */
export const makeDrill = (table: WordTable, wish: DrillWish): Result<readonly DrillItem[]> => {
  const { wanted, taught, most, mostCells, random, accepts = () => true } = wish;
  const choice = chooseWords(table, {
    wanted,
    taught,
    most,
    mostCells: mostCells ?? Infinity,
    accepts,
    random,
  });
  const words = choice.words.map((text): DrillItem => ({ kind: "word", text }));
  const lines = makeSignLines({
    wanted,
    known: [...CONTRACTIONS, ...PLAIN_SIGNS].filter((sign) => isTouchable(sign) && taught.knows(sign)),
    lines: most - words.length,
    mostCells: mostCells ?? USUAL_LINE,
    random,
  }).map(({ kind, cells }): DrillItem => ({ kind, text: cells }));
  const items = [...words, ...lines];
  return items.length > 0 ? success(items) : refusal("nothing-to-give", explainNothing(choice, wish));
};

/** Signs of several cells of the same kind, such as the ellipsis, are no help in telling signs apart. */
const isTouchable = (sign: Sign): boolean => sign.kind !== "indicator" && sign.cells.length <= 2;

const explainNothing = (
  { blocked, blocking, tooLong }: WordChoice,
  { wanted, mostCells }: DrillWish,
): string => {
  const signs = wanted.map(({ name }) => `“${name}”`).join(" or ");
  const room = mostCells ?? USUAL_LINE;
  const cells = room === 1 ? "1 cell" : `${room} cells`;
  const noLines = `${cells} are too few for a line of signs`.replace("1 cell are", "1 cell is");
  if (blocking !== undefined)
    return `No word with ${signs} fits: ${blocking.name} blocks ${blocked === 1 ? "the only one" : `most of the ${blocked}`} short enough. Teach it first, or give other words; ${noLines}.`;
  if (tooLong > 0)
    return `${tooLong === 1 ? "The only word with" : `All ${tooLong} words with`} ${signs} ${tooLong === 1 ? "is" : "are"} longer than ${cells}: allow more; ${noLines}.`;
  return `No word uses ${signs}: give other words; ${noLines}.`;
};
