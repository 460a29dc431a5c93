/**
 * Where the sheet functions get the braille engine from.
 *
 * One bundle runs in three places. A host that is not a page (the command line, tests) sets
 * `globalThis.cellwrightFunctionHost` BEFORE it evaluates functions.js. In a page that sets none, the engine comes
 * from `liblouis/` beside the script that functions.js itself was loaded from.
 */
import type { Translator, TranslatorLibrary } from "../src/ports/translator";

/** Set by the host before the bundle is evaluated. */
export interface FunctionHost {
  /** Translators that share one engine with the host. */
  readonly translators: TranslatorLibrary;
}

declare global {
  var cellwrightFunctionHost: FunctionHost | undefined;
}

/**
 * Answers at once where the translator of the code is loaded, else by a promise; the caller casts, because a
 * union in its declared type would cost the function its dimensionality in functions.json.
 */
export const withTranslator = <T>(code: string, use: (translator: Translator) => T): T | Promise<T> => {
  const library = globalThis.cellwrightFunctionHost?.translators;
  if (library === undefined)
    throw new TypeError("No braille engine: the host set no cellwrightFunctionHost.");
  const loaded = library.loaded(code);
  return loaded === undefined ? library.translator(code).then(use) : use(loaded);
};
