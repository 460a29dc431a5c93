import type { Span, Transcription } from "../braille/transcription";
import type { Transcribe } from "./passage";

/** A transcription and the places where the teacher's own braille stands. */
export interface ExceptedTranscription extends Transcription {
  readonly excepted: readonly Span[];
}

/** A stretch of print, half-open, and the cells that are to stand for it. */
export interface Replacement {
  readonly start: number;
  readonly end: number;
  readonly cells: string;
}

/**
 * Transcribes a text with given cells for some of its stretches.
 *
 * A neutral word of the same length stands in for each, so that the engine sees its surroundings as they are
 * (quotation marks, standing alone, passages in capitals), and its cells are exchanged afterwards. Where the engine
 * joins a stand-in with its surroundings, which no table of Unified English Braille does, the text is cut there.
 *
 * @param replacements - in order, without overlap
 */
export const placeCells = (
  transcribe: Transcribe,
  text: string,
  replacements: readonly Replacement[],
): ExceptedTranscription =>
  exchangeStandIns(transcribe, text, replacements) ?? cutAtReplacements(transcribe, text, replacements);

/** Letters that no contraction, wordsign or shortform uses; `a` alone needs no grade 1 sign. */
const standIn = (length: number): string => (length === 1 ? "a" : "k".repeat(length));

const exchangeStandIns = (
  transcribe: Transcribe,
  text: string,
  replacements: readonly Replacement[],
): ExceptedTranscription | undefined => {
  let stoodIn = "";
  let end = 0;
  for (const replacement of replacements) {
    stoodIn += text.slice(end, replacement.start) + standIn(replacement.end - replacement.start);
    end = replacement.end;
  }
  const engine = transcribe(stoodIn + text.slice(end));
  const parts = new PartsOfText(text);
  let next = 0;
  for (const span of engine.spans) {
    const replacement = replacements[next];
    if (replacement === undefined || span.printEnd <= replacement.start) {
      parts.add(span.printEnd, engine.cells.slice(span.cellStart, span.cellEnd));
    } else if (span.printStart < replacement.start || span.printEnd > replacement.end) return undefined;
    else if (span.printEnd === replacement.end) {
      parts.addExcepted(replacement);
      next++;
    }
  }
  return parts.finish();
};

const cutAtReplacements = (
  transcribe: Transcribe,
  text: string,
  replacements: readonly Replacement[],
): ExceptedTranscription => {
  const parts = new PartsOfText(text);
  const addEngine = (start: number, end: number): void => {
    const { cells, spans } = transcribe(text.slice(start, end));
    for (const span of spans) parts.add(start + span.printEnd, cells.slice(span.cellStart, span.cellEnd));
  };
  let end = 0;
  for (const replacement of replacements) {
    addEngine(end, replacement.start);
    parts.addExcepted(replacement);
    end = replacement.end;
  }
  addEngine(end, text.length);
  return parts.finish();
};

/** A transcription put together span by span. */
class PartsOfText {
  readonly #print: string;
  readonly #spans: Span[] = [];
  readonly #excepted: Span[] = [];
  #cells = "";

  constructor(print: string) {
    this.#print = print;
  }

  add(printEnd: number, cells: string): Span {
    const cellStart = this.#cells.length;
    this.#cells += cells;
    const span = {
      printStart: this.#spans.at(-1)?.printEnd ?? 0,
      printEnd,
      cellStart,
      cellEnd: this.#cells.length,
    };
    this.#spans.push(span);
    return span;
  }

  addExcepted({ end, cells }: Replacement): void {
    this.#excepted.push(this.add(end, cells));
  }

  finish(): ExceptedTranscription {
    return { print: this.#print, cells: this.#cells, spans: this.#spans, excepted: this.#excepted };
  }
}
