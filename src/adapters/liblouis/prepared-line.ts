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
const INVISIBLE = /[\u00ad\u061c\u180e\u200b-\u200f\u202a-\u202e\u2060-\u2064\u2066-\u206f\ufe00-\ufe0f\ufeff]/;
/** Every space that is one blank cell: tab, next line, no-break, fixed widths. */
const SPACE = /[\t\u0085\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]/;
const CONTROL = /\p{Cc}/u;
const LETTER = /\p{L}/u;
const LETTER_OR_DIGIT = /[\p{L}\p{N}]/u;
/** A character with the marks that combine with it. */
const CLUSTER = /\P{M}\p{M}+/gu;

/** Whether a text is printable ASCII, which the engine takes as it is. */
export const isPlain = (text: string): boolean => PLAIN.test(text);

/**
 * A line made ready for the engine: spaces of every kind as blanks, what cannot be seen left out, accents joined
 * to their letters, an apostrophe where the curly sign is one, an em dash as the dash of UEB (2013 section 7.2).
 *
 * @param line - print without line breaks
 */
export const prepareLine = (line: string): PreparedLine => {
  if (PLAIN.test(line)) return { text: line, origins: undefined };
  const { text, origins } = composeAccents(line);
  const characters: string[] = [];
  const kept: number[] = [];
  let openQuotes = 0;
  for (let index = 0; index < text.length; index += 1) {
    const character = text.charAt(index);
    if (INVISIBLE.test(character)) continue;
    kept.push(origins?.[index] ?? index);
    if (character === "\u2018") openQuotes += 1;
    if (character !== "\u2019") characters.push(replaceCharacter(character));
    else if (closesQuotation(text, index, openQuotes)) {
      openQuotes -= 1;
      characters.push(character);
    } else characters.push("'");
  }
  return { text: characters.join(""), origins: kept };
};

const replaceCharacter = (character: string): string => {
  if (SPACE.test(character)) return " ";
  if (CONTROL.test(character)) return UNTRANSLATABLE;
  // The tables give the em dash the cells of the long dash; UEB 2013 section 7.2 has one dash for both widths.
  return character === "\u2014" ? "\u2013" : character;
};

/** Whether a right single quotation mark closes a quotation; otherwise it is an apostrophe. */
const closesQuotation = (text: string, index: number, openQuotes: number): boolean => {
  const followed = LETTER.test(text.charAt(index + 1));
  const led = LETTER_OR_DIGIT.test(text.charAt(index - 1));
  if (followed) return false;
  return openQuotes > 0 || !led;
};

/** Letters written with combining marks as single characters where Unicode has one, because the tables do. */
const composeAccents = (line: string): PreparedLine => {
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
    const composed = match[0].normalize("NFC");
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
