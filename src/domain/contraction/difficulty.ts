import type { ContractionKind } from "./inventory";
import { isContraction, PLAIN_SIGNS, type PlainKind, type Sign } from "./sign";

/**
 * How hard the signs of each kind are to learn, 0 easiest.
 *
 * Source: Ashcroft 1960, errors in oral reading of braille at grades 2 to 6, as quoted in a dissertation's abstract;
 * from the easiest: alphabetic wordsigns, full spelling, upper-cell signs, lower-cell signs, combinations, multiple-cell
 * contractions, shortforms. Combinations are no kind of sign and are left out. Punctuation is placed with the
 * lower-cell signs and indicators with the multiple-cell ones by our choice, no source.
 */
const DIFFICULTY: Readonly<Record<ContractionKind | PlainKind, number>> = {
  "alphabetic wordsign": 0,
  letter: 1,
  digit: 1,
  "strong wordsign": 2,
  "strong contraction": 2,
  "strong groupsign": 2,
  "lower wordsign": 3,
  "lower groupsign": 3,
  punctuation: 3,
  "initial-letter contraction": 4,
  "final-letter groupsign": 4,
  indicator: 4,
  shortform: 5,
};

const orderOfPlain = new Map(PLAIN_SIGNS.map((sign, order) => [sign.name, order]));

/** How hard a sign's kind is to learn, from 0, the easiest, to {@link HARDEST}. */
export const difficultyOf = ({ kind }: Pick<Sign, "kind">): number => DIFFICULTY[kind];

/** The difficulty of the hardest kind. */
export const HARDEST = 5;

/** Places of plain signs come after all contractions, strangers last. */
const AFTER_CONTRACTIONS = 1_000;
const AFTER_ALL = 10_000;

/** A sign's place in the order of the inventory: contractions, letters, digits, punctuation, indicators, all others. */
export const inventoryOrder = (sign: Sign): number =>
  isContraction(sign)
    ? sign.order
    : (orderOfPlain.get(sign.name) ?? AFTER_ALL - AFTER_CONTRACTIONS) + AFTER_CONTRACTIONS;

/**
 * Which of two signs is to be taught first, all else being equal: the easier kind, then the one that contains fewer
 * signs still unknown (shortforms: `children` contains ch), then the order of the inventory.
 *
 * @param isKnown - whether the sign of that name is known
 * @returns below 0 where `one` comes first
 */
export const compareDifficulty = (one: Sign, other: Sign, isKnown: (name: string) => boolean): number =>
  DIFFICULTY[one.kind] - DIFFICULTY[other.kind] ||
  unknownInside(one, isKnown) - unknownInside(other, isKnown) ||
  inventoryOrder(one) - inventoryOrder(other) ||
  (one.name < other.name ? -1 : 1);

const unknownInside = (sign: Sign, isKnown: (name: string) => boolean): number =>
  isContraction(sign) ? sign.embeds.filter((name) => !isKnown(name)).length : 0;
