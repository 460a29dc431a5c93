import type { Span, Transcription } from "../braille/transcription";
import { letterCell } from "./letters";
import type { TaughtSigns } from "./taught";
import { findUses } from "./usage";

/** A transcription in which only some contractions stand: a teaching aid, and never UEB contracted braille. */
export interface PartlyContracted extends Transcription {
  readonly label: "partly contracted";
}

/**
 * Spells out, letter by letter, every contraction that is not taught. All else stays as it is in contracted
 * braille: the taught contractions, and the indicators, among them the grade 1 sign before a letter that stands
 * alone. Spelling out never calls for a further one: no print form of a contraction is a letter by itself or a
 * sequence of letters that could be read as a shortform (UEB 2013, section 5.7).
 *
 * @param contracted - in contracted Unified English Braille
 * @param kept - places that stay as they are whatever their signs: the teacher's exceptions
 */
export const spellOutUntaught = (
  contracted: Transcription,
  taught: TaughtSigns,
  kept: readonly Span[] = [],
): PartlyContracted => {
  const isKept = (place: number): boolean =>
    kept.some(({ printStart, printEnd }) => printStart <= place && place < printEnd);
  const untaught = findUses(contracted).filter(
    ({ contraction, printStart }) => !taught.knows(contraction) && !isKept(printStart),
  );
  const copy = new TranscriptionCopy(contracted);
  for (const use of untaught) {
    copy.until(use.printStart, use.cellStart);
    for (const [index, letter] of [...use.contraction.print].entries()) {
      copy.add(letterCell(letter) ?? "", use.printStart + index + 1);
    }
    copy.skipTo(use.cellEnd);
  }
  copy.until(contracted.print.length, contracted.cells.length);
  return { ...copy.finish(), label: "partly contracted" };
};

/** A transcription copied from another piece by piece, with other cells put in between. */
class TranscriptionCopy {
  readonly #source: Transcription;
  readonly #spans: Span[] = [];
  #cells = "";
  /** where the next piece starts in the print, in the copy's cells, and in the source's cells and spans */
  #print = 0;
  #cell = 0;
  #sourceCell = 0;
  #sourceSpan = 0;

  constructor(source: Transcription) {
    this.#source = source;
  }

  /** Copies the source up to a place in its print and its cells. */
  until(print: number, cell: number): void {
    for (;;) {
      const span = this.#source.spans[this.#sourceSpan];
      if (span === undefined || span.cellStart > cell || span.printStart > print) return;
      const end = Math.min(span.cellEnd, cell);
      this.add(this.#source.cells.slice(this.#sourceCell, end), Math.min(span.printEnd, print));
      this.#sourceCell = Math.max(this.#sourceCell, end);
      if (span.cellEnd > cell || span.printEnd > print) return;
      this.#sourceSpan++;
    }
  }

  /** Adds cells that stand for the print up to there; cells without print go with the print after them. */
  add(cells: string, printEnd: number): void {
    this.#cells += cells;
    if (printEnd <= this.#print) return;
    this.#spans.push({
      printStart: this.#print,
      printEnd,
      cellStart: this.#cell,
      cellEnd: this.#cells.length,
    });
    this.#print = printEnd;
    this.#cell = this.#cells.length;
  }

  /** Leaves out the source's cells up to there. */
  skipTo(cell: number): void {
    this.#sourceCell = cell;
  }

  finish(): Transcription {
    const last = this.#spans.at(-1);
    if (last !== undefined) this.#spans[this.#spans.length - 1] = { ...last, cellEnd: this.#cells.length };
    return { print: this.#source.print, cells: this.#cells, spans: this.#spans };
  }
}
