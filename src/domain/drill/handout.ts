import { BLANK_CELL, isBraille, parseCells } from "../braille/cell";
import { USUAL_LINE, wrapCells } from "../braille/page";
import { pairPrint } from "../braille/print-lines";
import type { Transcription } from "../braille/transcription";
import { refusal, success, type Result } from "../result";
import { tidy, tidyEntry, type HandoutDraft, type HandoutEntry, type HandoutKind } from "./handout-draft";

/** What every handout ends with. */
export const HANDOUT_NOTICE = "Machine translated, not proofread.";

/** Where the print of an item stands: in a column of its own, under each line of braille, or nowhere. */
export const PRINT_PLACES = ["beside", "beneath", "none"] as const;
export type PrintPlace = (typeof PRINT_PLACES)[number];

/** How a handout is laid out. */
export interface HandoutOptions {
  readonly cellsPerLine: number;
  readonly linesPerPage: number;
  /** 2 leaves an empty line after each, for fingers that still lose the line */
  readonly lineSpacing: 1 | 2;
  readonly print: PrintPlace;
  /** the code of the braille, as it is named to the teacher */
  readonly code: string;
}

/** 40 cells × 25 lines is common practice; the rest is our choice, no source. */
export const USUAL_HANDOUT: HandoutOptions = {
  cellsPerLine: USUAL_LINE,
  linesPerPage: 25,
  lineSpacing: 1,
  print: "beside",
  code: "contracted",
};

/** A line of braille with the print that begins on it. */
export interface HandoutLine {
  /** Unicode braille without trailing blanks, never longer than the cells of a line */
  readonly cells: string;
  readonly print: string;
}

/** A text in print and in braille. */
export interface HandoutText {
  /** paragraphs parted by "\n" */
  readonly print: string;
  /** Unicode braille, not broken into lines; paragraphs parted by "\n" */
  readonly cells: string;
  readonly lines: readonly HandoutLine[];
}

/** An item with its braille. */
export interface HandoutItem extends HandoutText {
  readonly kind: HandoutKind;
}

/** A handout in print and braille, laid out in lines. */
export interface Handout {
  readonly title: HandoutText;
  readonly date: HandoutText | undefined;
  readonly items: readonly HandoutItem[];
  /** {@link HANDOUT_NOTICE} */
  readonly notice: HandoutText;
  readonly options: HandoutOptions;
}

/** Turns print into braille, or names what the code has no cells for. */
export type HandoutTranscriber = (text: string) => Result<Transcription>;

/** Our bounds, no source: a heading and a page number need some room, and no embosser has longer lines. */
const CELL_BOUNDS = [8, 100] as const;
const LINE_BOUNDS = [4, 100] as const;

/**
 * A handout from a teacher's draft: blank entries are left out, white space is made single, an empty title becomes
 * "Handout". Sentences and paragraphs begin in cell 3, all else in cell 1 (common practice for paragraphs).
 *
 * @returns the handout, or `not-a-page-size`, `nothing-to-give` (no entry), `untranslatable` naming each item
 */
export const makeHandout = (
  { title, date, entries }: HandoutDraft,
  options: HandoutOptions,
  transcribe: HandoutTranscriber,
): Result<Handout> => {
  const size = checkPageSize(options);
  if (!size.ok) return size;
  const kept = entries.map(tidyEntry).filter(({ text }) => text !== "");
  if (kept.length === 0)
    return refusal(
      "nothing-to-give",
      "The handout is empty: give at least one word, sentence or line of signs.",
    );
  const lay = (text: string, indent: string): Result<HandoutText> =>
    layText(text, indent, options, transcribe);
  const heading = lay(tidy(title) || "Handout", "");
  if (!heading.ok) return atPlace("The title", heading.fault);
  const day = tidy(date) === "" ? undefined : lay(tidy(date), "");
  if (day?.ok === false) return atPlace("The date", day.fault);
  const notice = lay(HANDOUT_NOTICE, "");
  if (!notice.ok) return atPlace("The closing note", notice.fault);
  const items: HandoutItem[] = [];
  const faults: string[] = [];
  for (const [index, entry] of kept.entries()) {
    const laid = layEntry(entry, options, transcribe);
    if (laid.ok) items.push(laid.value);
    else faults.push(`Item ${index + 1}: ${laid.fault.message}`);
  }
  if (faults.length > 0) return refusal("untranslatable", tellFaults(faults));
  return success({
    title: { ...heading.value, lines: centreLines(heading.value, options.cellsPerLine) },
    date: day?.value,
    items,
    notice: notice.value,
    options,
  });
};

const checkPageSize = ({ cellsPerLine, linesPerPage }: HandoutOptions): Result<undefined> => {
  const isWithin = (number: number, [low, high]: readonly [number, number]): boolean =>
    Number.isInteger(number) && number >= low && number <= high;
  if (!isWithin(cellsPerLine, CELL_BOUNDS))
    return refusal(
      "not-a-page-size",
      `A line is to have ${CELL_BOUNDS[0]} to ${CELL_BOUNDS[1]} cells, not ${cellsPerLine}.`,
    );
  if (!isWithin(linesPerPage, LINE_BOUNDS))
    return refusal(
      "not-a-page-size",
      `A page is to have ${LINE_BOUNDS[0]} to ${LINE_BOUNDS[1]} lines, not ${linesPerPage}.`,
    );
  return success(undefined);
};

const PARAGRAPH_INDENT = BLANK_CELL.repeat(2);

const layEntry = (
  { kind, text, print }: HandoutEntry,
  options: HandoutOptions,
  transcribe: HandoutTranscriber,
): Result<HandoutItem> => {
  const indent = (kind === "sentence" || kind === "passage") && !isBraille(text) ? PARAGRAPH_INDENT : "";
  const laid = layText(text, indent, options, transcribe);
  if (!laid.ok) return laid;
  const given = isBraille(text) ? tidy(print ?? "") : "";
  if (given === "") return success({ kind, ...laid.value });
  const lines = laid.value.lines.map((line, index) => (index === 0 ? { ...line, print: given } : line));
  return success({ kind, ...laid.value, print: given, lines });
};

const layText = (
  text: string,
  indent: string,
  { cellsPerLine }: HandoutOptions,
  transcribe: HandoutTranscriber,
): Result<HandoutText> => {
  const paragraphs: Transcription[] = [];
  for (const paragraph of text.split("\n")) {
    const written = isBraille(paragraph) ? asItStands(paragraph) : transcribe(paragraph);
    if (!written.ok) return written;
    paragraphs.push(written.value);
  }
  const lines: HandoutLine[] = [];
  for (const paragraph of paragraphs) {
    const wrapped = wrapCells(indent + paragraph.cells, cellsPerLine);
    if (!wrapped.ok) return wrapped;
    const prints = pairPrint(paragraph, wrapped.value);
    lines.push(...wrapped.value.map((cells, index) => ({ cells, print: prints[index] ?? "" })));
  }
  return success({
    print: paragraphs
      .map(({ print }) => print)
      .join("\n")
      .trim(),
    cells: paragraphs.map(({ cells }) => cells).join("\n"),
    lines,
  });
};

const asItStands = (braille: string): Result<Transcription> => {
  const cells = parseCells(braille);
  return cells.ok ? success({ print: "", cells: cells.value, spans: [] }) : cells;
};

/** Three blank cells at least stand on either side of a heading, where the line has room: common practice, no source. */
const HEADING_MARGIN = 3;
const ROOMY_LINE = 20;

const centreLines = (heading: HandoutText, cellsPerLine: number): readonly HandoutLine[] => {
  const margin = cellsPerLine < ROOMY_LINE ? 0 : HEADING_MARGIN;
  const narrowed = wrapCells(heading.cells, cellsPerLine - 2 * margin);
  if (!narrowed.ok) return heading.lines;
  return narrowed.value.map((cells, index) => ({
    cells: BLANK_CELL.repeat(Math.floor((cellsPerLine - cells.length) / 2)) + cells,
    print: index === 0 ? heading.print : "",
  }));
};

const atPlace = (
  place: string,
  { code, message }: { readonly code: string; readonly message: string },
): ReturnType<typeof refusal> => refusal(code, `${place}: ${message}`);

const MOST_TOLD = 3;

const tellFaults = (faults: readonly string[]): string => {
  const more = faults.length - MOST_TOLD;
  const rest = more > 0 ? ` The same goes for ${more} more ${more === 1 ? "item" : "items"}.` : "";
  return faults.slice(0, MOST_TOLD).join(" ") + rest;
};
