import { cellsOfDots, letterDots } from "./letters";
import type { Contraction } from "./inventory";

/** The kinds of sign that are no contraction. */
export type PlainKind = "letter" | "digit" | "punctuation" | "indicator";

/** A letter, a digit, a punctuation mark or other character, or an indicator. */
export interface PlainSign {
  /** how results name it: `b`, `7`, `full stop`, `number sign`; a character without a name stands for itself */
  readonly name: string;
  /** the characters that it stands for; none for an indicator */
  readonly prints: readonly string[];
  readonly cells: string;
  readonly dots: string;
  readonly kind: PlainKind;
  /** section of The Rules of Unified English Braille, 2nd edition 2013 */
  readonly section: string;
  /** other names that a teacher may write */
  readonly aliases: readonly string[];
}

/** Any unit that is taught. */
export type Sign = Contraction | PlainSign;

const plainSign = (
  kind: PlainKind,
  section: string,
  name: string,
  prints: string,
  dots: string,
  aliases: readonly string[] = [],
): PlainSign => ({ kind, section, name, prints: [...prints], dots, cells: cellsOfDots(dots), aliases });

const ALPHABET = "abcdefghijklmnopqrstuvwxyz";

/** Source: UEB 2013, section 4.1. */
export const LETTERS: readonly PlainSign[] = [...ALPHABET].map((letter) =>
  plainSign("letter", "4.1", letter, letter, letterDots(letter) ?? ""),
);

/** The cells after the number sign. Source: UEB 2013, section 6.1. */
export const DIGITS: readonly PlainSign[] = [..."1234567890"].map((digit, index) =>
  plainSign("digit", "6.1", digit, digit, letterDots(ALPHABET.charAt(index)) ?? ""),
);

/** Source: UEB 2013, sections 7.1–7.6 (and 3.17, 3.27 for slash and underscore). */
export const PUNCTUATION: readonly PlainSign[] = [
  plainSign("punctuation", "7.1", "comma", ",", "2"),
  plainSign("punctuation", "7.1", "semicolon", ";", "23"),
  plainSign("punctuation", "7.1", "colon", ":", "25"),
  plainSign("punctuation", "7.1", "full stop", ".", "256", ["period"]),
  plainSign("punctuation", "7.1", "exclamation mark", "!", "235", ["exclamation point"]),
  plainSign("punctuation", "7.5", "question mark", "?", "236"),
  plainSign("punctuation", "7.1", "apostrophe", "'’", "3"),
  plainSign("punctuation", "7.1", "hyphen", "-‐‑", "36"),
  plainSign("punctuation", "7.2", "dash", "–—", "6-36"),
  plainSign("punctuation", "7.2", "long dash", "―—", "5-6-36"),
  plainSign("punctuation", "7.3", "ellipsis", "…", "256-256-256"),
  plainSign("punctuation", "7.6", "opening quotation mark", '"“', "236", ["quotation marks"]),
  plainSign("punctuation", "7.6", "closing quotation mark", '"”', "356", ["quotation marks"]),
  plainSign("punctuation", "7.6", "opening single quotation mark", "'‘", "6-236", ["single quotation marks"]),
  plainSign("punctuation", "7.6", "closing single quotation mark", "'’", "6-356", ["single quotation marks"]),
  plainSign("punctuation", "7.1", "opening parenthesis", "(", "5-126", ["parentheses", "round brackets"]),
  plainSign("punctuation", "7.1", "closing parenthesis", ")", "5-345", ["parentheses", "round brackets"]),
  plainSign("punctuation", "7.1", "opening square bracket", "[", "46-126", ["square brackets"]),
  plainSign("punctuation", "7.1", "closing square bracket", "]", "46-345", ["square brackets"]),
  plainSign("punctuation", "7.1", "slash", "/", "456-34"),
  plainSign("punctuation", "7.1", "underscore", "_", "46-36"),
];

/** Source: UEB 2013, sections 5.2–5.5 (grade 1), 6.1 (numeric), 8.3–8.6 (capitals). */
export const INDICATORS: readonly PlainSign[] = [
  plainSign("indicator", "6.1", "number sign", "", "3456", ["numeric indicator", "number indicator"]),
  plainSign("indicator", "8.3", "capital", "", "6", ["capital sign", "capital letter", "capital indicator"]),
  plainSign("indicator", "8.4", "capital word", "", "6-6", [
    "capital word indicator",
    "capitals word indicator",
  ]),
  plainSign("indicator", "8.5", "capital passage", "", "6-6-6", ["capital passage indicator"]),
  plainSign("indicator", "8.6", "capital terminator", "", "6-3", ["capitals terminator"]),
  plainSign("indicator", "5.2", "grade 1 sign", "", "56", ["grade 1", "letter sign", "grade 1 indicator"]),
  plainSign("indicator", "5.3", "grade 1 word", "", "56-56", ["grade 1 word indicator"]),
  plainSign("indicator", "5.4", "grade 1 passage", "", "56-56-56", ["grade 1 passage indicator"]),
  plainSign("indicator", "5.5", "grade 1 terminator", "", "56-3"),
];

/** Every sign that is no contraction and has a place in the inventory, by kind letters, digits, punctuation, indicators. */
export const PLAIN_SIGNS: readonly PlainSign[] = [...LETTERS, ...DIGITS, ...PUNCTUATION, ...INDICATORS];

/** Whether a sign is a contraction. */
export const isContraction = (sign: Sign): sign is Contraction => "order" in sign;
