/**
 * The sheet functions in Node, from the bundle that is built for Excel.
 *
 * ```ts
 * const library = await nodeFunctionLibrary({ directory: "dist", translators });
 * library.find("BRAILLE.CELLS")?.call(["children", null, null]); // 6, or a promise of it
 * ```
 */
import { readFile } from "node:fs/promises";
import path from "node:path";
import { runInThisContext } from "node:vm";
import type { TranslatorLibrary } from "../../ports/translator";
import type { WordBankLibrary } from "../../ports/word-bank";
import type { FunctionLibrary } from "../../spreadsheet/function-library";
import { makeLibrary } from "./bundle-library";
import { makeRuntime } from "./custom-functions-runtime";
import { parseMetadata } from "./function-metadata";

/** Where `functions.js` and `functions.json` are, and the braille engine and the words that the functions use. */
export interface NodeBundle {
  readonly directory: string;
  readonly translators: TranslatorLibrary;
  /** Without it NEXT and DRILL work on given words only. */
  readonly wordBank?: WordBankLibrary;
}

/**
 * Loads the bundle and gives its functions in the namespace BRAILLE.
 *
 * @throws where the files are missing or do not belong together: run the build
 */
export async function nodeFunctionLibrary({
  directory,
  translators,
  wordBank,
}: NodeBundle): Promise<FunctionLibrary> {
  const file = path.join(directory, "functions.js");
  const [code, metadata] = await Promise.all([
    readFile(file, "utf8"),
    readFile(path.join(directory, "functions.json"), "utf8"),
  ]);
  const { runtime, functions } = makeRuntime();
  // The bundle looks both up by their global names, the second one whenever a function is called.
  Reflect.set(globalThis, "cellwrightFunctionHost", { translators, wordBank });
  Reflect.set(globalThis, "CustomFunctions", runtime);
  runInThisContext(code, { filename: file });
  return makeLibrary(parseMetadata(metadata), functions);
}
