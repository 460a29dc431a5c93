import { refusal, success, type Result } from "../result";
import { CONTRACTIONS } from "./inventory";
import { isLetter } from "./alignment";
import { isContraction, PLAIN_SIGNS, type PlainKind, type Sign } from "./sign";

/** What a pupil has been taught. */
export interface TaughtSigns {
  /** whether a sign counts as known */
  knows(sign: Sign): boolean;
  /** names of the signs of the list, each once, in its order */
  readonly names: readonly string[];
}

/** Every spelling of a sign that a list may hold, in small letters. Plain `in` and `be` stand for both uses. */
const signsBySpelling = new Map<string, Sign[]>();
const addSpelling = (spelling: string, sign: Sign): void => {
  const signs = signsBySpelling.get(spelling);
  if (signs === undefined) signsBySpelling.set(spelling, [sign]);
  else if (!signs.includes(sign)) signs.push(sign);
};
for (const contraction of CONTRACTIONS) {
  addSpelling(contraction.print, contraction);
  addSpelling(contraction.name, contraction);
}
for (const sign of PLAIN_SIGNS) {
  for (const spelling of [sign.name, ...sign.prints, ...sign.aliases]) addSpelling(spelling, sign);
}

/**
 * Reads a list of taught signs in print form: `ch`, `the`, `in` (both uses), `in wordsign`, `b`, `full stop`, `?`,
 * `number sign`. Capitals, blanks, duplicates, and several signs in a cell parted by commas or line breaks are fine.
 *
 * Contractions are known if the list names them. Letters, digits, punctuation and indicators all count as known
 * unless the list names one of that kind: then only those named.
 *
 * @param cells - one text a cell
 * @returns what is known, or `unknown-signs` naming every text that is no sign
 */
export const parseTaught = (cells: readonly string[]): Result<TaughtSigns> => {
  const { named, others, unknown } = readSpellings(cells);
  if (unknown.length > 0) return refusal("unknown-signs", explainUnknown(unknown));
  return success(taughtSigns([...named], others));
};

/**
 * Reads a list of signs, spelled as a list of taught signs is, into the signs themselves.
 *
 * @param cells - one text a cell
 * @returns each sign once, in the order of the list; none for a blank list; or `unknown-signs` naming every text that
 *   is no sign of the inventory (a letter with an accent is none)
 */
export const parseSigns = (cells: readonly string[]): Result<readonly Sign[]> => {
  const { named, others, unknown } = readSpellings(cells);
  const strangers = [...unknown, ...others];
  return strangers.length > 0 ? refusal("unknown-signs", explainUnknown(strangers)) : success([...named]);
};

/**
 * Reads items that are signs, as they were to be named or written: in order, repeated as they stand. Several may stand
 * in a cell, parted by commas, line breaks or spaces (`full stop` is one). Plain `in` and `be`, and quotation marks that
 * open and close alike, are read as the first sign of that spelling.
 *
 * @param cells - one text a cell
 * @returns the signs; none for blank cells; or `unknown-signs` naming every text that is no sign of the inventory
 */
export const parseSignItems = (cells: readonly string[]): Result<readonly Sign[]> => {
  const items: Sign[] = [];
  const unknown: string[] = [];
  const spellings = cells
    .flatMap(spellingsIn)
    .flatMap((spelling) => (findSigns(spelling) === undefined ? spelling.split(/\s+/u) : [spelling]));
  for (const spelling of spellings) {
    const [sign] = findSigns(spelling) ?? [];
    if (sign === undefined) unknown.push(spelling);
    else items.push(sign);
  }
  return unknown.length > 0 ? refusal("unknown-signs", explainUnknown(unknown)) : success(items);
};

interface Spellings {
  readonly named: ReadonlySet<Sign>;
  /** single characters that the inventory does not hold */
  readonly others: ReadonlySet<string>;
  readonly unknown: readonly string[];
}

const readSpellings = (cells: readonly string[]): Spellings => {
  const named = new Set<Sign>();
  const others = new Set<string>();
  const unknown: string[] = [];
  for (const cell of cells) {
    for (const spelling of spellingsIn(cell)) {
      const signs = findSigns(spelling);
      if (signs !== undefined) for (const sign of signs) named.add(sign);
      else if (isOneCharacter(spelling)) others.add(spelling);
      else unknown.push(spelling);
    }
  }
  return { named, others, unknown };
};

const taughtSigns = (named: readonly Sign[], others: ReadonlySet<string>): TaughtSigns => {
  const names = new Set([...named.map(({ name }) => name), ...others]);
  const limited = new Set<PlainKind>(named.flatMap((sign) => (isContraction(sign) ? [] : [sign.kind])));
  for (const character of others) limited.add(isLetter(character) ? "letter" : "punctuation");
  const isLimited = (kind: PlainKind): boolean => limited.has(kind);
  return {
    names: [...names],
    knows: (sign) => (isContraction(sign) || isLimited(sign.kind) ? names.has(sign.name) : true),
  };
};

/** A cell that is no sign as it stands is read as a list. */
const spellingsIn = (cell: string): string[] => {
  const whole = cell.trim().toLowerCase();
  if (whole === "") return [];
  if (findSigns(whole) !== undefined) return [whole];
  return whole
    .split(/[,;\n]/)
    .map((part) => part.trim())
    .filter((part) => part !== "");
};

/** Also finds a sign written as teachers mark a part of a word: `-ing`, `con-`, `(er)`. */
const findSigns = (spelling: string): readonly Sign[] | undefined =>
  signsBySpelling.get(spelling) ?? signsBySpelling.get(spelling.replace(/^[-(]+(?=\w)|(?<=\w)[-)]+$/g, ""));

const isOneCharacter = (spelling: string): boolean => [...spelling].length === 1;

const MOST_NAMED = 10;

const explainUnknown = (unknown: readonly string[]): string => {
  const named = [...new Set(unknown)].map((text) => `“${text.length > 30 ? `${text.slice(0, 30)}…` : text}”`);
  const more = named.length > MOST_NAMED ? ` and ${named.length - MOST_NAMED} more` : "";
  const are = named.length === 1 ? "is not a sign" : "are not signs";
  return `${named.slice(0, MOST_NAMED).join(", ")}${more} ${are}: write each sign as it is printed (ch, the, ing, in wordsign, b, full stop, number sign).`;
};
