import { BLANK_CELL } from "../braille/cell";
import { DIGITS, INDICATORS } from "../contraction/sign";
import type { Handout, HandoutLine } from "./handout";
import type { HandoutKind } from "./handout-draft";

/** One page of braille. */
export interface EmbosserPage {
  /** from 1 */
  readonly number: number;
  /** as many as the page has lines, the page's number at the right end of the last; an empty one has no cells */
  readonly rows: readonly HandoutLine[];
}

const EMPTY: HandoutLine = { cells: "", print: "" };

const endsEmpty = (rows: readonly HandoutLine[]): boolean => rows.at(-1)?.cells === "";

/**
 * The pages of a handout: the title centred, the date, the items, the closing note; at the right end of the last line
 * of each page, which is kept free for it, the page's number (common practice, no source). A word, a line of signs, a
 * sentence and the note are moved whole to the next page where they fit on one; passages run on.
 *
 * @returns at least one page; every row at most as long as the handout's lines
 */
export const layOutPages = (handout: Handout): EmbosserPage[] => {
  const { cellsPerLine, linesPerPage, lineSpacing } = handout.options;
  const room = linesPerPage - 1;
  const pages: HandoutLine[][] = [];
  let page: HandoutLine[] = [];
  const turn = (): void => {
    pages.push(page);
    page = [];
  };
  const add = (line: HandoutLine): void => {
    const spaced = lineSpacing === 2 && page.length > 0 && !endsEmpty(page);
    if (page.length + (spaced ? 1 : 0) >= room) turn();
    else if (spaced) page.push(EMPTY);
    page.push(line);
  };
  for (const { lines, whole, apart } of blocksOf(handout)) {
    const needed = lines.length * lineSpacing - (lineSpacing - 1);
    const gap = page.length > 0 && (apart || lineSpacing === 2) ? 1 : 0;
    if (page.length > 0 && page.length + gap + (whole && needed <= room ? needed : 1) > room) turn();
    else if (gap > 0 && !endsEmpty(page)) page.push(EMPTY);
    lines.forEach(add);
  }
  turn();
  return pages.map((rows, index) => ({
    number: index + 1,
    rows: [
      ...rows,
      ...Array<HandoutLine>(room - rows.length).fill(EMPTY),
      { cells: formatPageNumber(index + 1).padStart(cellsPerLine, BLANK_CELL), print: String(index + 1) },
    ],
  }));
};

interface Block {
  readonly lines: readonly HandoutLine[];
  /** not to be parted by the end of a page where it fits on one */
  readonly whole: boolean;
  /** with an empty line before it */
  readonly apart: boolean;
}

const blocksOf = ({ title, date, items, notice }: Handout): Block[] => {
  const blocks: Block[] = [{ lines: title.lines, whole: true, apart: false }];
  if (date !== undefined) blocks.push({ lines: date.lines, whole: true, apart: true });
  let before: HandoutKind | undefined;
  for (const { kind, lines } of items) {
    blocks.push({ lines, whole: kind !== "passage", apart: kind !== "word" || before !== "word" });
    before = kind;
  }
  blocks.push({ lines: notice.lines, whole: true, apart: true });
  return blocks;
};

const NUMBER_SIGN = INDICATORS.find(({ name }) => name === "number sign")?.cells ?? "";
const DIGIT_CELLS = new Map(DIGITS.map(({ name, cells }) => [name, cells]));

/** A page's number in braille: the number sign and its digits. Source: UEB 2013, section 6.1. */
export const formatPageNumber = (number: number): string =>
  NUMBER_SIGN + [...String(number)].map((digit) => DIGIT_CELLS.get(digit) ?? "").join("");
