import { BLANK_CELL } from "../braille/cell";
import { wrapCells } from "../braille/page";
import { CONTRACTIONS } from "../contraction/inventory";
import { INDICATORS, LETTERS, type Sign } from "../contraction/sign";
import type { Result } from "../result";
import type { RandomSource } from "../seeded-random";

/** The longest row of signs: three minutes at a sign a second. Our choice, no source. */
export const LONGEST_ROW = 180;

/**
 * A row of signs in chance order: each sign comes as often as any other, give or take one, and none twice in a row where
 * there is another. The same row for the same signs, length and seed.
 *
 * @param signs - one or more; signs that share their cells count as one, the first of them
 * @param length - signs in the row, 0 to {@link LONGEST_ROW}
 * @returns none where there is no sign
 */
export const drawSignRow = (
  signs: readonly Sign[],
  length: number,
  random: RandomSource,
): readonly Sign[] => {
  const pool = [...new Map([...signs].reverse().map((sign) => [cellsAlone(sign), sign])).values()].reverse();
  if (pool.length === 0) return [];
  const row: Sign[] = [];
  while (row.length < Math.min(length, LONGEST_ROW)) row.push(...shuffleAfter(row.at(-1), pool, random));
  return row.slice(0, length);
};

/** Signs of a mixed row at least: of fewer, the next one is guessed from those before. Our choice, no source. */
const LEAST_MIXED = 4;

/**
 * Signs among others that are not asked for, so that the next of a row is not known before it is felt: as many others as
 * signs, more where that makes fewer than four in all, and only as many as there are.
 *
 * @param others - signs that share their cells with one asked for, or with another one, are passed over
 */
export const mixSigns = (
  signs: readonly Sign[],
  others: readonly Sign[],
  random: RandomSource,
): readonly Sign[] => {
  const asked = new Set(signs.map(cellsAlone));
  const apart = new Map(
    others.filter((sign) => !asked.has(cellsAlone(sign))).map((sign) => [cellsAlone(sign), sign]),
  );
  const count = Math.max(signs.length, LEAST_MIXED - signs.length);
  return [...signs, ...shuffleAfter(undefined, [...apart.values()], random).slice(0, count)];
};

/** All signs once in chance order; the first is another than the one before it. */
const shuffleAfter = (
  before: Sign | undefined,
  pool: readonly Sign[],
  random: RandomSource,
): readonly Sign[] => {
  const order = [...pool];
  for (let last = order.length - 1; last > 0; last -= 1) {
    const other = Math.floor(random() * (last + 1));
    [order[last], order[other]] = [order[other], order[last]] as [Sign, Sign];
  }
  const [first, ...rest] = order;
  if (first === undefined || first !== before || rest.length === 0) return order;
  const place = 1 + Math.floor(random() * rest.length);
  return [...rest.slice(0, place), first, ...rest.slice(place)];
};

const NUMBER_SIGN = INDICATORS.find(({ name }) => name === "number sign")?.cells ?? "";

/** The cells of a sign by itself, from the inventory: a digit is one after the number sign only (UEB 2013, section 6.1). */
export const cellsAlone = (sign: Sign): string =>
  sign.kind === "digit" ? NUMBER_SIGN + sign.cells : sign.cells;

/** What else cells can be that stand alone: `ch` for ⠡ drawn as child, you for y. */
export const otherNames = (sign: Sign): readonly string[] => {
  const cells = cellsAlone(sign);
  return [...LETTERS, ...CONTRACTIONS]
    .filter((other) => other.name !== sign.name && cellsAlone(other) === cells)
    .map(({ name }) => name);
};

/** Blanks between two signs of a row: fingers find where a sign ends. Common practice, no source. */
const GAP = BLANK_CELL.repeat(2);

/**
 * A row of signs in lines of braille, two blanks between signs, none parted at the end of a line.
 *
 * @param most - cells a line at most
 * @returns lines, or `not-a-line-length`
 */
export const layOutSigns = (signs: readonly Sign[], most: number): Result<readonly string[]> =>
  wrapCells(signs.map(cellsAlone).join(GAP), most);

/**
 * A row of signs parted into the lines that {@link layOutSigns} makes of it.
 *
 * @param most - cells a line at most; a sign longer than that has a line of its own
 */
export const splitSignRow = (signs: readonly Sign[], most: number): readonly (readonly Sign[])[] => {
  const lines: Sign[][] = [];
  let width = 0;
  for (const sign of signs) {
    const own = [...cellsAlone(sign)].length;
    const line = lines.at(-1);
    if (line !== undefined && width + GAP.length + own <= most) {
      line.push(sign);
      width += GAP.length + own;
    } else {
      lines.push([sign]);
      width = own;
    }
  }
  return lines;
};
