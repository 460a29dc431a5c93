/**
 * Where the sheet functions get the braille engine and the word bank from.
 *
 * One bundle runs in three places. A host that is no page (the command line, tests), or a page that wants to share
 * its engine with the functions, sets `globalThis.cellwrightFunctionHost` BEFORE it evaluates functions.js. In a page
 * that sets none, the engine comes from `liblouis/` beside the script that functions.js itself was loaded from, and the
 * word bank from beside it. A page that sets translators alone still has its word bank from there.
 */
import { pageTranslatorLibrary } from "../src/adapters/liblouis/page-engine";
import { pageWordBank } from "../src/adapters/word-bank/page-word-bank";
import type { Translator, TranslatorLibrary } from "../src/ports/translator";
import type { WordBank, WordBankLibrary } from "../src/ports/word-bank";
import type { Fault } from "../src/domain/result";
import { toCellError } from "./cell-error";

/** Set by the host before the bundle is evaluated. */
export interface FunctionHost {
  /** Translators that share one engine with the host. */
  readonly translators: TranslatorLibrary;
  /** The word bank; a page may leave it out. */
  readonly wordBank?: WordBankLibrary;
}

declare global {
  var cellwrightFunctionHost: FunctionHost | undefined;
}

/** Known only while the script is evaluated; null later, and undefined where there is no page. */
const ownScript: string | undefined =
  typeof document === "object" && document.currentScript instanceof HTMLScriptElement
    ? document.currentScript.src
    : undefined;

let ownLibrary: TranslatorLibrary | undefined;

const findLibrary = (): TranslatorLibrary => {
  const host = globalThis.cellwrightFunctionHost;
  if (host !== undefined) return host.translators;
  if (ownScript === undefined) {
    throw new TypeError("The host must set cellwrightFunctionHost before it evaluates the sheet functions.");
  }
  ownLibrary ??= pageTranslatorLibrary({ base: new URL("liblouis/", ownScript) });
  return ownLibrary;
};

/**
 * Answers at once where the translator of the code is loaded, else by a promise; the caller casts, because a
 * union in its declared type would cost the function its dimensionality in functions.json.
 *
 * A code that cannot be used is #VALUE!, an engine that does not load #N/A.
 */
export const withTranslator = <T>(
  code: string,
  use: (translator: Translator) => T | Promise<T>,
): T | Promise<T> => {
  const library = findLibrary();
  const loaded = library.loaded(code);
  return loaded === undefined ? library.translator(code).catch(refuseCode).then(use) : use(loaded);
};

let ownBank: WordBankLibrary | undefined;

const findBank = (): WordBankLibrary | undefined => {
  const given = globalThis.cellwrightFunctionHost?.wordBank;
  if (given !== undefined || ownScript === undefined) return given;
  return (ownBank ??= pageWordBank(new URL(".", ownScript)));
};

/**
 * Answers at once where the word bank is loaded, else by a promise; the caller casts, as for {@link withTranslator}.
 *
 * A bank that does not load is #N/A.
 */
export const withWordBank = <T>(use: (bank: WordBank) => T | Promise<T>): T | Promise<T> => {
  const library = findBank();
  if (library === undefined) return refuseBank();
  const loaded = library.loaded();
  return loaded === undefined ? library.load().catch(refuseBank).then(use) : use(loaded);
};

const refuseBank = (): never => {
  throw toCellError({
    code: "nothing-to-give",
    message:
      "The built-in words could not be loaded: give words of your own, or close the workbook, open it again, and recalculate.",
  });
};

/** By name, because a host's bundle has its own copy of the class. */
const isNamed = (failure: unknown, name: string): failure is Error =>
  failure instanceof Error && failure.name === name;

/** What a code has no cells for, as the fault of a cell; any other failure is thrown on. */
export const faultOfText = (failure: unknown): Fault => {
  if (isNamed(failure, "UntranslatableError")) return { code: "untranslatable", message: failure.message };
  throw failure;
};

const refuseCode = (failure: unknown): never => {
  if (isNamed(failure, "UnknownCodeError"))
    throw toCellError({ code: "unknown-code", message: failure.message });
  throw toCellError({
    code: "nothing-to-give",
    message: "The braille engine could not be loaded: close the workbook, open it again, and recalculate.",
  });
};
