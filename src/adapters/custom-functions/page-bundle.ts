/**
 * The sheet functions in a page, from the bundle that is built for Excel.
 *
 * ```ts
 * const library = await pageFunctionLibrary({ base: document.baseURI });
 * ```
 */
import type { TranslatorLibrary } from "../../ports/translator";
import type { FunctionLibrary } from "../../spreadsheet/function-library";
import { makeLibrary } from "./bundle-library";
import { makeRuntime } from "./custom-functions-runtime";
import { parseMetadata } from "./function-metadata";

/** Where `functions.js` and `functions.json` are: a folder on the page's own origin, ending with a slash. */
export interface PageBundle {
  readonly base: URL | string;
  /** The braille engine that the functions share; without it they load the one beside functions.js. */
  readonly translators?: TranslatorLibrary;
}

/**
 * Adds the bundle's script to the page and gives its functions in the namespace BRAILLE.
 *
 * @throws where a file cannot be loaded; the message says what to do
 */
export async function pageFunctionLibrary({ base, translators }: PageBundle): Promise<FunctionLibrary> {
  const root = new URL(base, document.baseURI);
  const { runtime, functions } = makeRuntime();
  if (translators) Reflect.set(globalThis, "cellwrightFunctionHost", { translators });
  Reflect.set(globalThis, "CustomFunctions", runtime);
  const [metadata] = await Promise.all([
    loadText(new URL("functions.json", root)),
    addScript(new URL("functions.js", root)),
  ]);
  return makeLibrary(parseMetadata(metadata), functions);
}

async function loadText(address: URL): Promise<string> {
  const response = await fetch(address);
  if (!response.ok)
    throw new Error(`${address.pathname} could not be loaded (${response.status}). Reload the page.`);
  return response.text();
}

const addScript = (address: URL): Promise<void> =>
  new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.src = address.href;
    script.addEventListener("load", () => resolve());
    script.addEventListener("error", () =>
      reject(
        new Error(`The braille functions could not be loaded from ${address.pathname}. Reload the page.`),
      ),
    );
    document.head.append(script);
  });
