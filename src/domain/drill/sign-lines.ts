import { BLANK_CELL, dotsOf } from "../braille/cell";
import { inventoryOrder } from "../contraction/difficulty";
import { INDICATORS, isContraction, type PlainKind, type Sign } from "../contraction/sign";
import type { RandomSource } from "../seeded-random";

/** Lines of one sign each, of two different signs side by side, and of two that are the same or different. */
export const SIGN_LINE_KINDS = ["singles", "pairs", "same or different"] as const;
export type SignLineKind = (typeof SIGN_LINE_KINDS)[number];

/** A line of signs to practise by touch. */
export interface SignLine {
  readonly kind: SignLineKind;
  /** Unicode braille: the signs' own cells from the inventory, items parted by a blank cell */
  readonly cells: string;
}

/** What lines are wanted. */
export interface LineWish {
  readonly wanted: readonly Sign[];
  /** signs that the pupil knows, to be told apart from the wanted ones */
  readonly known: readonly Sign[];
  readonly lines: number;
  /** cells a line at most */
  readonly mostCells: number;
  readonly random: RandomSource;
}

/** More items a line than this tire rather than train: our choice, no source. */
const MOST_ITEMS = 8;

/** How many of the signs most like a wanted one it is paired with. */
const COMPANIONS = 3;

/**
 * Lines of signs, the kinds in turn. Each wanted sign has its turn equally often in the lines of a kind. It is paired
 * with the other wanted signs, and with the known signs of as many cells that differ from it in fewest dots (where there
 * are none, of another number of cells): letters and contractions with their like, digits with digits, punctuation with
 * punctuation.
 *
 * A kind of line is left out where not two signs fit, or, but for singles, where there is nothing to pair with.
 *
 * @returns as many lines as wanted, or none where no kind of line is possible
 */
export const makeSignLines = (wish: LineWish): SignLine[] => {
  const pairing = pairingOf(wish);
  const kinds = SIGN_LINE_KINDS.filter((kind) => canFill(kind, pairing, wish.mostCells));
  if (kinds.length === 0) return [];
  const turns = new Map(kinds.map((kind) => [kind, new Turns(wish.random)] as const));
  return Array.from({ length: wish.lines }, (_, index) => {
    const kind = kinds[index % kinds.length] ?? "singles";
    return { kind, cells: fillLine(kind, pairing, wish, turns.get(kind) ?? new Turns(wish.random)) };
  });
};

/** Each wanted sign's cells with the cells of the signs that it is paired with. */
type Pairing = ReadonlyMap<string, readonly string[]>;

const pairingOf = ({ wanted, known }: LineWish): Pairing => {
  const others = [...known].sort((one, other) => inventoryOrder(one) - inventoryOrder(other));
  const [targets, strangers] = [wanted.map(standAlone), others.map(standAlone)];
  const cellsOf = (signs: readonly StandingSign[], kin?: Kin): string[] => [
    ...new Set(signs.flatMap((sign) => (kin === undefined || sign.kin === kin ? [sign.cells] : []))),
  ];
  const cellsOfWanted = cellsOf(targets);
  return new Map(
    targets.map(({ cells, kin }) => {
      const wantedToo = cellsOf(targets, kin).filter((other) => other !== cells);
      const alike = cellsOf(strangers, kin).filter((other) => !cellsOfWanted.includes(other));
      return [cells, [...wantedToo, ...mostAlike(cells, alike)]];
    }),
  );
};

/**
 * Signs that read as themselves side by side: a letter after a digit would be a digit too, and a punctuation mark
 * against a letter may be a groupsign (UEB 2013, sections 6.1 and 10.6).
 */
type Kin = "letters" | "digits" | "punctuation" | "indicators";
const KIN_OF_PLAIN: Readonly<Record<PlainKind, Kin>> = {
  letter: "letters",
  digit: "digits",
  punctuation: "punctuation",
  indicator: "indicators",
};

/** A sign as it is felt by itself. */
interface StandingSign {
  readonly cells: string;
  readonly kin: Kin;
}

const NUMBER_SIGN = INDICATORS.find(({ name }) => name === "number sign")?.cells ?? "";

/** A digit is one after the number sign only; without it the cell is a letter (UEB 2013, section 6.1). */
const standAlone = (sign: Sign): StandingSign =>
  isContraction(sign)
    ? { cells: sign.cells, kin: "letters" }
    : {
        cells: sign.kind === "digit" ? NUMBER_SIGN + sign.cells : sign.cells,
        kin: KIN_OF_PLAIN[sign.kind],
      };

/** The signs whose number of cells is nearest, of these the few that differ in fewest dots. */
const mostAlike = (cells: string, others: readonly string[]): string[] => {
  const gaps = others.map((other) => Math.abs(other.length - cells.length));
  const nearest = Math.min(...gaps);
  return others
    .filter((_, index) => gaps[index] === nearest)
    .map((other) => ({ other, dots: countDotsApart(cells, other) }))
    .sort((one, other) => one.dots - other.dots)
    .slice(0, COMPANIONS)
    .map(({ other }) => other);
};

/** How many dots two signs differ in, cell by cell; a cell that one of them lacks counts as blank. */
const countDotsApart = (one: string, other: string): number => {
  let apart = 0;
  for (let index = 0; index < Math.max(one.length, other.length); index++) {
    const [dots, others] = [one, other].map((cells) => dotsOf(cells.charAt(index) || BLANK_CELL));
    apart += (dots ?? []).filter((dot) => others?.includes(dot) !== true).length;
    apart += (others ?? []).filter((dot) => dots?.includes(dot) !== true).length;
  }
  return apart;
};

const canFill = (kind: SignLineKind, pairing: Pairing, mostCells: number): boolean =>
  [...pairing.keys()].some((cells) => canBegin(kind, cells, pairing, mostCells));

/** Whether a sign can begin two items of a line: one alone is nothing to tell apart. */
const canBegin = (kind: SignLineKind, cells: string, pairing: Pairing, mostCells: number): boolean =>
  2 * shortest(itemsOf(kind, cells, pairing)) + BLANK_CELL.length <= mostCells;

const shortest = (items: readonly string[]): number => Math.min(...items.map(({ length }) => length));

/** Every item that a sign may begin in a line of that kind. */
const itemsOf = (kind: SignLineKind, cells: string, pairing: Pairing): string[] => {
  if (kind === "singles") return [cells];
  const mixed = (pairing.get(cells) ?? []).flatMap((other) => [cells + other, other + cells]);
  return kind === "pairs" || mixed.length === 0 ? mixed : [cells + cells, ...mixed];
};

const fillLine = (
  kind: SignLineKind,
  pairing: Pairing,
  { mostCells, random }: LineWish,
  turns: Turns,
): string => {
  const items: string[] = [];
  const signs = [...pairing.keys()].filter((cells) => canBegin(kind, cells, pairing, mostCells));
  const least = shortest(signs.flatMap((cells) => itemsOf(kind, cells, pairing)));
  let room = mostCells;
  while (items.length < MOST_ITEMS) {
    const cells = turns.next(signs);
    // The first item leaves room for a second.
    const space = items.length === 0 ? room - least - BLANK_CELL.length : room;
    const fitting = itemsOf(kind, cells, pairing).filter(({ length }) => length <= space);
    if (fitting.length === 0) break;
    const item = pick(kind, cells, fitting, items, random);
    items.push(item);
    room -= item.length + 1;
  }
  return items.join(BLANK_CELL);
};

/** Same and different each come up half the time, and the second item of a line differs in that from the first. */
const pick = (
  kind: SignLineKind,
  cells: string,
  fitting: readonly string[],
  before: readonly string[],
  random: RandomSource,
): string => {
  const any = (items: readonly string[]): string => items[Math.floor(random() * items.length)] ?? "";
  if (kind !== "same or different") return any(fitting);
  const same = fitting.filter((item) => item === cells + cells);
  const different = fitting.filter((item) => item !== cells + cells);
  const first = before[0];
  const wantsSame = before.length === 1 && first !== undefined ? !isTwice(first) : random() < 1 / 2;
  const chosen = wantsSame ? same : different;
  return any(chosen.length > 0 ? chosen : fitting);
};

const isTwice = (item: string): boolean => item.slice(0, item.length / 2) === item.slice(item.length / 2);

/** Gives each of several signs once in a chance order, then again. */
class Turns {
  readonly #random: RandomSource;
  #left: string[] = [];

  constructor(random: RandomSource) {
    this.#random = random;
  }

  next(signs: readonly string[]): string {
    this.#left = this.#left.filter((sign) => signs.includes(sign));
    if (this.#left.length === 0) this.#left = [...signs];
    return this.#left.splice(Math.floor(this.#random() * this.#left.length), 1)[0] ?? "";
  }
}
