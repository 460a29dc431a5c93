import type { CellError, CellValue } from "../../domain/cell-value";
import { isCellError } from "../../domain/cell-value";
import { toLogical, toNumber, toText } from "../../spreadsheet/engine/coercion";
import type { FunctionAnswer, ParameterShape } from "../../spreadsheet/function-library";
import type { TypingSettings } from "../../spreadsheet/number-input";
import { CustomFunctionError } from "./custom-functions-runtime";

/** How arguments are handed over. */
export interface PassingSettings {
  readonly typing: TypingSettings;
  /** Error cells reach parameters of type `any`; otherwise an error among the arguments is the result. */
  readonly passesErrors: boolean;
}

const isRows = (given: FunctionAnswer): given is readonly (readonly CellValue[])[] => Array.isArray(given);

/**
 * One argument as a custom function takes it: coerced to the declared type, a block as rows, a missing one null.
 *
 * @returns the error that becomes the function's result where the argument cannot be used
 */
export function passArgument(
  given: FunctionAnswer,
  shape: ParameterShape,
  settings: PassingSettings,
): { readonly passed: unknown } | { readonly refused: CellError } {
  if (given === null) return { passed: null };
  if (shape.dimensionality === "scalar")
    return passCell(isRows(given) ? (given[0]?.[0] ?? null) : given, shape, settings);
  const rows: unknown[][] = [];
  for (const row of isRows(given) ? given : [[given]]) {
    const cells: unknown[] = [];
    for (const cell of row) {
      const each = passCell(cell, shape, settings);
      if ("refused" in each) return each;
      cells.push(each.passed);
    }
    rows.push(cells);
  }
  return { passed: rows };
}

function passCell(
  cell: CellValue,
  { type }: ParameterShape,
  { typing, passesErrors }: PassingSettings,
): { readonly passed: unknown } | { readonly refused: CellError } {
  if (isCellError(cell)) {
    return type === "any" && passesErrors
      ? { passed: new CustomFunctionError(cell.error, cell.message) }
      : { refused: cell };
  }
  if (type === "any") return { passed: cell };
  const coerced =
    type === "number" ? toNumber(cell, typing) : type === "string" ? toText(cell) : toLogical(cell);
  return isCellError(coerced) ? { refused: coerced } : { passed: coerced };
}

/** The places of scalar parameters that were given a block: the function is called for each of its cells. */
export const liftedPlaces = (
  args: readonly FunctionAnswer[],
  shapeAt: (index: number) => ParameterShape | undefined,
): number[] =>
  args.flatMap((given, index) =>
    isRows(given) && shapeAt(index)?.dimensionality === "scalar" ? [index] : [],
  );
