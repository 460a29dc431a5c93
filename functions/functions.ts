/**
 * The sheet functions of the namespace BRAILLE, in the order of the design's table: parse, call, return.
 *
 * `custom-functions-metadata` reads this file to write functions.json. Its traps: only `export function` counts;
 * parameters and results are `string`, `number`, `boolean`, `unknown`, or `unknown[][]` (written out, no alias, no
 * union, and never `unknown[][] | Promise<…>`, which loses the result's dimensionality); a missing argument is
 * `null` at run time, so defaults are `x ?? 3`. Nothing is called while this file is evaluated: the build appends
 * `CustomFunctions.associate`.
 */
import { withTranslator } from "./function-host";
import { mapCells } from "./shape";
import { textOf } from "./cell-reading";

/**
 * Translates print into Unicode braille.
 * @customfunction TRANSLATE
 * @param text Print, a cell or a range
 * @param [code] "contracted" (default), "uncontracted", or the file name of another liblouis table
 * @returns Unicode braille in the shape of text
 */
export function translate(text: unknown[][], code?: string): unknown[][] {
  return withTranslator(code ?? "contracted", (translator) =>
    mapCells([text], (cell) => translator.translate(textOf(cell))),
  ) as unknown[][];
}
