/**
 * The braille engine in a page: the workbench, the pane, an Excel webview.
 *
 * ```ts
 * const library = pageTranslatorLibrary({ base: new URL("liblouis/", document.baseURI) });
 * const contracted = await library.translator("contracted");
 * ```
 *
 * `base` is the folder with `liblouis.js` and `tables/`, on the page's own origin: the engine comes by a script
 * element and the tables by fetch, so that a content policy of `default-src 'self'` holds.
 */
import type { EngineSource, LouisModule } from "./louis-module";
import { LouisLibrary, type LouisLibraryOptions } from "./louis-library";

/** Where the engine is, ending with a slash. */
export interface PageEngineLayout {
  readonly base: URL | string;
}

/** Files of the engine in a page. A new call of `loadEngine` gives a new engine. */
export const pageEngineSource = ({ base }: PageEngineLayout): EngineSource => {
  const root = new URL(base, document.baseURI);
  let queue: Promise<unknown> = Promise.resolve();
  return {
    loadEngine: () => {
      // The script leaves its module in one global name: one script at a time.
      const loading = queue.then(() => runScript(new URL("liblouis.js", root)));
      queue = loading.catch(() => undefined);
      return loading;
    },
    loadTable: async (name) => {
      const response = await fetch(new URL(`tables/${name}`, root));
      if (!response.ok) throw new Error(`${name}: ${response.status} ${response.statusText}`);
      return new Uint8Array(await response.arrayBuffer());
    },
  };
};

/** The braille codes in a page. */
export const pageTranslatorLibrary = (
  layout: PageEngineLayout,
  options: LouisLibraryOptions = {},
): LouisLibrary => new LouisLibrary(pageEngineSource(layout), options);

/** The global names that the engine's script sets. */
type EngineGlobals = typeof globalThis & {
  liblouisBuild?: LouisModule | undefined;
  liblouisBuilds?: unknown;
};

const runScript = (address: URL): Promise<LouisModule> =>
  new Promise((resolve, reject) => {
    const script = document.createElement("script");
    const globals = globalThis as EngineGlobals;
    script.src = address.href;
    script.addEventListener("load", () => {
      script.remove();
      const module = globals.liblouisBuild;
      // Declared with `var`: `delete` would throw in strict code. The list of builds would keep every engine alive.
      globals.liblouisBuild = undefined;
      globals.liblouisBuilds = undefined;
      if (module === undefined) reject(new Error(`${address.pathname} is not the braille engine`));
      else resolve(module);
    });
    script.addEventListener("error", () => {
      script.remove();
      reject(new Error(`The braille engine could not be loaded from ${address.pathname}. Reload the page.`));
    });
    document.head.append(script);
  });
