/**
 * The braille engine in Node.
 *
 * ```ts
 * const library = nodeTranslatorLibrary({ directory: "dist/liblouis" });
 * const contracted = await library.translator("contracted"); // or "uncontracted", or "fr-bfu-g2.ctb"
 * contracted.translate("Hello"); // ⠠⠓⠑⠇⠇⠕
 * library.loaded("contracted"); // the same, without a promise
 * ```
 *
 * `directory` holds `liblouis.cjs` and `tables/`, as the build lays them out. In tests, where nothing is built,
 * `nodeTranslatorLibrary(PACKAGE_LAYOUT)` takes both straight from the package `liblouis-build`.
 */
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import path from "node:path";
import type { EngineSource, LouisModule } from "./louis-module";
import { LouisLibrary, type LouisLibraryOptions } from "./louis-library";

/** Where the engine's file and the folder of its tables are. */
export interface NodeEngineLayout {
  /** a folder, absolute or from the working directory */
  readonly directory: string;
  /** the engine inside it: `liblouis.cjs` unless given */
  readonly engine?: string;
}

/** The package as npm installed it, seen from the working directory of the project. */
export const PACKAGE_LAYOUT: NodeEngineLayout = {
  directory: "node_modules/liblouis-build",
  engine: "build-no-tables-utf16.js",
};

/** Files of the engine in Node. A new call of `loadEngine` gives a new engine. */
export const nodeEngineSource = ({ directory, engine = "liblouis.cjs" }: NodeEngineLayout): EngineSource => {
  const root = path.resolve(directory);
  return {
    loadEngine: () => Promise.resolve(requireAnew(path.join(root, engine))),
    loadTable: (name) => readFile(path.join(root, "tables", name)),
  };
};

/** The braille codes in Node. */
export const nodeTranslatorLibrary = (
  layout: NodeEngineLayout,
  options: LouisLibraryOptions = {},
): LouisLibrary => new LouisLibrary(nodeEngineSource(layout), options);

const requireAnew = (file: string): LouisModule => {
  const load = createRequire(file);
  // The module adds a listener that would rethrow every uncaught exception of the host program.
  const before = new Set(process.listeners("uncaughtException"));
  Reflect.deleteProperty(load.cache, file);
  const module = load(file) as LouisModule;
  Reflect.deleteProperty(load.cache, file);
  for (const listener of process.listeners("uncaughtException")) {
    if (!before.has(listener)) process.removeListener("uncaughtException", listener);
  }
  return module;
};
