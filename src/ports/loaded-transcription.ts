import { normaliseName } from "../domain/progress/series";
import type { TranscribeIn } from "../domain/progress/sign-evidence";
import type { TranslatorLibrary } from "./translator";

/** How the engine's codes that are loaded transcribe texts; a blank code is contracted. */
export const transcribeWith =
  (library: TranslatorLibrary): TranscribeIn =>
  (code) => {
    const name = normaliseName(code);
    const translator = library.loaded(name === "" ? "contracted" : name);
    return (
      translator &&
      ((text) => {
        try {
          return translator.transcribe(text);
        } catch {
          // A word with a character that has no braille tells nothing of signs.
          return { print: text, cells: "", spans: [] };
        }
      })
    );
  };
