import type { Span, Transcription } from "../../domain/braille/transcription";
import { UntranslatableError, type Translator, type UntranslatableCharacter } from "../../ports/translator";
import type { CompiledTable, Engine } from "./engine";
import { LONGEST_CALL, renderLongPiece, SHORT_CALL } from "./long-piece";
import { splitAtOpenings, splitIntoPieces, PASSAGE_WORDS, type Piece } from "./pieces";
import { prepareLine, prepareUebLine, type PreparedLine } from "./prepared-line";
import { markPiece, SEAM_PATTERN } from "./marked-piece";
import type { Rendering } from "./rendering";
import { explainUntranslatable } from "./untranslatable";
import type { WordMemo } from "./word-memo";

/** What the translator must know of a table. */
export interface TableTraits {
  readonly code: string;
  /** A UEB table: prepared as such, six dots (dot 7 only marks a capital inside the engine), texts split at spaces. */
  readonly ueb: boolean;
  /** a code with contractions, which may not cross the seams of a word */
  readonly contracted: boolean;
}

/** Words longer than this are rare and not worth keeping. */
const LONGEST_KEPT = 64;
const LINE_BREAK = /\r\n|[\n\v\f\r\u2028\u2029]/g;
const BLANK = "\u2800";
const SPACE = 0x20;
const QUOTATION_MARK = 0x22;
const SMALL_A = 0x61;
const SMALL_Z = 0x7a;
const TILDE = 0x7e;
/** The virtual dots 9 and A that the supplement gives to every undefined character. */
const UNDEFINED_PATTERN = 0x300;
const VIRTUAL_DOTS = 0x7f00;
const SIX_DOTS = 0x3f;
const EIGHT_DOTS = 0xff;

/** Cells of every pattern, so that none is made twice. */
const CELLS = Array.from({ length: 256 }, (_, pattern) => String.fromCharCode(0x2800 + pattern));

/** A {@link Translator} over one compiled table. */
export class LouisTranslator implements Translator {
  readonly code: string;
  readonly #engine: Engine;
  readonly #table: CompiledTable;
  readonly #traits: TableTraits;
  readonly #memo: WordMemo<Rendering> | undefined;

  /** @param memo - absent: every word goes through the engine */
  constructor(engine: Engine, table: CompiledTable, traits: TableTraits, memo?: WordMemo<Rendering>) {
    this.code = traits.code;
    this.#engine = engine;
    this.#table = table;
    this.#traits = traits;
    this.#memo = memo;
  }

  translate(text: string): string {
    const joined = this.#joinWords(text);
    if (joined !== undefined) return joined;
    let cells = "";
    let faulty = false;
    eachLine(text, (line, _start, lineBreak) => {
      const prepared = this.#prepare(line);
      for (const piece of this.#split(prepared.text)) {
        if (piece.kind === "blank") cells += BLANK;
        else {
          const rendering = this.#render(printOf(prepared.text, piece));
          cells += rendering.cells;
          if (rendering.unknown.length > 0) faulty = true;
        }
      }
      if (lineBreak > 0) cells += "\n";
    });
    if (faulty) throw this.#refuse(text);
    return cells;
  }

  /**
   * The cells of words that cannot depend on each other, joined, in one pass; undefined where the text may hold more
   * than that. What {@link splitIntoPieces} and {@link prepareUebLine} look for is told by characters: anything but
   * printable ASCII, a straight quotation mark, a digit on both sides of a blank, three words without a small letter.
   */
  #joinWords(text: string): string | undefined {
    if (this.#memo === undefined) return undefined;
    let cells = "";
    let start = 0;
    let hasSmall = false;
    let withoutSmall = 0;
    for (let index = 0; index <= text.length; index += 1) {
      const code = index === text.length ? SPACE : text.charCodeAt(index);
      if (code >= SMALL_A && code <= SMALL_Z) hasSmall = true;
      else if (code < SPACE || code > TILDE || code === QUOTATION_MARK) return undefined;
      else if (code === SPACE) {
        if (index > start) {
          withoutSmall = hasSmall ? 0 : withoutSmall + 1;
          if (withoutSmall === PASSAGE_WORDS) return undefined;
          const rendering = this.#render(text.slice(start, index));
          if (rendering.unknown.length > 0) return undefined;
          cells += rendering.cells;
        }
        if (index < text.length) {
          if (isDigit(text.charCodeAt(index - 1)) && isDigit(text.charCodeAt(index + 1))) return undefined;
          cells += BLANK;
        }
        start = index + 1;
        hasSmall = false;
      }
    }
    return cells;
  }

  transcribe(text: string): Transcription {
    const spans: Span[] = [];
    let cells = "";
    let faulty = false;
    eachLine(text, (line, lineStart, lineBreak) => {
      const prepared = this.#prepare(line);
      const starts: number[] = [];
      const cellStart = cells.length;
      for (const piece of this.#split(prepared.text)) {
        const cell = cells.length - cellStart;
        if (piece.kind === "blank") {
          starts.push(originAt(prepared, piece.start), cell);
          cells += BLANK;
          continue;
        }
        const rendering = this.#render(printOf(prepared.text, piece));
        for (let index = 0; index < rendering.starts.length; index += 2) {
          starts.push(
            originAt(prepared, piece.start + (rendering.starts[index] ?? 0)),
            cell + (rendering.starts[index + 1] ?? 0),
          );
        }
        cells += rendering.cells;
        if (rendering.unknown.length > 0) faulty = true;
      }
      addSpans(spans, starts, {
        print: lineStart,
        printEnd: lineStart + line.length,
        cell: cellStart,
        cellEnd: cells.length,
      });
      if (lineBreak > 0) {
        const printStart = lineStart + line.length;
        spans.push({
          printStart,
          printEnd: printStart + lineBreak,
          cellStart: cells.length,
          cellEnd: cells.length + 1,
        });
        cells += "\n";
      }
    });
    if (faulty) throw this.#refuse(text);
    return { print: text, cells, spans };
  }

  untranslatable(text: string): readonly UntranslatableCharacter[] {
    const found = new Map<number, UntranslatableCharacter>();
    eachLine(text, (line, lineStart) => {
      const prepared = this.#prepare(line);
      for (const piece of this.#split(prepared.text)) {
        if (piece.kind === "blank") continue;
        for (const place of this.#render(printOf(prepared.text, piece)).unknown) {
          let index = lineStart + originAt(prepared, piece.start + place);
          // The engine sees the halves of a surrogate pair as two characters.
          if (isSecondHalf(text, index)) index -= 1;
          found.set(index, { character: String.fromCodePoint(text.codePointAt(index) ?? 0), index });
        }
      }
    });
    return [...found.values()].sort((one, other) => one.index - other.index);
  }

  /** Empties the word memo. */
  forget(): void {
    this.#memo?.clear();
  }

  #refuse(text: string): UntranslatableError {
    const characters = this.untranslatable(text);
    return new UntranslatableError(explainUntranslatable(this.code, text, characters), characters);
  }

  #prepare(line: string): PreparedLine {
    return this.#traits.ueb ? prepareUebLine(line) : prepareLine(line);
  }

  #split(text: string): readonly Piece[] {
    if (text.length === 0) return [];
    if (!this.#traits.ueb) return [{ start: 0, end: text.length, kind: "passage" }];
    return this.#memo === undefined && text.length <= LONGEST_CALL
      ? splitAtOpenings(text)
      : splitIntoPieces(text);
  }

  #render(word: string): Rendering {
    const known = this.#memo?.get(word);
    if (known !== undefined) return known;
    const rendering = word.length <= SHORT_CALL ? this.#renderAnew(word) : this.#renderLong(word);
    if (word.length <= LONGEST_KEPT && !word.includes(" ")) this.#memo?.keep(word, rendering);
    return rendering;
  }

  #renderLong(text: string): Rendering {
    const render = (part: string): Rendering => this.#renderAnew(part);
    try {
      if (text.length <= LONGEST_CALL) return render(text);
      return renderLongPiece(text, render, LONGEST_CALL, this.#traits.ueb);
    } catch (failure) {
      if (!(failure instanceof RangeError)) throw failure;
      return renderLongPiece(text, render, SHORT_CALL, this.#traits.ueb);
    }
  }

  #renderAnew(word: string): Rendering {
    const marked = this.#traits.ueb ? markPiece(word, this.#traits.contracted) : undefined;
    const { patterns, origins } = this.#engine.translate(this.#table, marked?.text ?? word, true);
    const mask = this.#traits.ueb ? SIX_DOTS : EIGHT_DOTS;
    const starts: number[] = [];
    const unknown: number[] = [];
    let cells = "";
    let reached = -1;
    let taken = 0;
    for (let index = 0; index < patterns.length; index += 1) {
      const pattern = patterns[index] ?? 0;
      const place = origins?.[index] ?? 0;
      const origin = marked?.origins?.[place] ?? place;
      if ((pattern & VIRTUAL_DOTS) === SEAM_PATTERN) {
        taken += 1;
        continue;
      }
      if ((pattern & VIRTUAL_DOTS) === UNDEFINED_PATTERN) unknown.push(origin);
      // Origins may step back where a rule moves an indicator: such cells stay with the group before.
      if (origin > reached) {
        starts.push(reached === -1 ? 0 : origin, index - taken);
        reached = origin;
      }
      cells += CELLS[pattern & mask] ?? BLANK;
    }
    if (starts.length === 0) starts.push(0, 0);
    return { cells, starts, unknown };
  }
}

const isDigit = (code: number): boolean => code >= 0x30 && code <= 0x39;

/** Calls back for each line of a text with its start and the length of the break after it, 0 at the end. */
const eachLine = (text: string, visit: (line: string, start: number, lineBreak: number) => void): void => {
  let start = 0;
  for (const match of text.matchAll(LINE_BREAK)) {
    visit(text.slice(start, match.index), start, match[0].length);
    start = match.index + match[0].length;
  }
  if (start < text.length) visit(text.slice(start), start, 0);
};

const originAt = (prepared: PreparedLine, index: number): number => prepared.origins?.[index] ?? index;

/** The print of a piece; a straight quotation mark that opens a passage as the curly one, since nothing follows it. */
const printOf = (text: string, { start, end, kind }: Piece): string =>
  kind === "opening" ? text.slice(start, end).replaceAll('"', "\u201c") : text.slice(start, end);

const isSecondHalf = (text: string, index: number): boolean =>
  index > 0 &&
  text.charCodeAt(index) >= 0xdc00 &&
  text.charCodeAt(index) <= 0xdfff &&
  (text.codePointAt(index - 1) ?? 0) > 0xffff;

/** Turns starts counted from the line into spans of the whole text that leave no gap. */
const addSpans = (
  spans: Span[],
  starts: readonly number[],
  line: {
    readonly print: number;
    readonly printEnd: number;
    readonly cell: number;
    readonly cellEnd: number;
  },
): void => {
  if (line.print === line.printEnd) return;
  // A line of nothing but invisible characters still is print; what leads it belongs to the first span.
  const count = Math.max(starts.length, 2);
  for (let index = 0; index < count; index += 2) {
    const last = index + 2 >= count;
    spans.push({
      printStart: line.print + (index === 0 ? 0 : (starts[index] ?? 0)),
      printEnd: last ? line.printEnd : line.print + (starts[index + 2] ?? 0),
      cellStart: line.cell + (index === 0 ? 0 : (starts[index + 1] ?? 0)),
      cellEnd: last ? line.cellEnd : line.cell + (starts[index + 3] ?? 0),
    });
  }
};
