import type { Area } from "../../domain/area";
import type { CellValue } from "../../domain/cell-value";
import { formatColumn, MAX_COLUMNS, MAX_ROWS, parseArea } from "../address";
import { compareValues } from "../engine/coercion";
import type { Scope } from "../engine/program";
import { FormulaError, isError, makeError, Reference, Union, type Rows, type Value } from "../engine/value";
import { readRows } from "./collecting";
import { hasWildcards, wildcardPattern } from "./criteria";
import { defineFunction, type OrdinaryFunction } from "./ordinary-function";
import { array, integer, lazy, logical, many, optional, range, text, trailing, value } from "./parameters";

const NOT_FOUND = makeError("#N/A", "The value is not found.");
const OUTSIDE = makeError("#REF!", "The row or column lies outside the range.");

const sameKind = (a: CellValue, b: CellValue): boolean => typeof a === typeof b && !isError(a) && !isError(b);

/** How a value is looked for. */
type Finding = "exact" | "exact-or-smaller" | "exact-or-larger" | "wildcard";

/** The place of a value in a list, or -1; `backwards` from the end. */
function findPlace(
  wanted: CellValue,
  list: readonly CellValue[],
  finding: Finding,
  backwards = false,
): number {
  if (typeof wanted === "string" && finding === "wildcard" && hasWildcards(wanted)) {
    const pattern = wildcardPattern(wanted);
    const matches = (cell: CellValue): boolean => typeof cell === "string" && pattern.test(cell);
    return backwards ? list.findLastIndex(matches) : list.findIndex(matches);
  }
  const same = (cell: CellValue): boolean => {
    if (cell === wanted) return true;
    return (
      typeof cell === "string" &&
      typeof wanted === "string" &&
      cell.length === wanted.length &&
      cell.toLowerCase() === wanted.toLowerCase()
    );
  };
  const exact = backwards ? list.findLastIndex(same) : list.findIndex(same);
  if (exact >= 0 || finding === "exact" || finding === "wildcard") return exact;
  const sign = finding === "exact-or-smaller" ? 1 : -1;
  let best = -1;
  list.forEach((cell, at) => {
    if (!sameKind(cell, wanted) || Number(compareValues(cell, wanted)) * sign > 0) return;
    if (best < 0 || Number(compareValues(cell, list[best] ?? null)) * sign > 0) best = at;
  });
  return best;
}

/** The last place whose value is not beyond the one looked for, in a list sorted in the given direction. */
function findSorted(wanted: CellValue, list: readonly CellValue[], falling: boolean): number {
  let found = -1;
  for (let at = 0; at < list.length; at++) {
    const cell = list[at] ?? null;
    if (!sameKind(cell, wanted)) continue;
    const order = Number(compareValues(cell, wanted));
    if (falling ? order < 0 : order > 0) break;
    found = at;
  }
  return found;
}

/** A row or a column of values as a list. */
function asList(rows: Rows): readonly CellValue[] {
  const [first = []] = rows;
  if (rows.length === 1) return first;
  if (first.length > 1) throw new FormulaError("#N/A", "One row or one column is needed to look in.");
  return rows.map((row) => row[0] ?? null);
}

/** Part of a range or block; a part of a reference is a reference. */
function slice(from: Value, scope: Scope, top: number, left: number, height: number, width: number): Value {
  if (from instanceof Reference) {
    const { area } = from;
    const part: Area = {
      top: area.top + top,
      left: area.left + left,
      bottom: area.top + top + height - 1,
      right: area.left + left + width - 1,
    };
    return part.bottom > area.bottom || part.right > area.right ? OUTSIDE : new Reference(from.sheet, part);
  }
  const rows = readRows(from, scope);
  if (top + height > rows.length || left + width > (rows[0]?.length ?? 0)) return OUTSIDE;
  return rows.slice(top, top + height).map((row) => row.slice(left, left + width));
}

function sizeOf(from: Value, scope: Scope): { height: number; width: number } {
  if (from instanceof Reference) return { height: from.height, width: from.width };
  const rows = readRows(from, scope);
  return { height: rows.length, width: rows[0]?.length ?? 0 };
}

function index(from: Value, row: number, column: number | undefined, scope: Scope): Value {
  const { height, width } = sizeOf(from, scope);
  let [r, c] = [row, column ?? 0];
  // In a single row one number counts columns.
  if (column === undefined && height === 1) [r, c] = [1, row];
  else if (column === undefined && width === 1) c = 1;
  if (r < 0 || c < 0) return makeError("#VALUE!", "Rows and columns count from 1.");
  if (r > height || c > width) return OUTSIDE;
  return slice(
    from,
    scope,
    r === 0 ? 0 : r - 1,
    c === 0 ? 0 : c - 1,
    r === 0 ? height : 1,
    c === 0 ? width : 1,
  );
}

function lookUpIn(
  wanted: CellValue,
  rows: Rows,
  approximate: boolean,
  give: (place: number) => CellValue | undefined,
): Value {
  const list = rows.map((row) => row[0] ?? null);
  const place = approximate ? findSorted(wanted, list, false) : findPlace(wanted, list, "wildcard");
  return place < 0 ? NOT_FOUND : (give(place) ?? OUTSIDE);
}

const transpose = (rows: Rows): CellValue[][] =>
  (rows[0] ?? []).map((_, column) => rows.map((row) => row[column] ?? null));

function findingOf(mode: number): Finding {
  const finding = ({ 0: "exact", [-1]: "exact-or-smaller", 1: "exact-or-larger", 2: "wildcard" } as const)[
    mode
  ];
  if (!finding) throw new FormulaError("#VALUE!", "The match mode is 0, -1, 1 or 2.");
  return finding;
}

function lookUpAcross(
  wanted: CellValue,
  looked: Value,
  given: Value,
  fallback: (() => Value) | undefined,
  mode: number,
  search: number,
  scope: Scope,
): Value {
  const rows = readRows(looked, scope);
  const place = findPlace(wanted, asList(rows), findingOf(mode), search < 0);
  if (place < 0) return fallback ? fallback() : NOT_FOUND;
  const size = sizeOf(given, scope);
  return rows.length === 1 && (rows[0]?.length ?? 0) > 1
    ? slice(given, scope, 0, place, size.height, 1)
    : slice(given, scope, place, 0, 1, size.width);
}

const counting = (
  name: string,
  where: (area: Area) => number,
  of: (reference: Reference) => number[][],
  here: (scope: Scope) => number,
): OrdinaryFunction =>
  defineFunction(
    name,
    [optional(range)],
    (scope, given) => {
      if (given === undefined) return here(scope) + 1;
      if (!(given instanceof Reference))
        return isError(given) ? given : makeError("#VALUE!", `${name} needs cells.`);
      return given.isCell ? where(given.area) + 1 : of(given);
    },
    { unread: true },
  );

/** Looking up, and where cells are. */
export const LOOKUP: readonly OrdinaryFunction[] = [
  defineFunction(
    "INDEX",
    [range, integer, optional(integer), optional(integer)],
    (scope, from, row, column, part = 1) => {
      const source = from instanceof Union ? from.parts[part - 1] : from;
      if (isError(source)) return source;
      return source === undefined ? OUTSIDE : index(source, row, column, scope);
    },
    { fills: true },
  ),
  defineFunction("MATCH", [value, range, trailing(integer)], (scope, wanted, looked, kind = 1) => {
    const list = asList(readRows(looked, scope));
    const place = kind === 0 ? findPlace(wanted, list, "wildcard") : findSorted(wanted, list, kind < 0);
    return place < 0 ? NOT_FOUND : place + 1;
  }),
  defineFunction(
    "XMATCH",
    [value, range, optional(integer), optional(integer)],
    (scope, wanted, looked, mode = 0, search = 1) => {
      const place = findPlace(wanted, asList(readRows(looked, scope)), findingOf(mode), search < 0);
      return place < 0 ? NOT_FOUND : place + 1;
    },
  ),
  defineFunction(
    "XLOOKUP",
    [value, range, range, optional(lazy), optional(integer), optional(integer)],
    (scope, wanted, looked, given, fallback, mode = 0, search = 1) =>
      lookUpAcross(wanted, looked, given, fallback, mode, search, scope),
    { fills: true },
  ),
  defineFunction(
    "VLOOKUP",
    [value, array, integer, trailing(logical)],
    (_, wanted, rows, column, approximate = true) =>
      column < 1
        ? makeError("#VALUE!", "Columns count from 1.")
        : lookUpIn(wanted, rows, approximate, (place) => rows[place]?.[column - 1]),
  ),
  defineFunction(
    "HLOOKUP",
    [value, array, integer, trailing(logical)],
    (_, wanted, rows, row, approximate = true) =>
      row < 1
        ? makeError("#VALUE!", "Rows count from 1.")
        : lookUpIn(wanted, transpose(rows), approximate, (place) => rows[row - 1]?.[place]),
  ),
  defineFunction("LOOKUP", [value, array, optional(array)], (_, wanted, looked, given) => {
    const list = given ? asList(looked) : looked.map((row) => row[0] ?? null);
    const place = findSorted(wanted, list, false);
    const results = given ? asList(given) : looked.map((row) => row.at(-1) ?? null);
    return place < 0 ? NOT_FOUND : (results[place] ?? NOT_FOUND);
  }),
  defineFunction("CHOOSE", [integer, many(lazy)], (_, place, choices) => {
    const choice = choices[place - 1];
    return choice ? choice() : makeError("#VALUE!", `There are ${choices.length} values to choose from.`);
  }),
  counting(
    "ROW",
    ({ top }) => top,
    ({ area, height }) => Array.from({ length: height }, (_, at) => [area.top + at + 1]),
    ({ row }) => row,
  ),
  counting(
    "COLUMN",
    ({ left }) => left,
    ({ area, width }) => [Array.from({ length: width }, (_, at) => area.left + at + 1)],
    ({ column }) => column,
  ),
  defineFunction("ROWS", [range], (scope, given) => (isError(given) ? given : sizeOf(given, scope).height)),
  defineFunction("COLUMNS", [range], (scope, given) => (isError(given) ? given : sizeOf(given, scope).width)),
  defineFunction(
    "OFFSET",
    [range, integer, integer, optional(integer), optional(integer)],
    (scope, from, rows, columns, height, width) => {
      if (!(from instanceof Reference)) return makeError("#VALUE!", "OFFSET needs cells.");
      const top = from.area.top + rows;
      const left = from.area.left + columns;
      const area = {
        top,
        left,
        bottom: top + (height ?? from.height) - 1,
        right: left + (width ?? from.width) - 1,
      };
      const outside =
        top < 0 ||
        left < 0 ||
        area.bottom >= MAX_ROWS ||
        area.right >= MAX_COLUMNS ||
        area.bottom < top ||
        area.right < left;
      return outside
        ? makeError("#REF!", "That is beyond the edge of the sheet.")
        : reach(new Reference(from.sheet, area), scope);
    },
    { fills: true },
  ),
  defineFunction(
    "INDIRECT",
    [text, optional(logical)],
    (scope, written, isA1 = true) => {
      const mark = written.lastIndexOf("!");
      const sheetName =
        mark < 0 ? undefined : written.slice(0, mark).replace(/^'|'$/g, "").replaceAll("''", "'");
      const sheet = sheetName === undefined ? scope.sheet : scope.engine.sheet(sheetName);
      const area = isA1 ? parseArea(written.slice(mark + 1)) : undefined;
      if (area && sheet) return reach(new Reference(sheet, area), scope);
      const named = sheet && scope.engine.namedProgram(written.slice(mark + 1), sheet)?.evaluate(scope);
      return named instanceof Reference
        ? reach(named, scope)
        : makeError("#REF!", `“${written}” is no reference to cells.`);
    },
    { fills: true, volatile: true },
  ),
  defineFunction("ADDRESS", [integer, integer, optional(integer)], (_, row, column, fixed = 1) =>
    row < 1 || column < 1 || row > MAX_ROWS || column > MAX_COLUMNS
      ? makeError("#VALUE!")
      : `${fixed === 1 || fixed === 3 ? "$" : ""}${formatColumn(column - 1)}${fixed === 1 || fixed === 2 ? "$" : ""}${row}`,
  ),
];

function reach(reference: Reference, scope: Scope): Reference {
  scope.engine.depend(reference, scope);
  return reference;
}
