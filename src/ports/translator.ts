import type { Transcription } from "../domain/braille/transcription";

/** Turns print into the cells of one braille code. Synchronous: the engine and its table are loaded. */
export interface Translator {
  /** `contracted`, `uncontracted`, or the file name of the table */
  readonly code: string;
  /** Unicode braille of a text; the blank cell is U+2800; "" gives "". */
  translate(text: string): string;
  /** The same cells, with the print that each stretch stands for. */
  transcribe(text: string): Transcription;
}

/** Where translators come from. */
export interface TranslatorLibrary {
  /**
   * The translator for a code, loading the engine and the table when first needed.
   * @throws {UnknownCodeError} where no table of that name is in the build or it does not compile
   */
  translator(code: string): Promise<Translator>;
  /** The translator if it is loaded already, so that a sheet function can answer without a promise. */
  loaded(code: string): Translator | undefined;
}

/** No table of this name can be used; the message says which names can. */
export class UnknownCodeError extends Error {
  override readonly name = "UnknownCodeError";
}
