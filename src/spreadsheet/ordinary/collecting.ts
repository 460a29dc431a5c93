import type { CellValue } from "../../domain/cell-value";
import { toLogical, toNumber } from "../engine/coercion";
import { dereference } from "../engine/dereference";
import type { Scope } from "../engine/program";
import { FormulaError, isError, isRows, Lambda, Reference, Union, type Value } from "../engine/value";

/** Calls `visit` for each value of an argument; `direct` where the value was written as the argument itself. */
export function eachValue(
  value: Value,
  scope: Scope,
  visit: (cell: CellValue, direct: boolean) => void,
): void {
  if (value instanceof Union) {
    for (const part of value.parts) eachValue(part, scope, visit);
  } else if (value instanceof Reference) {
    const read = scope.engine.readRows(value);
    for (const row of read) for (const cell of row) visit(cell, false);
  } else if (isRows(value)) {
    for (const row of value) for (const cell of row) visit(cell, false);
  } else if (value instanceof Lambda) {
    throw new FormulaError("#CALC!", "A LAMBDA must be called with its arguments.");
  } else {
    visit(value ?? null, true);
  }
}

/**
 * The numbers among the arguments, as SUM takes them: from cells and blocks only numbers, while a value written as
 * an argument itself must be one.
 */
export function collectNumbers(values: readonly Value[], scope: Scope): number[] {
  const numbers: number[] = [];
  for (const value of values) {
    eachValue(value, scope, (cell, direct) => {
      if (typeof cell === "number") numbers.push(cell);
      else if (direct || isError(cell)) numbers.push(requireNumber(cell, scope));
    });
  }
  return numbers;
}

/** Two arguments of the same size as pairs of numbers; pairs with text, a truth value or an empty cell are left out. */
export function collectPairs(first: Value, second: Value, scope: Scope): { x: number; y: number }[] {
  const [xs, ys] = [collectCells(first, scope), collectCells(second, scope)];
  if (xs.length !== ys.length) throw new FormulaError("#N/A", "The two ranges differ in size.");
  return xs.flatMap((x, index) => {
    const y = ys[index] ?? null;
    refuseError(x);
    refuseError(y);
    return typeof x === "number" && typeof y === "number" ? [{ x, y }] : [];
  });
}

/** All values of one argument, errors included. */
export function collectCells(value: Value, scope: Scope): CellValue[] {
  const cells: CellValue[] = [];
  eachValue(value, scope, (cell) => cells.push(cell));
  return cells;
}

/** The truth values among the arguments, as AND takes them: numbers count, text in cells does not. */
export function collectLogicals(values: readonly Value[], scope: Scope): boolean[] {
  const logicals: boolean[] = [];
  for (const value of values) {
    eachValue(value, scope, (cell, direct) => {
      if (!direct && (cell === null || typeof cell === "string")) return;
      const logical = toLogical(cell);
      if (isError(logical)) throw new FormulaError(logical.error, logical.message);
      logicals.push(logical);
    });
  }
  if (logicals.length === 0)
    throw new FormulaError("#VALUE!", "There is no TRUE or FALSE among the arguments.");
  return logicals;
}

/** The value, unless it is an error: that becomes the function's result. */
export function refuseError(cell: CellValue): Exclude<CellValue, { error: unknown }> {
  if (isError(cell)) throw new FormulaError(cell.error, cell.message);
  return cell;
}

/** The value as a number, or the error that says why not. */
export function requireNumber(cell: CellValue, scope: Scope): number {
  const number = toNumber(cell, scope.engine.settings);
  if (typeof number === "number") return number;
  throw new FormulaError(number.error, number.message);
}

/** A value read, as rows. */
export function readRows(value: Value, scope: Scope): readonly (readonly CellValue[])[] {
  const read = dereference(value, scope);
  return isRows(read) ? read : [[read]];
}
