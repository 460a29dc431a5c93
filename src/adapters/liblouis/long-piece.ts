import type { Rendering } from "./rendering";

/**
 * Characters handed to the engine at once; what it needs for its work grows with them, and its heap and stack are
 * fixed. The shorter one is for texts in which a rule calls itself too often (a thousand quotation marks).
 */
export const LONGEST_CALL = 2000;
export const SHORT_CALL = 300;
/** Characters on either side that a rule may look at; far more than any rule of the tables does. */
const OVERLAP = 100;
/** Places tried for a cut before the text is cut regardless. */
const CUTS_TRIED = 40;

const PASSAGE_START = "\u2820\u2820\u2820";
const PASSAGE_END = "\u2820\u2804";

type Render = (text: string) => Rendering;

/**
 * The braille of a text too long for one call, the same as one call would give.
 *
 * @param text - without line breaks
 * @param render - the engine
 * @param longest - characters in one call at most
 * @param passages - whether capitals passages run over the words of the text (UEB)
 */
export const renderLongPiece = (
  text: string,
  render: Render,
  longest: number,
  passages: boolean,
): Rendering =>
  passages && text.includes(" ")
    ? renderByWords(text, render, longest)
    : renderByWindows(text, render, longest);

/** Stretches of whole words; a capitals passage that ends where the next stretch begins one goes on instead. */
const renderByWords = (text: string, render: Render, longest: number): Rendering => {
  let whole: Rendering = { cells: "", starts: [], unknown: [] };
  let start = 0;
  while (start < text.length) {
    const end =
      text.length - start <= longest
        ? text.length
        : findCut(text, start, Math.min(start + longest, text.length - LEAST_REST));
    const blanks = text.slice(start, end).length - text.slice(start, end).trimStart().length;
    whole = append(whole, renderBlanks(blanks), start);
    const part = text.slice(start + blanks, end);
    const rendering = part.length > longest ? renderByWindows(part, render, longest) : render(part);
    whole = joinPassage(whole, blanks, rendering, start + blanks);
    start = end;
  }
  return whole;
};

/** Characters left for the last stretch, so that it is a passage by itself. */
const LEAST_REST = 60;
const CAPITAL_WORD = /\p{Lu}\S*$/u;
const CAPITAL_START = /^ +\p{Lu}/u;

/**
 * The blank at which a stretch ends: the last one that stands between a word with a capital and a word that begins
 * with one, because there a passage can end and begin; otherwise the last one, or the next after.
 */
const findCut = (text: string, start: number, most: number): number => {
  const last = text.lastIndexOf(" ", most);
  if (last <= start) {
    const next = text.indexOf(" ", Math.max(most, start + 1));
    return next === -1 ? text.length : next;
  }
  for (let blank = last, tries = 0; blank > start && tries < CUTS_TRIED; tries += 1) {
    if (
      CAPITAL_START.test(text.slice(blank, blank + OVERLAP)) &&
      CAPITAL_WORD.test(text.slice(Math.max(start, blank - OVERLAP), blank))
    ) {
      return blank;
    }
    blank = text.lastIndexOf(" ", blank - 1);
  }
  return last;
};

const renderBlanks = (count: number): Rendering => ({
  cells: "\u2800".repeat(count),
  starts: Array.from({ length: count * 2 }, (_, index) => index >> 1),
  unknown: [],
});

/** Appends a stretch; takes out the end and the new start of a passage that runs on over the blanks between. */
const joinPassage = (whole: Rendering, blanks: number, next: Rendering, start: number): Rendering => {
  const before = whole.cells.slice(0, whole.cells.length - blanks);
  if (!before.endsWith(PASSAGE_END) || !next.cells.startsWith(PASSAGE_START))
    return append(whole, next, start);
  const end = before.length - PASSAGE_END.length;
  const starts: number[] = [];
  for (let index = 0; index < whole.starts.length; index += 2) {
    const cell = whole.starts[index + 1] ?? 0;
    // After a contraction the end of the passage is a span of its own, with the contraction's last letter.
    if (cell < end) starts.push(whole.starts[index] ?? 0, cell);
    else if (cell >= before.length) starts.push(whole.starts[index] ?? 0, cell - PASSAGE_END.length);
  }
  const open: Rendering = { ...whole, cells: before.slice(0, end) + "\u2800".repeat(blanks), starts };
  const going: Rendering = {
    ...next,
    cells: next.cells.slice(PASSAGE_START.length),
    starts: next.starts.map((place, index) =>
      index % 2 === 1 ? Math.max(0, place - PASSAGE_START.length) : place,
    ),
  };
  return append(open, going, start);
};

/**
 * Overlapping windows of which only the inner part is used. A cut lies where a span begins in both windows, so
 * that no contraction is torn.
 */
const renderByWindows = (text: string, render: Render, longest: number): Rendering => {
  const reach = longest - 2 * OVERLAP;
  const windowAt = (place: number): Window => {
    const from = Math.max(0, place);
    return { from, rendering: render(text.slice(from, from + longest)) };
  };
  let whole: Rendering = { cells: "", starts: [], unknown: [] };
  let start = 0;
  let window = windowAt(0);
  for (;;) {
    if (window.from + longest >= text.length) return append(whole, take(window, start, text.length), start);
    const cuts = window.rendering.starts
      .filter((_, index) => index % 2 === 0)
      .map((place) => place + window.from)
      .filter((place) => place > start && place <= window.from + OVERLAP + reach)
      .slice(-CUTS_TRIED)
      .reverse();
    const cut =
      cuts.find((place) => beginsSpan(windowAt(place - OVERLAP), place)) ?? cuts[0] ?? window.from + longest;
    whole = append(whole, take(window, start, cut), start);
    const overlapping = windowAt(cut - OVERLAP);
    window = beginsSpan(overlapping, cut) ? overlapping : windowAt(cut);
    start = cut;
  }
};

interface Window {
  readonly from: number;
  readonly rendering: Rendering;
}

const beginsSpan = ({ from, rendering }: Window, place: number): boolean =>
  rendering.starts.some((start, index) => index % 2 === 0 && start + from === place);

/** The part of a window for the print from one place up to another, counted from its own start. */
const take = ({ from, rendering }: Window, start: number, end: number): Rendering => {
  const starts: number[] = [];
  let firstCell: number | undefined;
  let endCell = rendering.cells.length;
  for (let index = 0; index < rendering.starts.length; index += 2) {
    const place = (rendering.starts[index] ?? 0) + from;
    const cell = rendering.starts[index + 1] ?? 0;
    if (place < start) continue;
    if (place >= end) {
      endCell = cell;
      break;
    }
    firstCell ??= cell;
    starts.push(place - start, cell - firstCell);
  }
  return {
    cells: rendering.cells.slice(firstCell ?? endCell, endCell),
    starts,
    unknown: rendering.unknown
      .map((place) => place + from - start)
      .filter((place) => place >= 0 && place < end - start),
  };
};

const append = (whole: Rendering, part: Rendering, print: number): Rendering => {
  const cell = whole.cells.length;
  return {
    cells: whole.cells + part.cells,
    starts: whole.starts.concat(part.starts.map((place, index) => place + (index % 2 === 0 ? print : cell))),
    unknown: whole.unknown.concat(part.unknown.map((place) => place + print)),
  };
};
