import { refusal, success, type Result } from "../result";
import { parseAnyCells } from "./cell-notation";
import { placeCells, type ExceptedTranscription, type Replacement } from "./exception-placement";
import type { Transcribe } from "./passage";

/** The teacher's own braille for words that the engine's table gets wrong: names, acronyms. */
export interface Exceptions {
  /** how many words */
  readonly size: number;
  /** the words as they are written in the list */
  readonly words: readonly string[];
  /** Transcribes a text with the exceptions in place of the engine's cells. */
  transcribe(transcribe: Transcribe, text: string): ExceptedTranscription;
}

const CAPITAL = "⠠";
const GRADE_1 = "⠰";
const BLANK = "⠀";

/**
 * Reads a list of exceptions: word and braille (Unicode braille, ASCII braille or dot numbers), a row each.
 *
 * Whole words match: no letter or digit stands beside them; an apostrophe before a letter makes it part of a longer
 * word, but for the possessive 's. A word written without capitals matches in any capitals that a rule can mark: its
 * cells are then led by the capital sign or the capital word sign. A word written with capitals (US) matches only
 * so, but a name with a first capital (Theo, its braille beginning with the capital sign) also in full capitals.
 * Blank rows and the header `Word | Braille` are skipped; of two rows for a word the later one counts.
 *
 * @param rows - one row of texts each, exactly two
 * @returns the exceptions, or `exceptions-shape` / `exception-incomplete` / `exception-not-braille`, naming the row
 */
export const parseExceptions = (rows: readonly (readonly string[])[]): Result<Exceptions> => {
  const entries = new Map<string, string>();
  for (const [index, row] of rows.entries()) {
    if (row.every((text) => text.trim() === "")) continue;
    if (row.length !== 2) {
      return refusal("exceptions-shape", "Exceptions are a range of two columns: the word, and its braille.");
    }
    const [word = "", braille = ""] = row.map((text) => text.trim());
    if (isHeader(word, braille)) continue;
    const place = `Row ${index + 1} of the exceptions`;
    if (word === "" || braille === "") {
      return refusal(
        "exception-incomplete",
        `${place} is incomplete: write the word on the left and its braille on the right.`,
      );
    }
    const cells = parseAnyCells(braille);
    if (!cells.ok) {
      return refusal(
        "exception-not-braille",
        `${place}: “${braille}” is not braille. Write Unicode braille, ASCII braille, or dot numbers such as 125-15.`,
      );
    }
    entries.set(straighten(word), cells.value);
  }
  return success(exceptionsOf(entries));
};

const isHeader = (word: string, braille: string): boolean =>
  word.toLowerCase() === "word" && braille.toLowerCase() === "braille";

/** One form of apostrophe and of white space, keeping the length. */
const straighten = (text: string): string => text.replaceAll("’", "'").replace(/\s/g, " ");

const exceptionsOf = (entries: ReadonlyMap<string, string>): Exceptions => {
  const pattern = patternOf([...entries.keys()]);
  return {
    size: entries.size,
    words: [...entries.keys()],
    transcribe: (transcribe, text) => {
      const matches = entries.size === 0 ? [] : findMatches(straighten(text), pattern, entries);
      return matches.length === 0
        ? { ...transcribe(text), excepted: [] }
        : placeCells(transcribe, text, matches);
    },
  };
};

const patternOf = (words: readonly string[]): RegExp => {
  const alternatives = [...words]
    .sort((one, other) => other.length - one.length)
    .map((word) => word.replace(/[.*+?^${}()|[\]\\/-]/g, "\\$&"));
  const before = "(?<![\\p{L}\\p{M}\\p{N}]|[\\p{L}\\p{N}]')";
  const after = "(?![\\p{L}\\p{M}\\p{N}]|'(?!s(?![\\p{L}\\p{N}]))\\p{L})";
  return new RegExp(`${before}(?:${alternatives.join("|")})${after}`, "giu");
};

const findMatches = (text: string, pattern: RegExp, entries: ReadonlyMap<string, string>): Replacement[] => {
  const matches: Replacement[] = [];
  for (const match of text.matchAll(pattern)) {
    const cells = cellsInCase(match[0], entries);
    if (cells !== undefined) matches.push({ start: match.index, end: match.index + match[0].length, cells });
  }
  return matches;
};

const cellsInCase = (found: string, entries: ReadonlyMap<string, string>): string | undefined => {
  const exact = entries.get(found);
  if (exact !== undefined) return exact;
  const lower = found.toLowerCase();
  const initial = found.charAt(0) + lower.slice(1);
  const allCapitals = found === found.toUpperCase() && lower.length > 1;
  const plain = entries.get(lower);
  if (plain !== undefined) {
    if (allCapitals) return capitalised(plain, CAPITAL + CAPITAL);
    return found === initial ? capitalised(plain, CAPITAL) : undefined;
  }
  const name = entries.get(initial);
  if (name === undefined || !allCapitals || !name.startsWith(CAPITAL) || name.startsWith(CAPITAL + CAPITAL))
    return undefined;
  return capitalised(name.slice(1), CAPITAL + CAPITAL);
};

/** The grade 1 sign comes before the capital sign (UEB 2013, section 5.7.1); each word of full capitals has its own. */
const capitalised = (cells: string, sign: string): string => {
  const lead = (word: string): string => {
    const inner = word.replace(/^⠰+/, "");
    return GRADE_1.repeat(word.length - inner.length) + sign + inner;
  };
  return sign.length === 1 ? lead(cells) : cells.split(BLANK).map(lead).join(BLANK);
};
