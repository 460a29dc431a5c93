import type { Transcription } from "../domain/braille/transcription";

/** Turns print into the cells of one braille code. Synchronous: the engine and its table are loaded. */
export interface Translator {
  /** `contracted`, `uncontracted`, or the file name of the table */
  readonly code: string;
  /**
   * Unicode braille of a text; the blank cell is U+2800; a line break (CR LF too) stays one "\n"; "" gives "".
   * @throws {UntranslatableError} where the code has no cells for a character; never made-up cells
   */
  translate(text: string): string;
  /**
   * The same cells, with the print that each stretch stands for. A line break is a span of its own.
   * @throws {UntranslatableError} as {@link Translator.translate}
   */
  transcribe(text: string): Transcription;
  /** The characters of a text that the code has no cells for, in order; empty where all can be translated. */
  untranslatable(text: string): readonly UntranslatableCharacter[];
}

/** A character that a code has no cells for. */
export interface UntranslatableCharacter {
  /** one whole character: both halves of a surrogate pair */
  readonly character: string;
  /** where it begins in the text, in UTF-16 code units */
  readonly index: number;
}

/** A text holds characters that the code has no cells for; the message names each with its place. */
export class UntranslatableError extends Error {
  override readonly name = "UntranslatableError";
  readonly characters: readonly UntranslatableCharacter[];

  constructor(message: string, characters: readonly UntranslatableCharacter[]) {
    super(message);
    this.characters = characters;
  }
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
