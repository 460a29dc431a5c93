import type { CellError, CellValue } from "../../domain/cell-value";
import type { TypingSettings } from "../number-input";
import { compareValues, toNumber, toText } from "./coercion";
import { makeError, type Rows } from "./value";

type Operator = (a: CellValue, b: CellValue, settings: TypingSettings) => CellValue;

const arithmetic =
  (calculate: (a: number, b: number) => number | CellError): Operator =>
  (a, b, settings) => {
    const left = typeof a === "number" ? a : toNumber(a, settings);
    if (typeof left !== "number") return left;
    const right = typeof b === "number" ? b : toNumber(b, settings);
    if (typeof right !== "number") return right;
    return checkNumber(calculate(left, right));
  };

const comparison =
  (holds: (order: number) => boolean): Operator =>
  (a, b) => {
    const order = compareValues(a, b);
    return typeof order === "number" ? holds(order) : order;
  };

/** A calculated number, or #NUM! where it is too large or none. */
export const checkNumber = (value: number | CellError): number | CellError =>
  typeof value !== "number" || Number.isFinite(value) ? value : makeError("#NUM!");

/** A sum or difference that cancels to within the last digits of its terms is 0, as spreadsheet programs have it. */
function cancel(result: number, term: number): number {
  return result !== 0 && Math.abs(result) < Math.abs(term) * 1e-15 ? 0 : result;
}

/** The operators between two values. */
export const BINARY_OPERATORS: Readonly<Record<string, Operator>> = {
  "+": arithmetic((a, b) => cancel(a + b, a)),
  "-": arithmetic((a, b) => cancel(a - b, a)),
  "*": arithmetic((a, b) => a * b),
  "/": arithmetic((a, b) => (b === 0 ? makeError("#DIV/0!") : a / b)),
  "^": arithmetic((a, b) =>
    a === 0 && b === 0 ? makeError("#NUM!") : a === 0 && b < 0 ? makeError("#DIV/0!") : a ** b,
  ),
  "&": (a, b) => {
    const left = toText(a);
    if (typeof left !== "string") return left;
    const right = toText(b);
    return typeof right === "string" ? left + right : right;
  },
  "=": comparison((order) => order === 0),
  "<>": comparison((order) => order !== 0),
  "<": comparison((order) => order < 0),
  ">": comparison((order) => order > 0),
  "<=": comparison((order) => order <= 0),
  ">=": comparison((order) => order >= 0),
};

/** Negation, per cent, and the plus sign that changes nothing. */
export const UNARY_OPERATORS: Readonly<
  Record<string, (value: CellValue, settings: TypingSettings) => CellValue>
> = {
  "+": (value) => value,
  "-": (value, settings) => {
    const number = toNumber(value, settings);
    return typeof number === "number" ? -number : number;
  },
  "%": (value, settings) => {
    const number = toNumber(value, settings);
    return typeof number === "number" ? number / 100 : number;
  },
};

/** The size that several blocks have together: a single row or column is repeated, other differences give #N/A. */
export function commonSize(blocks: readonly (Rows | CellValue)[]): { height: number; width: number } {
  let height = 1;
  let width = 1;
  for (const block of blocks) {
    if (!Array.isArray(block)) continue;
    height = Math.max(height, block.length);
    width = Math.max(width, (block as Rows)[0]?.length ?? 1);
  }
  return { height, width };
}

/** A block's value at a place of a larger block: single rows and columns are repeated, beyond others is #N/A. */
export function valueAt(block: Rows | CellValue, row: number, column: number): CellValue {
  if (!Array.isArray(block)) return block as CellValue;
  const rows = block as Rows;
  const line = rows.length === 1 ? rows[0] : rows[row];
  const value = line?.length === 1 ? line[0] : line?.[column];
  return value === undefined ? makeError("#N/A", "The blocks differ in size.") : value;
}

/** Applies a function of single values to blocks, cell by cell. */
export function mapBlocks(
  blocks: readonly (Rows | CellValue)[],
  calculate: (values: readonly CellValue[]) => CellValue,
): CellValue[][] {
  const { height, width } = commonSize(blocks);
  return Array.from({ length: height }, (_, row) =>
    Array.from({ length: width }, (__, column) => {
      const values = blocks.map((block) => valueAt(block, row, column));
      return calculate(values);
    }),
  );
}
