/** How the sheet functions on braille read their arguments and turn texts into cells. */
import { isBraille, parseCells } from "../src/domain/braille/cell";
import type { Transcribe } from "../src/domain/contraction/passage";
import type { ExceptedTranscription } from "../src/domain/contraction/exception-placement";
import { parseExceptions, type Exceptions } from "../src/domain/contraction/exceptions";
import { spellOutUntaught } from "../src/domain/contraction/partly-contracted";
import type { Sign } from "../src/domain/contraction/sign";
import { parseSigns, parseTaught, type TaughtSigns } from "../src/domain/contraction/taught";
import { refusal, success, type Fault, type Result } from "../src/domain/result";
import type { Translator } from "../src/ports/translator";
import { textOf } from "./cell-reading";
import { faultOfText, withTranslator } from "./function-host";
import { asBlock, firstError, giveRows, isBlank, mapCells, type Answer, type Block } from "./shape";

/** The optional arguments that the functions on braille share; a missing one is null. */
export interface BrailleArguments {
  readonly code?: string | null | undefined;
  readonly taught?: Block | null | undefined;
  readonly exceptions?: Block | null | undefined;
}

/** Turns a text into cells with its spans, the exceptions in place. */
type Transcriber = (text: string) => ExceptedTranscription;

const CODE_FILES: Readonly<Record<string, string>> = {
  "en-ueb-g2.ctb": "contracted",
  "en-ueb-g1.ctb": "uncontracted",
};

/** The code that an argument names: `contracted` where it is missing or blank. */
export const codeOf = (code: string | null | undefined): string => {
  const written = (code ?? "").trim();
  const lower = written.toLowerCase();
  if (lower === "") return "contracted";
  if (lower === "contracted" || lower === "uncontracted") return lower;
  return CODE_FILES[lower] ?? written;
};

/** More lists than a workbook's formulas usually pass in turns: one a pupil. */
const LISTS_KEPT = 64;

/** Keeps what was read from lists, because a column of formulas passes the same lists again and again. */
const keepRead = <T>(read: (rows: readonly (readonly string[])[]) => T): ((block: Block) => T) => {
  const kept = new Map<string, T>();
  return (block) => {
    const rows = block.map((row) => row.map(textOf));
    const key = JSON.stringify(rows);
    const known = kept.get(key);
    if (known !== undefined) return known;
    const value = read(rows);
    if (kept.size >= LISTS_KEPT) kept.clear();
    kept.set(key, value);
    return value;
  };
};

/** A list of taught signs. */
export const readTaught: (block: Block) => Result<TaughtSigns> = keepRead((rows) => parseTaught(rows.flat()));

/** A list of wanted signs. */
export const readSigns: (block: Block) => Result<readonly Sign[]> = keepRead((rows) =>
  parseSigns(rows.flat()),
);

/** A list of exceptions. */
const readExceptions: (block: Block) => Result<Exceptions> = keepRead(parseExceptions);

const NO_EXCEPTIONS = parseExceptions([]);

/** The exceptions of an optional argument. */
export const exceptionsOf = (block: Block | null | undefined): Result<Exceptions> =>
  block === null || block === undefined ? NO_EXCEPTIONS : readExceptions(block);

/** Whether contractions can be told apart in a code. */
export const isUeb = (code: string): code is "contracted" | "uncontracted" =>
  code === "contracted" || code === "uncontracted";

const transcriberOf = (translator: Translator, exceptions: Exceptions): Transcriber => {
  const transcribe: Transcribe = (text) => translator.transcribe(text);
  return (text) => exceptions.transcribe(transcribe, text);
};

/** Turns a text into Unicode braille; throws the translator's UntranslatableError. */
type Writer = (text: string) => string;

const writerOf = (translator: Translator, given: BrailleArguments): Result<Writer> => {
  const exceptions = exceptionsOf(given.exceptions);
  if (!exceptions.ok) return exceptions;
  const transcribe = transcriberOf(translator, exceptions.value);
  if (given.taught === null || given.taught === undefined) {
    if (exceptions.value.size === 0) return success((text) => translator.translate(text));
    return success((text) => transcribe(text).cells);
  }
  const taught = readTaught(given.taught);
  if (!taught.ok) return taught;
  if (!isUeb(translator.code)) {
    return refusal(
      "unknown-code",
      "Taught signs are signs of Unified English Braille: leave taught out, or use the code contracted.",
    );
  }
  return success((text) => {
    const transcription = transcribe(text);
    return spellOutUntaught(transcription, taught.value, transcription.excepted).cells;
  });
};

/** Braille as it stands, print through the writer: cells, or the fault that names what cannot be written. */
const write = (writer: Writer, text: string): Result<string> => {
  if (isBraille(text)) return parseCells(text);
  try {
    return success(writer(text));
  } catch (failure) {
    return { ok: false, fault: faultOfText(failure) };
  }
};

/**
 * Writes each cell of a range in braille and shows it in some form; the shape of the text is kept.
 * @param show - from Unicode braille, blank U+2800, line breaks "\n"
 */
export const mapBraille = (
  text: Block | null | undefined,
  given: BrailleArguments,
  show: (cells: string) => Answer,
): unknown[][] | Promise<unknown[][]> =>
  withTranslator(codeOf(given.code), (translator) => {
    const error = firstError([given.taught, given.exceptions]);
    if (error !== undefined) return [[error]];
    const writer = writerOf(translator, given);
    if (!writer.ok) return giveRows([], () => writer.fault);
    return mapCells([text], (cell) => {
      const cells = write(writer.value, textOf(cell));
      return cells.ok ? show(cells.value) : cells.fault;
    });
  });

/** Writes all cells of a range in braille, a line each, and gives rows from them; a blank range gives "". */
export const giveBraille = (
  text: Block | null | undefined,
  given: BrailleArguments,
  show: (cells: string) => Fault | readonly (readonly Answer[])[],
): unknown[][] | Promise<unknown[][]> =>
  withTranslator(codeOf(given.code), (translator) =>
    giveRows([text, given.exceptions], () => {
      const writer = writerOf(translator, given);
      if (!writer.ok) return writer.fault;
      const lines: string[] = [];
      for (const cell of asBlock(text).flat()) {
        if (isBlank(cell)) continue;
        const cells = write(writer.value, textOf(cell));
        if (!cells.ok) return cells.fault;
        lines.push(cells.value);
      }
      return lines.length === 0 ? "" : show(lines.join("\n"));
    }),
  );
