import { EMPTY_LEXICON, type Lexicon } from "./lexicon";
import { readToken, type TokenReader, type TokenReading } from "./token";
import { CONTRACTED_UNITS, PLAIN_UNITS } from "./unit";

/** A stretch of braille that stands for more than one print text. */
export interface DoubtfulReading {
  /** its cells */
  readonly cells: string;
  /** every print that these cells are the braille of, likeliest first; two or more */
  readonly readings: readonly string[];
}

/** Braille read back. */
export interface PrintReading {
  readonly print: string;
  readonly doubtful: readonly DoubtfulReading[];
}

/** What braille is read back with. */
export interface ReadingBack {
  readonly code: "contracted" | "uncontracted";
  /** words of the code; none unless given */
  readonly lexicon?: Lexicon;
  /** Print in cells of the same code, to tell which reading is right; throws or gives other cells where it is not. */
  readonly write: (print: string) => string;
}

/** Readings so much less likely than the first are not worth a reader's doubt: y,h beside yeah. */
const MARGIN = 1;
const BLANK = "\u2800";
const CELL = /[\u2800-\u28ff]/;
/** Longer stretches without a blank are no words; they are read in parts, so that calls go no deeper than this. */
const LONGEST_TOKEN = 120;
const TOKENS = new RegExp(`[^${BLANK}\\n]{1,${LONGEST_TOKEN}}|[${BLANK}\\n]`, "gu");

/**
 * Print of braille in Unified English Braille. Each stretch between blanks is read in every likely way, a word of the
 * lexicon as a whole, any other contraction by contraction and letter by letter; a reading counts where it gives these
 * cells again when it is written. A cell that cannot be read stays a cell.
 *
 * @param cells - Unicode braille, line breaks "\n"
 */
export const readPrint = (
  cells: string,
  { code, lexicon = EMPTY_LEXICON, write }: ReadingBack,
): PrintReading => {
  const reader: TokenReader = { units: code === "contracted" ? CONTRACTED_UNITS : PLAIN_UNITS, lexicon };
  const known = new Map<string, readonly TokenReading[]>();
  const doubtful: DoubtfulReading[] = [];
  let print = "";
  let passage = false;
  for (const [token] of cells.matchAll(TOKENS)) {
    if (token === BLANK || token === "\n") {
      print += token === BLANK ? " " : "\n";
      continue;
    }
    const key = `${passage} ${token}`;
    let readings = known.get(key);
    if (readings === undefined) {
      readings = chooseReadings(token, readToken(token, passage, reader), write);
      known.set(key, readings);
    }
    const most = (readings[0]?.cost ?? 0) + MARGIN;
    const likely = readings.filter(({ cost }) => cost <= most);
    if (likely.length > 1) doubtful.push({ cells: token, readings: likely.map((reading) => reading.print) });
    print += readings[0]?.print ?? token;
    passage = readings[0]?.passage ?? false;
  }
  return { print, doubtful };
};

/** Those that give the same cells when written; the likeliest where none does (inside a passage none can). */
const chooseReadings = (
  token: string,
  readings: readonly TokenReading[],
  write: (print: string) => string,
): readonly TokenReading[] => {
  const right = readings.filter(({ print }) => {
    // A cell that was not read is written as itself, which proves nothing.
    if (CELL.test(print)) return false;
    try {
      return write(print) === token;
    } catch {
      return false;
    }
  });
  return right.length > 0 ? right : readings.slice(0, 1);
};
