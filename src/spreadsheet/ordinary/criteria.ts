import { ERROR_CODES, type CellValue } from "../../domain/cell-value";
import { compareTexts } from "../engine/coercion";
import type { Scope } from "../engine/program";
import { FormulaError, isError, makeError, Reference, type Value } from "../engine/value";
import { parseNumberText } from "../number-input";
import { collectCells, readRows } from "./collecting";
import { defineFunction, type OrdinaryFunction } from "./ordinary-function";
import { many, optional, range, value } from "./parameters";

type Test = (cell: CellValue) => boolean;

/**
 * A pattern with the wildcards `?` and `*` as a regular expression over the whole text, regardless of case; `~`
 * takes a wildcard's meaning away.
 */
export function wildcardPattern(pattern: string, whole = true): RegExp {
  const source = pattern.replaceAll(
    /~([?*~])|([?*])|[\\^$.|+()[\]{}/]/g,
    (piece, literal?: string, wild?: string) => {
      if (literal !== undefined) return `\\${literal}`;
      if (wild === undefined) return `\\${piece}`;
      return wild === "?" ? "[^]" : "[^]*";
    },
  );
  return new RegExp(whole ? `^${source}$` : source, "iu");
}

/** Whether a text has wildcards, escaped ones included. */
export const hasWildcards = (text: string): boolean => /[?*~]/.test(text);

/** The test that a criterion such as `">=45"`, `"Her*"`, `"<>"` or 12 makes of a cell. */
export function makeCriterion(criterion: CellValue, scope: Scope): Test {
  if (criterion === null) return (cell) => cell === 0;
  if (typeof criterion === "number") return equals(criterion, scope);
  if (typeof criterion !== "string") return (cell) => sameKind(cell, criterion);
  const [, operator = "", rest = ""] = /^(<=|>=|<>|=|<|>)?([^]*)$/.exec(criterion) ?? [];
  const number = parseNumberText(rest, scope.engine.settings)?.value;
  switch (operator) {
    case "<":
    case ">":
    case "<=":
    case ">=":
      return ordering(operator, rest, number);
    case "<>": {
      if (rest === "") return (cell) => cell !== null;
      const same = makeCriterion(rest.startsWith("=") ? `=${rest}` : rest, scope);
      return (cell) => !same(cell);
    }
    default:
      if (rest === "")
        return operator === "=" ? (cell) => cell === null : (cell) => cell === null || cell === "";
      return number === undefined ? equalsText(rest) : equals(number, scope);
  }
}

const sameKind = (cell: CellValue, wanted: CellValue): boolean =>
  isError(wanted) ? isError(cell) && cell.error === wanted.error : cell === wanted;

function equals(wanted: number, scope: Scope): Test {
  return (cell) =>
    cell === wanted ||
    (typeof cell === "string" && parseNumberText(cell, scope.engine.settings)?.value === wanted);
}

function equalsText(wanted: string): Test {
  const upper = wanted.toUpperCase();
  if (upper === "TRUE" || upper === "FALSE") return (cell) => cell === (upper === "TRUE");
  if (ERROR_CODES.some((code) => code === upper)) return (cell) => isError(cell) && cell.error === upper;
  if (hasWildcards(wanted)) {
    const pattern = wildcardPattern(wanted);
    return (cell) => typeof cell === "string" && pattern.test(cell);
  }
  const lower = wanted.toLowerCase();
  return (cell) => typeof cell === "string" && cell.length === wanted.length && cell.toLowerCase() === lower;
}

function ordering(operator: string, text: string, number: number | undefined): Test {
  const holds = (order: number): boolean =>
    operator === "<" ? order < 0 : operator === ">" ? order > 0 : operator === "<=" ? order <= 0 : order >= 0;
  if (number !== undefined) return (cell) => typeof cell === "number" && holds(cell - number);
  return (cell) => typeof cell === "string" && holds(compareTexts(cell, text));
}

/** Which places of the ranges meet all criteria: pairs of a range and its criterion, all ranges of one size. */
function matchingPlaces(
  pairs: readonly Value[],
  scope: Scope,
): { matches: boolean[]; height: number; width: number } {
  let shape: { height: number; width: number } | undefined;
  let matches: boolean[] = [];
  if (pairs.length % 2 === 1) throw new FormulaError("#VALUE!", "Each range needs a criterion.");
  for (let index = 0; index < pairs.length; index += 2) {
    const given = pairs[index];
    const test = makeCriterion(collectCells(pairs[index + 1], scope)[0] ?? null, scope);
    const size = sizeOf(given, scope);
    if (shape && (shape.height !== size.height || shape.width !== size.width)) {
      throw new FormulaError("#VALUE!", "The ranges differ in size.");
    }
    const cells = collectCells(given, scope);
    matches = shape ? matches.map((each, at) => each && test(cells[at] ?? null)) : cells.map(test);
    shape = size;
  }
  return { matches, ...(shape ?? { height: 0, width: 0 }) };
}

function sizeOf(given: Value, scope: Scope): { height: number; width: number } {
  if (given instanceof Reference) return { height: given.height, width: given.width };
  const rows = readRows(given, scope);
  return { height: rows.length, width: rows[0]?.length ?? 0 };
}

/** The numbers at matching places of a range that is taken to have the size of the criteria's range. */
function matchingNumbers(given: Value, pairs: readonly Value[], scope: Scope, resize: boolean): number[] {
  const { matches, height, width } = matchingPlaces(pairs, scope);
  const size = sizeOf(given, scope);
  let source = given;
  if (size.height !== height || size.width !== width) {
    if (!resize || !(given instanceof Reference))
      throw new FormulaError("#VALUE!", "The ranges differ in size.");
    const { top, left } = given.area;
    source = new Reference(given.sheet, { top, left, bottom: top + height - 1, right: left + width - 1 });
    scope.engine.depend(source, scope);
  }
  const numbers: number[] = [];
  collectCells(source, scope).forEach((cell, at) => {
    if (!matches[at]) return;
    if (isError(cell)) throw new FormulaError(cell.error, cell.message);
    if (typeof cell === "number") numbers.push(cell);
  });
  return numbers;
}

const total = (numbers: readonly number[]): number => numbers.reduce((sum, each) => sum + each, 0);

const averageOf = (numbers: readonly number[]): Value =>
  numbers.length === 0 ? makeError("#DIV/0!") : total(numbers) / numbers.length;

const extreme = (name: string, pick: (a: number, b: number) => number): OrdinaryFunction =>
  defineFunction(name, [range, many(range)], (scope, given, pairs) => {
    const [first = 0, ...rest] = matchingNumbers(given, pairs, scope, false);
    return rest.reduce((best, each) => pick(best, each), first);
  });

/** Counts, sums and averages of what meets a criterion. */
export const CRITERIA: readonly OrdinaryFunction[] = [
  defineFunction("COUNTIF", [range, value], (scope, given, criterion) => {
    const test = makeCriterion(criterion, scope);
    const cells = collectCells(given, scope);
    const size = given instanceof Reference ? given.height * given.width : cells.length;
    // Beyond the sheet's contents a whole column is empty.
    return cells.filter(test).length + (test(null) ? size - cells.length : 0);
  }),
  defineFunction(
    "COUNTIFS",
    [many(range)],
    (scope, pairs) => matchingPlaces(pairs, scope).matches.filter(Boolean).length,
  ),
  defineFunction("SUMIF", [range, value, optional(range)], (scope, given, criterion, summed) =>
    total(matchingNumbers(summed ?? given, [given, criterion], scope, true)),
  ),
  defineFunction("SUMIFS", [range, many(range)], (scope, summed, pairs) =>
    total(matchingNumbers(summed, pairs, scope, false)),
  ),
  defineFunction("AVERAGEIF", [range, value, optional(range)], (scope, given, criterion, averaged) =>
    averageOf(matchingNumbers(averaged ?? given, [given, criterion], scope, true)),
  ),
  defineFunction("AVERAGEIFS", [range, many(range)], (scope, averaged, pairs) =>
    averageOf(matchingNumbers(averaged, pairs, scope, false)),
  ),
  extreme("MINIFS", Math.min),
  extreme("MAXIFS", Math.max),
];
