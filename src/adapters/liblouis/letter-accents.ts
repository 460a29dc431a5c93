/** One accent: the combining mark of Unicode and the cells of UEB's modifier, as liblouis writes dots. */
interface Accent {
  readonly mark: string;
  readonly dots: string;
}

/** Modifiers. Source: UEB 2013 section 4.2.1 (cells compared with the letters that the UEB table has). */
const ACCENTS: readonly Accent[] = [
  { mark: "\u0300", dots: "45-16" }, // grave
  { mark: "\u0301", dots: "45-34" }, // acute
  { mark: "\u0302", dots: "45-146" }, // circumflex
  { mark: "\u0303", dots: "45-12456" }, // tilde
  { mark: "\u0304", dots: "4-36" }, // macron
  { mark: "\u0306", dots: "4-346" }, // breve
  { mark: "\u0308", dots: "45-25" }, // dieresis
  { mark: "\u030a", dots: "45-1246" }, // ring
  { mark: "\u030c", dots: "45-346" }, // caron
  { mark: "\u0327", dots: "45-12346" }, // cedilla
];

/** Letters with a stroke, which Unicode does not decompose. Source: UEB 2013 section 4.2.1 (from memory). */
const STROKES: readonly (readonly [upper: string, lower: string, dots: string])[] = [
  ["\u0141", "\u0142", "4-16-123"], // Ł ł, solidus overlay
  ["\u0110", "\u0111", "4-25-145"], // Đ đ, horizontal stroke
  ["\u0126", "\u0127", "4-25-125"], // Ħ ħ
];

const LETTER_DOTS = [
  ["1", "12", "14", "145", "15", "124", "1245", "125", "24", "245"],
  ["13", "123", "134", "1345", "135", "1234", "12345", "1235", "234", "2345"],
  ["136", "1236", "2456", "1346", "13456", "1356"],
].flat();

/** The first of the private characters that stand for letters with an accent which Unicode does not join. */
const FIRST_PRIVATE = 0xe000;

/** An accented letter as a character of its own, in both cases, with its cells. */
interface AccentedLetter {
  readonly upper: string;
  readonly lower: string;
  readonly dots: string;
  /** The small letter and its mark where Unicode has no single character for them, only a private one here. */
  readonly spelled: string | undefined;
}

const makeLetters = (): AccentedLetter[] => {
  let next = FIRST_PRIVATE;
  const letters: AccentedLetter[] = STROKES.map(([upper, lower, dots]) => ({
    upper,
    lower,
    dots,
    spelled: undefined,
  }));
  for (const accent of ACCENTS) {
    for (const [index, dots] of LETTER_DOTS.entries()) {
      const spelled = String.fromCharCode(97 + index) + accent.mark;
      const lower = spelled.normalize("NFC");
      const upper = spelled.toUpperCase().normalize("NFC");
      const cells = `${accent.dots}-${dots}`;
      if (lower.length === 1 && upper.length === 1)
        letters.push({ upper, lower, dots: cells, spelled: undefined });
      else {
        letters.push({
          upper: String.fromCharCode(next),
          lower: String.fromCharCode(next + 1),
          dots: cells,
          spelled,
        });
        next += 2;
      }
    }
  }
  return letters;
};

const LETTERS = makeLetters();

/** A letter and its mark → the private character. */
const JOINED = new Map(
  LETTERS.flatMap(({ spelled, upper, lower }) =>
    spelled === undefined
      ? []
      : ([
          [spelled, lower],
          [spelled.toUpperCase(), upper],
        ] as const),
  ),
);

/**
 * A letter with combining marks as the one character that the tables know; as it stands where there is none.
 *
 * @param cluster - a character and the marks that follow it
 */
export const joinAccent = (cluster: string): string => {
  const composed = cluster.normalize("NFC");
  return JOINED.get(composed) ?? composed;
};

/**
 * A table of `uplow` rules for accented letters that a table lacks (Š Ř ď and their like), made from Unicode's
 * decompositions.
 *
 * @param table - the text of the table's character definitions
 */
export const formatAccentRules = (table: string): string => {
  const defined = new Set(
    [...table.matchAll(/^uplow\s+(\\x[0-9a-f]{4})/gim)].map((match) => match[1]?.toLowerCase()),
  );
  return LETTERS.filter(({ upper }) => !defined.has(formatEscape(upper)))
    .map(({ upper, lower, dots }) => `uplow ${formatEscape(upper)}${formatEscape(lower)} ${dots}\n`)
    .join("");
};

const formatEscape = (character: string): string =>
  `\\x${character.charCodeAt(0).toString(16).padStart(4, "0")}`;
