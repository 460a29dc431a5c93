import type { CellValue } from "../../domain/cell-value";
import { areaHolds } from "../address";
import type { Scope } from "./program";
import { isRows, Lambda, makeError, Reference, Union, type Rows, type Value } from "./value";

/** A value with its cells read: one value, or rows of more than one. */
export function dereference(value: Value, scope: Scope): CellValue | Rows {
  if (value instanceof Reference) {
    const { sheet, area } = value;
    return value.isCell ? scope.engine.readCell(sheet, area.top, area.left) : scope.engine.readRows(value);
  }
  if (value === undefined) return null;
  if (value instanceof Union) return makeError("#VALUE!", "Several areas cannot be used here.");
  if (value instanceof Lambda) return makeError("#CALC!", "A LAMBDA must be called with its arguments.");
  if (isRows(value) && value.length === 1 && value[0]?.length === 1) return value[0][0] ?? null;
  return value;
}

/**
 * The one value that a range stands for in a formula that does not spill: its cell in the formula's own row or
 * column. Source: ECMA-376 Part 1, 18.17.2.3 (implicit intersection).
 */
export function intersect(value: Value, scope: Scope): CellValue {
  if (value instanceof Reference && !value.isCell) {
    const { sheet, area } = value;
    const { row, column } = scope;
    if (area.left === area.right && row >= area.top && row <= area.bottom)
      return scope.engine.readCell(sheet, row, area.left);
    if (area.top === area.bottom && column >= area.left && column <= area.right)
      return scope.engine.readCell(sheet, area.top, column);
    if (areaHolds(area, row, column) && sheet === scope.sheet) return makeError("#VALUE!");
    return makeError(
      "#VALUE!",
      "This formula needs one cell, and none of the range is in its row or column.",
    );
  }
  const read = dereference(value, scope);
  return isRows(read) ? (read[0]?.[0] ?? null) : read;
}
