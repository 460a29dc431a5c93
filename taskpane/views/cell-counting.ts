import type { CellSource } from "../../src/domain/progress/measure";
import type { TranslatorLibrary } from "../../src/ports/translator";

/**
 * Counts the cells of a passage with the engine's codes that are loaded; a blank code is contracted. Undefined where
 * the code is none of the engine's, or a character has no braille in it.
 */
export const countCellsWith = (library: TranslatorLibrary): CellSource => ({
  cellsOf: (text, code) => {
    const name = code.trim().toLowerCase();
    try {
      return library.loaded(name === "" ? "contracted" : name)?.translate(text).length;
    } catch {
      return undefined;
    }
  },
});
