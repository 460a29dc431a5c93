import type { CellValue } from "../../domain/cell-value";
import { compareValues, toLogical } from "../engine/coercion";
import type { Scope } from "../engine/program";
import { FormulaError, isError, Lambda, makeError, type Rows, type Value } from "../engine/value";
import { collectCells, readRows } from "./collecting";
import { defineFunction, type OrdinaryFunction } from "./ordinary-function";
import { array, integer, lambda, lazy, logical, many, number, optional, range, value } from "./parameters";

const FILLS = { fills: true } as const;

const transpose = (rows: Rows): CellValue[][] =>
  (rows[0] ?? []).map((_, column) => rows.map((row) => row[column] ?? null));

const EMPTY = makeError("#CALC!", "Nothing is left: give the value to show then as the last argument.");

/** How two values sort: numbers, text, FALSE, TRUE, errors, and empty cells always last. */
function sortOrder(a: CellValue, b: CellValue, direction: number): number {
  if (a === null || b === null) return (a === null ? 1 : 0) - (b === null ? 1 : 0);
  if (isError(a) || isError(b)) return ((isError(a) ? 1 : 0) - (isError(b) ? 1 : 0)) * direction;
  return Number(compareValues(a, b)) * direction;
}

/** Rows in the order of their keys; each key list has one value a row, with 1 for rising and -1 for falling. */
function sortRows(rows: Rows, keys: readonly { list: readonly CellValue[]; direction: number }[]): Rows {
  const order = rows.map((_, at) => at);
  order.sort((a, b) => {
    for (const { list, direction } of keys) {
      const by = sortOrder(list[a] ?? null, list[b] ?? null, direction);
      if (by !== 0) return by;
    }
    return a - b;
  });
  return order.map((at) => rows[at] ?? []);
}

function sort(rows: Rows, columns: readonly number[], directions: readonly number[]): Rows {
  const keys = columns.map((column, at) => {
    const direction = directions[at] ?? directions[0] ?? 1;
    if (Math.abs(direction) !== 1)
      throw new FormulaError("#VALUE!", "The order is 1 for rising or -1 for falling.");
    if (column < 1 || column > (rows[0]?.length ?? 0))
      throw new FormulaError("#VALUE!", "There is no column of that number to sort by.");
    return { list: rows.map((row) => row[column - 1] ?? null), direction };
  });
  return sortRows(rows, keys);
}

const asNumbers = (given: Rows | undefined, other: number): number[] =>
  given ? given.flat().map((cell) => (typeof cell === "number" ? Math.trunc(cell) : other)) : [other];

function filter(rows: Rows, include: Rows, scope: Scope, fallback: (() => Value) | undefined): Value {
  const tests = (list: readonly CellValue[]): boolean[] =>
    list.map((cell) => {
      const holds = toLogical(cell);
      if (isError(holds)) throw new FormulaError(holds.error, holds.message);
      return holds;
    });
  const width = rows[0]?.length ?? 0;
  let kept: Rows;
  if (include[0]?.length === 1 && include.length === rows.length) {
    const holds = tests(include.map((row) => row[0] ?? null));
    kept = rows.filter((_, at) => holds[at]);
  } else if (include.length === 1 && include[0]?.length === width) {
    const holds = tests(include[0]);
    kept = rows.map((row) => row.filter((_, at) => holds[at]));
  } else {
    return makeError("#VALUE!", "The conditions of FILTER need as many rows or columns as the range.");
  }
  if (kept.length > 0 && (kept[0]?.length ?? 0) > 0) return kept;
  return fallback ? readRows(fallback(), scope) : EMPTY;
}

function unique(rows: Rows, onlyOnce: boolean): Value {
  const times = new Map<string, { row: readonly CellValue[]; count: number }>();
  for (const row of rows) {
    const name = JSON.stringify(row.map((cell) => (typeof cell === "string" ? cell.toLowerCase() : cell)));
    const known = times.get(name);
    if (known) known.count++;
    else times.set(name, { row, count: 1 });
  }
  const kept = [...times.values()].filter(({ count }) => !onlyOnce || count === 1).map(({ row }) => row);
  return kept.length === 0 ? EMPTY : kept;
}

/** The first rows, or the last where the count is negative; `take` keeps them, otherwise they are left out. */
function cut<T>(list: readonly T[], count: number | undefined, take: boolean): readonly T[] {
  if (count === undefined) return list;
  if (take) return count >= 0 ? list.slice(0, count) : list.slice(count);
  return count >= 0 ? list.slice(count) : list.slice(0, count);
}

const cutBlock = (name: string, take: boolean): OrdinaryFunction =>
  defineFunction(
    name,
    [array, optional(integer), optional(integer)],
    (_, rows, height, width) => {
      const kept = cut(rows, height, take).map((row) => cut(row, width, take));
      return kept.length === 0 || kept[0]?.length === 0 ? EMPTY : kept;
    },
    FILLS,
  );

function stack(blocks: readonly Rows[]): CellValue[][] {
  const width = Math.max(...blocks.map((rows) => rows[0]?.length ?? 0));
  return blocks.flatMap((rows) =>
    rows.map((row) =>
      Array.from({ length: width }, (_, at) => (at < row.length ? (row[at] ?? null) : makeError("#N/A"))),
    ),
  );
}

function cellOf(result: Value, scope: Scope): CellValue {
  const rows = readRows(result, scope);
  return rows.length > 1 || (rows[0]?.length ?? 0) > 1
    ? makeError("#CALC!", "The LAMBDA must give one value.")
    : (rows[0]?.[0] ?? null);
}

function fold(
  start: Value,
  given: Value,
  called: Lambda,
  scope: Scope,
): { last: Value; steps: CellValue[][] } {
  let last: Value = start ?? null;
  const steps = readRows(given, scope).map((row) =>
    row.map((cell) => {
      last = called.call([last, cell]);
      return cellOf(last, scope);
    }),
  );
  return { last, steps };
}

/** Functions that give or rearrange blocks. */
export const BLOCKS: readonly OrdinaryFunction[] = [
  defineFunction(
    "FILTER",
    [array, array, optional(lazy)],
    (scope, rows, include, fallback) => filter(rows, include, scope, fallback),
    FILLS,
  ),
  defineFunction(
    "SORT",
    [array, optional(array), optional(array), optional(logical)],
    (_, rows, columns, directions, byColumn = false) => {
      const [by, order] = [asNumbers(columns, 1), asNumbers(directions, 1)];
      return byColumn ? transpose(sort(transpose(rows), by, order)) : sort(rows, by, order);
    },
    FILLS,
  ),
  defineFunction(
    "SORTBY",
    [array, many(range)],
    (scope, rows, keys) => {
      const lists: { list: CellValue[]; direction: number }[] = [];
      let sideways = false;
      for (let at = 0; at < keys.length; at += 2) {
        const list = collectCells(keys[at], scope);
        const shape = readRows(keys[at], scope);
        if (at === 0) sideways = shape.length === 1 && list.length === rows[0]?.length && rows.length !== 1;
        if (list.length !== (sideways ? rows[0]?.length : rows.length))
          return makeError("#VALUE!", "The ranges to sort by differ in size.");
        const [direction = 1] = at + 1 < keys.length ? collectCells(keys[at + 1], scope) : [];
        if (direction !== 1 && direction !== -1)
          return makeError("#VALUE!", "The order is 1 for rising or -1 for falling.");
        lists.push({ list, direction });
      }
      return sideways ? transpose(sortRows(transpose(rows), lists)) : sortRows(rows, lists);
    },
    FILLS,
  ),
  defineFunction(
    "UNIQUE",
    [array, optional(logical), optional(logical)],
    (scope, rows, byColumn = false, onlyOnce = false) => {
      if (!byColumn) return unique(rows, onlyOnce);
      const found = unique(transpose(rows), onlyOnce);
      return isError(found) ? found : transpose(readRows(found, scope));
    },
    FILLS,
  ),
  defineFunction(
    "SEQUENCE",
    [integer, optional(integer), optional(number), optional(number)],
    (_, height, width = 1, start = 1, step = 1) => {
      if (height < 1 || width < 1) return EMPTY;
      if (height * width > 1_048_576) return makeError("#NUM!", "The sequence is too long.");
      return Array.from({ length: height }, (__, row) =>
        Array.from({ length: width }, (___, column) => start + step * (row * width + column)),
      );
    },
    FILLS,
  ),
  defineFunction("TRANSPOSE", [array], (_, rows) => transpose(rows), FILLS),
  cutBlock("TAKE", true),
  cutBlock("DROP", false),
  defineFunction("VSTACK", [many(array)], (_, blocks) => stack(blocks as readonly Rows[]), FILLS),
  defineFunction(
    "HSTACK",
    [many(array)],
    (_, blocks) => transpose(stack((blocks as readonly Rows[]).map(transpose))),
    FILLS,
  ),
  defineFunction("TOCOL", [array], (_, rows) => rows.flat().map((cell) => [cell]), FILLS),
  defineFunction("TOROW", [array], (_, rows) => [rows.flat()], FILLS),
  defineFunction(
    "CHOOSECOLS",
    [array, many(integer)],
    (_, rows, columns) =>
      rows.map((row) =>
        columns.map((column) => row.at(column > 0 ? column - 1 : column) ?? makeError("#VALUE!")),
      ),
    FILLS,
  ),
  defineFunction(
    "MAP",
    [array, many(range)],
    (scope, rows, more) => {
      const called = more.at(-1);
      const others = more.slice(0, -1).map((each) => readRows(each, scope));
      if (!isLambda(called)) return makeError("#VALUE!", "MAP needs a LAMBDA as its last argument.");
      return rows.map((row, r) =>
        row.map((cell, c) =>
          cellOf(called.call([cell, ...others.map((other) => other[r]?.[c] ?? null)]), scope),
        ),
      );
    },
    FILLS,
  ),
  defineFunction(
    "BYROW",
    [array, lambda],
    (scope, rows, called) => rows.map((row) => [cellOf(called.call([[row]]), scope)]),
    FILLS,
  ),
  defineFunction(
    "BYCOL",
    [array, lambda],
    (scope, rows, called) => [
      transpose(rows).map((column) => cellOf(called.call([column.map((cell) => [cell])]), scope)),
    ],
    FILLS,
  ),
  defineFunction(
    "REDUCE",
    [optional(value), range, lambda],
    (scope, start, given, called) => fold(start, given, called, scope).last,
    FILLS,
  ),
  defineFunction(
    "SCAN",
    [optional(value), range, lambda],
    (scope, start, given, called) => fold(start, given, called, scope).steps,
    FILLS,
  ),
  defineFunction(
    "MAKEARRAY",
    [integer, integer, lambda],
    (scope, height, width, called) =>
      Array.from({ length: height }, (_, row) =>
        Array.from({ length: width }, (__, column) => cellOf(called.call([row + 1, column + 1]), scope)),
      ),
    FILLS,
  ),
];

const isLambda = (given: Value): given is Lambda => given instanceof Lambda;
