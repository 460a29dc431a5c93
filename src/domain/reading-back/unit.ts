import { CONTRACTIONS } from "../contraction/inventory";
import { cellsOfDots } from "../contraction/letters";
import { DIGITS, LETTERS, PUNCTUATION } from "../contraction/sign";

/** What a stretch of cells may stand for. */
export interface Unit {
  readonly cells: string;
  readonly print: string;
  readonly kind: "letter" | "shortform" | "whole" | "start" | "middle" | "end" | "any" | "opening" | "mark";
}

const letterUnits: readonly Unit[] = LETTERS.map(({ cells, name }) => ({
  cells,
  print: name,
  kind: "letter",
}));

/** Marks over letters. Source: UEB 2013 section 4.2.1. */
const ACCENTS: readonly (readonly [dots: string, mark: string])[] = [
  ["45-16", "\u0300"],
  ["45-34", "\u0301"],
  ["45-146", "\u0302"],
  ["45-12456", "\u0303"],
  ["4-36", "\u0304"],
  ["4-346", "\u0306"],
  ["45-25", "\u0308"],
  ["45-1246", "\u030a"],
  ["45-346", "\u030c"],
  ["45-12346", "\u0327"],
];

const accentUnits: readonly Unit[] = ACCENTS.flatMap(([dots, mark]) =>
  letterUnits
    .map((letter): Unit => ({
      ...letter,
      cells: cellsOfDots(dots) + letter.cells,
      print: (letter.print + mark).normalize("NFC"),
    }))
    .filter(({ print }) => print.length === 1),
);

const PLACES = { whole: "whole", start: "start", middle: "middle", end: "end" } as const;

const contractionUnits: readonly Unit[] = CONTRACTIONS.flatMap(({ cells, print, places, kind }): Unit[] =>
  kind === "shortform" || places.length === 4
    ? [{ cells, print, kind: kind === "shortform" ? kind : "any" }]
    : places.map((place) => ({ cells, print, kind: PLACES[place] })),
);

/** Other signs. Source: UEB 2013 sections 3 and 11 (cells as the UEB table of the build has them). */
const SIGNS: readonly (readonly [print: string, dots: string])[] = [
  ["%", "46-356"],
  ["&", "4-12346"],
  ["@", "4-1"],
  ["#", "456-1456"],
  ["*", "5-35"],
  ["+", "5-235"],
  ["−", "5-36"],
  ["×", "5-236"],
  ["÷", "5-34"],
  ["=", "5-2356"],
  ["<", "4-126"],
  [">", "4-345"],
  ["{", "456-126"],
  ["}", "456-345"],
  ["\\", "456-16"],
  ["|", "456-1256"],
  ["~", "4-35"],
  ["$", "4-234"],
  ["€", "4-15"],
  ["£", "4-123"],
  ["¢", "4-14"],
  ["¥", "4-13456"],
  ["°", "45-245"],
  ["©", "45-14"],
  ["§", "45-234"],
  ["¶", "45-1234"],
  ["•", "456-256"],
  ["✓", "4-146"],
];

const markUnits: readonly Unit[] = [
  ...PUNCTUATION.map(({ cells, prints, name }): Unit => ({
    cells,
    print: prints[name.includes("single") ? 1 : 0] ?? "",
    kind: name.startsWith("opening") ? "opening" : "mark",
  })),
  ...SIGNS.map(([print, dots]): Unit => ({ cells: cellsOfDots(dots), print, kind: "mark" })),
];

const gather = (units: readonly Unit[]): ReadonlyMap<string, readonly Unit[]> => {
  const groups = new Map<string, Unit[]>();
  for (const unit of units) {
    const first = unit.cells.charAt(0);
    groups.set(first, [...(groups.get(first) ?? []), unit]);
  }
  return groups;
};

/** Units of uncontracted braille by their first cell. */
export const PLAIN_UNITS = gather([...letterUnits, ...accentUnits, ...markUnits]);

/** Units of contracted braille by their first cell. */
export const CONTRACTED_UNITS = gather([...letterUnits, ...accentUnits, ...contractionUnits, ...markUnits]);

/** The digit of a cell in numeric mode. */
export const DIGIT_OF: ReadonlyMap<string, string> = new Map(DIGITS.map(({ cells, name }) => [cells, name]));

/** Indicators, and signs inside numbers. Source: UEB 2013 sections 5, 6 and 8. */
export const INDICATOR = {
  number: cellsOfDots("3456"),
  capital: cellsOfDots("6"),
  capitalWord: cellsOfDots("6-6"),
  capitalPassage: cellsOfDots("6-6-6"),
  capitalEnd: cellsOfDots("6-3"),
  grade1: cellsOfDots("56"),
  grade1Word: cellsOfDots("56-56"),
  decimalPoint: cellsOfDots("256"),
  numericComma: cellsOfDots("2"),
  numericSpace: cellsOfDots("5"),
} as const;
