import type { CellValue } from "../domain/cell-value";

/** One argument as functions.json declares it. */
export interface ParameterShape {
  readonly name: string;
  readonly type: "string" | "number" | "boolean" | "any";
  readonly dimensionality: "scalar" | "matrix";
  readonly optional: boolean;
  readonly repeating: boolean;
}

/** A custom function, called as Excel would call it: a missing argument is `null`, a range is rows of cells. */
export interface SheetFunction {
  /** with its namespace, upper case: `BRAILLE.TRANSLATE` */
  readonly name: string;
  readonly description: string;
  readonly parameters: readonly ParameterShape[];
  readonly result: { readonly dimensionality: "scalar" | "matrix" };
  /**
   * Answers at once where it can, by a promise where it must load something first. An error is returned as a
   * CellError (never thrown), also inside a block.
   */
  call(
    args: readonly (CellValue | readonly (readonly CellValue[])[])[],
  ): FunctionAnswer | Promise<FunctionAnswer>;
}

export type FunctionAnswer = CellValue | readonly (readonly CellValue[])[];

/** The custom functions that a workbook may use. */
export interface FunctionLibrary {
  /** @param name - as typed, any case: `braille.translate` */
  find(name: string): SheetFunction | undefined;
  /** All names, upper case, in the order of functions.json. */
  readonly names: readonly string[];
}
