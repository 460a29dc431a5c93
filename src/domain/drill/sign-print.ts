import { BLANK_CELL, formatDots } from "../braille/cell";
import { CONTRACTIONS } from "../contraction/inventory";
import { DIGITS, INDICATORS, isContraction, LETTERS, PUNCTUATION, type Sign } from "../contraction/sign";

/**
 * The print of a line of signs for whoever reads print: the signs' names parted by commas, two signs side by side
 * joined by a hyphen (`ch, sh, ch-sh`). Cells of no sign are given by their dots.
 *
 * Several signs may share their cells: a preferred one is named, else a letter, else a groupsign, else a whole word.
 *
 * @param cells - items parted by blank cells, each one sign or two, a digit after its number sign
 * @param preferred - the signs that the line practises, and those they are told apart from
 */
export const printSignLine = (cells: string, preferred: readonly Sign[] = []): string => {
  const names = namesByCells(preferred);
  return cells
    .split(BLANK_CELL)
    .filter((item) => item !== "")
    .map((item) => nameItem(item, names))
    .join(", ");
};

const NUMBER_SIGN = INDICATORS.find(({ name }) => name === "number sign")?.cells ?? "";

const cellsBy = (sign: Sign): string => (sign.kind === "digit" ? NUMBER_SIGN + sign.cells : sign.cells);

const isWholeWord = ({ kind }: Sign): boolean => /wordsign|shortform/.test(kind);

const BY_WONT: readonly Sign[] = [
  ...LETTERS,
  ...DIGITS,
  ...CONTRACTIONS.filter((sign) => !isWholeWord(sign)),
  ...CONTRACTIONS.filter(isWholeWord),
  ...PUNCTUATION,
  ...INDICATORS,
];

const namesByCells = (preferred: readonly Sign[]): ReadonlyMap<string, string> => {
  const names = new Map<string, string>();
  for (const sign of [...preferred, ...BY_WONT]) {
    const cells = cellsBy(sign);
    if (!names.has(cells)) names.set(cells, isContraction(sign) ? sign.print : sign.name);
  }
  return names;
};

const nameItem = (item: string, names: ReadonlyMap<string, string>): string => {
  const whole = names.get(item);
  if (whole !== undefined) return whole;
  for (let at = 1; at < item.length; at++) {
    const [first, second] = [names.get(item.slice(0, at)), names.get(item.slice(at))];
    if (first !== undefined && second !== undefined) return `${first}-${second}`;
  }
  return formatDots(item);
};
