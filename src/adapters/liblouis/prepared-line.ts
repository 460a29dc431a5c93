import { joinAccent } from "./letter-accents";
import { markNumericSpaces } from "./numeric-spaces";

/** A line of print as the engine gets it, and where each of its characters stood in the line as written. */
export interface PreparedLine {
  readonly text: string;
  /** Index in the line as written of each character of `text`; absent where they are the same. */
  readonly origins: readonly number[] | undefined;
}

/** A private character that no table defines but the supplement, which names it untranslatable. */
export const UNTRANSLATABLE = "\uf8fe";

const PLAIN = /^[\x20-\x7e]*$/;
/** Soft hyphen, zero-width and direction marks, variation selectors, byte order mark: nothing to see, no cell. */
const INVISIBLE =
  /[\u00ad\u061c\u180e\u200b-\u200f\u202a-\u202e\u2060-\u2064\u2066-\u206f\ufe00-\ufe0f\ufeff]/;
/** Every space that is one blank cell: tab, next line, no-break, fixed widths. */
const SPACE = /[\t\u0085\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]/;
/** Control characters and private ones, which no one can read. */
const UNUSABLE = /[\p{Cc}\p{Co}]/u;
const LETTER = /\p{L}/u;
const LETTER_OR_DIGIT = /[\p{L}\p{N}]/u;
/** A character with the marks that combine with it. */
const CLUSTER = /\P{M}\p{M}+/gu;

/**
 * A line made ready for any table: spaces of every kind as blanks, what cannot be seen left out, letters and
 * their accents as one character where Unicode has one.
 *
 * @param line - print without line breaks
 */
export const prepareLine = (line: string): PreparedLine =>
  prepare(line, (cluster) => cluster.normalize("NFC"), keepText);

/**
 * A line made ready for the UEB tables: as {@link prepareLine}, and further accents joined to their letters, an
 * apostrophe where the curly sign is one, an em dash as the dash of UEB (2013 section 7.2).
 *
 * @param line - print without line breaks
 */
export const prepareUebLine = (line: string): PreparedLine => {
  const { text, origins } = prepare(line, joinAccent, straightenMarks);
  return { text: markNumericSpaces(text), origins };
};

const keepText = (text: string): string => text;

/** `revise` works on the whole line and keeps its length. */
const prepare = (
  line: string,
  join: (cluster: string) => string,
  revise: (text: string) => string,
): PreparedLine => {
  if (PLAIN.test(line)) return { text: line, origins: undefined };
  const { text, origins } = composeAccents(line, join);
  const characters: string[] = [];
  const kept: number[] = [];
  for (let index = 0; index < text.length; index += 1) {
    const character = text.charAt(index);
    if (INVISIBLE.test(character)) continue;
    const origin = origins?.[index] ?? index;
    kept.push(origin);
    if (SPACE.test(character)) characters.push(" ");
    // Only what the line itself holds: joined letters may be private characters too.
    else characters.push(UNUSABLE.test(line.charAt(origin)) ? UNTRANSLATABLE : character.normalize("NFC"));
  }
  return { text: revise(characters.join("")), origins: kept };
};

/** Curly apostrophes and dashes as the characters that the UEB tables treat rightly. */
const straightenMarks = (text: string): string => {
  if (!/[\u2014\u2019]/.test(text)) return text;
  let straight = "";
  let openQuotes = 0;
  for (let index = 0; index < text.length; index += 1) {
    const character = text.charAt(index);
    if (character === "\u2018") openQuotes += 1;
    if (character === "\u2019" && closesQuotation(text, index, openQuotes)) {
      openQuotes = Math.max(0, openQuotes - 1);
      straight += character;
    } else if (character === "\u2019") straight += "'";
    // The tables give the em dash the cells of the long dash; UEB 2013 section 7.2 has one dash for both widths.
    else straight += character === "\u2014" ? "\u2013" : character;
  }
  return straight;
};

/** Whether a right single quotation mark closes a quotation; otherwise it is an apostrophe. */
const closesQuotation = (text: string, index: number, openQuotes: number): boolean => {
  const followed = LETTER.test(text.charAt(index + 1));
  const led = LETTER_OR_DIGIT.test(text.charAt(index - 1));
  if (followed) return false;
  return openQuotes > 0 || !led;
};

/** Letters written with combining marks as single characters where there is one. */
const composeAccents = (line: string, join: (cluster: string) => string): PreparedLine => {
  if (!/\p{M}/u.test(line)) return { text: line, origins: undefined };
  let text = "";
  const origins: number[] = [];
  let done = 0;
  const copy = (from: number, to: number): void => {
    for (let index = from; index < to; index += 1) {
      text += line.charAt(index);
      origins.push(index);
    }
  };
  for (const match of line.matchAll(CLUSTER)) {
    const composed = join(match[0]);
    if (composed === match[0]) continue;
    copy(done, match.index);
    text += composed;
    for (let index = 0; index < composed.length; index += 1) {
      origins.push(match.index + Math.min(index, match[0].length - 1));
    }
    done = match.index + match[0].length;
  }
  copy(done, line.length);
  return { text, origins };
};
