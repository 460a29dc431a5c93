import type { CellValue } from "../../domain/cell-value";
import { compareValues, toLogical } from "../engine/coercion";
import { dereference } from "../engine/dereference";
import { mapBlocks } from "../engine/operators";
import { isError, isRows, makeError, type Value } from "../engine/value";
import { collectLogicals } from "./collecting";
import { defineFunction, type OrdinaryFunction } from "./ordinary-function";
import { block, lazy, logical, many, optional, range, value } from "./parameters";

const NOTHING_MATCHED = makeError("#N/A", "None of the conditions holds.");

/** Conditions. */
export const LOGIC: readonly OrdinaryFunction[] = [
  defineFunction("IF", [block, lazy, optional(lazy)], (scope, condition, yes, no): Value => {
    if (!isRows(condition)) {
      const holds = toLogical(condition);
      if (isError(holds)) return holds;
      return holds ? yes() : no ? no() : false;
    }
    const [onYes, onNo] = [dereference(yes(), scope), no ? dereference(no(), scope) : false];
    return mapBlocks([condition, onYes, onNo], ([each = null, a = null, b = null]) => {
      const holds = toLogical(each);
      return isError(holds) ? holds : holds ? a : b;
    });
  }),
  defineFunction("IFERROR", [block, lazy], (scope, given, instead) =>
    replaceWhere(given, () => dereference(instead(), scope), isError),
  ),
  defineFunction("IFNA", [block, lazy], (scope, given, instead) =>
    replaceWhere(
      given,
      () => dereference(instead(), scope),
      (cell) => isError(cell) && cell.error === "#N/A",
    ),
  ),
  defineFunction("IFS", [many(lazy)], (scope, branches): Value => {
    for (let index = 0; index + 1 < branches.length; index += 2) {
      const condition = dereference(branches[index]?.(), scope);
      const holds = toLogical(isRows(condition) ? (condition[0]?.[0] ?? null) : condition);
      if (isError(holds)) return holds;
      if (holds) return branches[index + 1]?.();
    }
    return branches.length % 2 === 0
      ? NOTHING_MATCHED
      : makeError("#VALUE!", "Each condition needs a value.");
  }),
  defineFunction("SWITCH", [value, many(lazy)], (scope, given, branches): Value => {
    for (let index = 0; index + 1 < branches.length; index += 2) {
      const candidate = dereference(branches[index]?.(), scope);
      const order = compareValues(given, isRows(candidate) ? (candidate[0]?.[0] ?? null) : candidate);
      if (isError(order)) return order;
      if (order === 0) return branches[index + 1]?.();
    }
    return branches.length % 2 === 1 ? branches.at(-1)?.() : NOTHING_MATCHED;
  }),
  defineFunction("AND", [many(range)], (scope, values) => collectLogicals(values, scope).every(Boolean)),
  defineFunction("OR", [many(range)], (scope, values) => collectLogicals(values, scope).some(Boolean)),
  defineFunction(
    "XOR",
    [many(range)],
    (scope, values) => collectLogicals(values, scope).filter(Boolean).length % 2 === 1,
  ),
  defineFunction("NOT", [logical], (_, given) => !given),
  defineFunction("TRUE", [], () => true),
  defineFunction("FALSE", [], () => false),
];

function replaceWhere(
  given: CellValue | readonly (readonly CellValue[])[],
  instead: () => CellValue | readonly (readonly CellValue[])[],
  applies: (cell: CellValue) => boolean,
): Value {
  if (!isRows(given)) return applies(given) ? instead() : given;
  if (!given.some((row) => row.some(applies))) return given;
  return mapBlocks([given, instead()], ([each = null, other = null]) => (applies(each) ? other : each));
}
