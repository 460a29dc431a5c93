import { BLANK_CELL, dotsOf } from "../braille/cell";
import { inventoryOrder } from "../contraction/difficulty";
import { INDICATORS, type Sign } from "../contraction/sign";
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
 * Lines of signs, the kinds in turn. Each wanted sign has its turn equally often in the lines of a kind. It is paired with the other
 * wanted signs, and with the known signs of as many cells that differ from it in fewest dots.
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
  const cellsOfWanted = [...new Set(wanted.map(cellsByThemselves))].filter((cells) => cells !== "");
  const cellsOfKnown = [...new Set(others.map(cellsByThemselves))].filter((cells) => cells !== "");
  return new Map(
    cellsOfWanted.map((cells) => {
      const alike = cellsOfKnown
        .filter((other) => other.length === cells.length && !cellsOfWanted.includes(other))
        .map((other) => ({ other, dots: countDotsApart(cells, other) }))
        .sort((one, other) => one.dots - other.dots)
        .slice(0, COMPANIONS)
        .map(({ other }) => other);
      return [cells, [...cellsOfWanted.filter((other) => other !== cells), ...alike]];
    }),
  );
};

const NUMBER_SIGN = INDICATORS.find(({ name }) => name === "number sign")?.cells ?? "";

/** A digit is one after the number sign only; without it the cell is a letter (UEB 2013, section 6.1). */
const cellsByThemselves = ({ kind, cells }: Sign): string => (kind === "digit" ? NUMBER_SIGN + cells : cells);

/** How many dots two signs of the same number of cells differ in. */
const countDotsApart = (one: string, other: string): number => {
  let apart = 0;
  for (let index = 0; index < one.length; index++) {
    const [dots, others] = [dotsOf(one.charAt(index)), dotsOf(other.charAt(index))];
    apart += dots.filter((dot) => !others.includes(dot)).length;
    apart += others.filter((dot) => !dots.includes(dot)).length;
  }
  return apart;
};

const canFill = (kind: SignLineKind, pairing: Pairing, mostCells: number): boolean =>
  [...pairing.keys()].some((cells) => canBegin(kind, cells, pairing, mostCells));

/** Whether a sign can stand on a line with another or with itself: one sign alone is nothing to tell apart. */
const canBegin = (kind: SignLineKind, cells: string, pairing: Pairing, mostCells: number): boolean =>
  kind === "singles"
    ? 2 * cells.length + BLANK_CELL.length <= mostCells
    : itemsOf(kind, cells, pairing).some((item) => item.length <= mostCells);

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
  let room = mostCells;
  while (items.length < MOST_ITEMS) {
    const cells = turns.next(signs);
    const fitting = itemsOf(kind, cells, pairing).filter((item) => item.length <= room);
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
