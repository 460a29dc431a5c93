import { cellsOfDots, letterDots } from "./letters";
import {
  ALPHABETIC_WORDSIGNS,
  FINAL_LETTER_GROUPSIGNS,
  INITIAL_LETTER_CONTRACTIONS,
  LOWER_GROUPSIGNS,
  LOWER_WORDSIGNS,
  SHORTFORMS,
  STRONG_CONTRACTIONS,
  STRONG_GROUPSIGNS,
  STRONG_WORDSIGNS,
} from "./contraction-rules";

/** The kinds of contraction, in the order of the rule book. */
export type ContractionKind =
  | "alphabetic wordsign"
  | "strong wordsign"
  | "strong contraction"
  | "strong groupsign"
  | "lower wordsign"
  | "lower groupsign"
  | "initial-letter contraction"
  | "final-letter groupsign"
  | "shortform";

/** Where a contraction may stand: as a whole word, or at the start, in the middle or at the end of a longer one. */
type WordPlace = "whole" | "start" | "middle" | "end";

/** One contraction of Unified English Braille in one use. */
export interface Contraction {
  /** how results name it: its print form; `in wordsign`, `in groupsign`, `be wordsign`, `be groupsign` for those two */
  readonly name: string;
  readonly print: string;
  /** Unicode braille */
  readonly cells: string;
  /** dot numbers, cells joined by `-` */
  readonly dots: string;
  readonly kind: ContractionKind;
  /** section of The Rules of Unified English Braille, 2nd edition 2013 */
  readonly section: string;
  /** Places that the rules of form allow; meaning and pronunciation (section 10.7, 10.11) narrow them further. */
  readonly places: readonly WordPlace[];
  /** names of the contractions that its cells contain, for a shortform such as `children` (ch) */
  readonly embeds: readonly string[];
  /** a shortform that also longer words outside the list of appendix 1 may use (section 10.9.3) */
  readonly freeUse: boolean;
  /** its place in {@link CONTRACTIONS}, 0 first */
  readonly order: number;
}

type Draft = Omit<Contraction, "order" | "name">;

/** Names the two uses of `in` and `be`, which share print and cells; every other sign is named by its print. */
const nameOf = ({ print, kind }: Draft): string =>
  print === "in" || print === "be"
    ? `${print} ${kind === "lower wordsign" ? "wordsign" : "groupsign"}`
    : print;

const PLACE_LETTERS: Readonly<Record<string, WordPlace>> = { w: "whole", s: "start", m: "middle", e: "end" };

const fieldsOfRows = (rows: string): string[][] =>
  rows
    .trim()
    .split(/\s*[,\n]\s*/)
    .map((row) => row.split(" "));

const placesOf = (letters: string): WordPlace[] =>
  [...letters].flatMap((letter) => PLACE_LETTERS[letter] ?? []);

/** Reads rows such as `the 2346`: print, dots. */
const readSigns = (rows: string, kind: ContractionKind, section: string, places: string): Draft[] =>
  fieldsOfRows(rows).map(([print = "", dots = ""]) => ({
    print,
    dots,
    cells: cellsOfDots(dots),
    kind,
    section,
    places: placesOf(places),
    embeds: [],
    freeUse: false,
  }));

/**
 * Reads rows such as `children (ch)n *`: print, the braille by letters with the contractions it contains in
 * parentheses, and a star where longer words may use it freely.
 */
const readShortforms = (rows: string, signs: readonly Draft[]): Draft[] =>
  fieldsOfRows(rows).map(([print = "", braille = "", star]) => {
    const parts = (braille.match(/\(\w+\)|\w/g) ?? []).map((part) =>
      part.length > 1 ? groupsignOf(part.slice(1, -1), signs) : part,
    );
    const dots = parts.map((part) => (typeof part === "string" ? letterDots(part) : part.dots)).join("-");
    return {
      print,
      dots,
      cells: cellsOfDots(dots),
      kind: "shortform",
      section: "10.9",
      places: placesOf("wsme"),
      embeds: parts.flatMap((part) => (typeof part === "string" ? [] : nameOf(part))),
      freeUse: star === "*",
    };
  });

const groupsignOf = (print: string, signs: readonly Draft[]): Draft => {
  const sign = signs.find((candidate) => candidate.print === print && candidate.kind !== "lower wordsign");
  if (sign === undefined) throw new RangeError(`A shortform contains "${print}", which is no contraction.`);
  return sign;
};

const signs: readonly Draft[] = [
  ...readSigns(ALPHABETIC_WORDSIGNS, "alphabetic wordsign", "10.1", "w"),
  ...readSigns(STRONG_WORDSIGNS, "strong wordsign", "10.2", "w"),
  ...readSigns(STRONG_CONTRACTIONS, "strong contraction", "10.3", "wsme"),
  ...readSigns(STRONG_GROUPSIGNS.anywhere, "strong groupsign", "10.4", "sme"),
  ...readSigns(STRONG_GROUPSIGNS.notAtStart, "strong groupsign", "10.4", "me"),
  ...readSigns(LOWER_WORDSIGNS, "lower wordsign", "10.5", "w"),
  ...readSigns(LOWER_GROUPSIGNS.firstSyllable, "lower groupsign", "10.6.1-10.6.4", "s"),
  ...readSigns(LOWER_GROUPSIGNS.betweenLetters, "lower groupsign", "10.6.5-10.6.7", "m"),
  ...readSigns(LOWER_GROUPSIGNS.anywhere, "lower groupsign", "10.6.8-10.6.10", "sme"),
  ...readSigns(INITIAL_LETTER_CONTRACTIONS, "initial-letter contraction", "10.7", "wsme"),
  ...readSigns(FINAL_LETTER_GROUPSIGNS, "final-letter groupsign", "10.8", "me"),
];

/**
 * Every contraction of Unified English Braille in the order of the rule book: 180 signs in 182 uses, because
 * `be` and `in` are each a lower wordsign and a lower groupsign.
 *
 * Source: The Rules of Unified English Braille, 2nd edition 2013, sections 10.1–10.9 and appendix 1.
 */
export const CONTRACTIONS: readonly Contraction[] = [...signs, ...readShortforms(SHORTFORMS, signs)].map(
  (draft, order) => ({ ...draft, name: nameOf(draft), order }),
);

const byName = new Map(CONTRACTIONS.map((contraction) => [contraction.name, contraction]));

/** The contraction of that name (`the`, `in wordsign`), or undefined. */
export const findContraction = (name: string): Contraction | undefined => byName.get(name);

/** The contractions that a print form stands for: one, or two for plain `in` and `be`; none if unknown. */
export const contractionsOfPrint = (print: string): readonly Contraction[] =>
  CONTRACTIONS.filter((contraction) => contraction.print === print);

/** A kind as the sheet functions write it: `initial-letter-contraction`. */
export const formatKind = (kind: string): string => kind.replaceAll(" ", "-");
