import {
  parseA1Ref,
  stringifyA1Ref,
  stringifyTokens,
  tokenize,
  type RangeA1,
  type ReferenceA1,
} from "@borgar/fx";
import type { Area } from "../domain/area";
import { MAX_COLUMNS, MAX_ROWS } from "./address";
import { shiftRows, type RowShift } from "./row-shift";

/** What a reference becomes: another one, `undefined` where its cells are gone, or the same object. */
type Rewriting = (range: RangeA1, sheet: string | undefined) => RangeA1 | undefined;

const REFERENCE_TOKENS = new Set(["range", "range_beam", "range_ternary"]);

/**
 * A formula with each of its cell references rewritten; structured references and names stay.
 *
 * @param formula - without its `=`
 * @param rewrite - answers the same object to leave a reference as it is written
 */
function rewriteReferences(formula: string, rewrite: Rewriting): string {
  if (!/\d|:/.test(formula)) return formula;
  let changed = false;
  const tokens = tokenize(formula).map((token) => {
    if (!REFERENCE_TOKENS.has(token.type)) return token;
    const reference = parseA1Ref(token.value);
    if (!reference || !("range" in reference)) return token;
    const range = rewrite(reference.range, sheetOf(reference));
    if (range === reference.range) return token;
    changed = true;
    return { ...token, value: range ? stringifyA1Ref({ ...reference, range }) : "#REF!" };
  });
  return changed ? stringifyTokens(tokens) : formula;
}

/** The sheet that a reference names; a reference into another workbook is none of ours. */
function sheetOf(reference: ReferenceA1): string | undefined {
  const context = reference.context ?? [];
  return context.length > 1 ? "\u0000" : context[0];
}

const sameSheet = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

/**
 * A formula after rows were put in or taken out: references follow their cells, a range grows and shrinks with the
 * rows inside it, and a reference whose cells are all gone becomes `#REF!`.
 *
 * @param formula - without its `=`
 * @param home - the sheet of the formula's own cell
 * @param edited - the sheet whose rows moved
 */
export function shiftFormula(
  formula: string,
  home: string | undefined,
  edited: string,
  shift: RowShift,
): string {
  return rewriteReferences(formula, (range, sheet) => {
    const target = sheet ?? home;
    if (target === undefined || !sameSheet(target, edited) || range.top === null) return range;
    const bottom = range.bottom ?? range.top;
    const rows = shiftRows(range.top, bottom, shift);
    if (!rows) return undefined;
    return rows.top === range.top && rows.bottom === bottom ? range : { ...range, ...rows };
  });
}

/**
 * A formula after a table got rows at its end: references that span exactly its data rows, within its columns, grow.
 *
 * @param data - the table's data rows as they were, without header and totals
 */
export function growFormula(
  formula: string,
  home: string | undefined,
  edited: string,
  data: Area,
  count: number,
): string {
  return rewriteReferences(formula, (range, sheet) => {
    const target = sheet ?? home;
    if (target === undefined || !sameSheet(target, edited) || range.left === null) return range;
    const spans =
      range.top === data.top &&
      (range.bottom ?? range.top) === data.bottom &&
      range.left >= data.left &&
      (range.right ?? range.left) <= data.right;
    return spans ? { ...range, bottom: data.bottom + count, right: range.right ?? range.left } : range;
  });
}

/**
 * A formula after cells of one area went to another place on the same sheet: references into the area follow.
 *
 * @param moved - the area that the cells left
 */
export function followMovedCells(
  formula: string,
  home: string | undefined,
  edited: string,
  moved: Area,
  rows: number,
): string {
  return rewriteReferences(formula, (range, sheet) => {
    const target = sheet ?? home;
    if (target === undefined || !sameSheet(target, edited) || range.top === null || range.left === null)
      return range;
    const bottom = range.bottom ?? range.top;
    const inside =
      range.top >= moved.top &&
      bottom <= moved.bottom &&
      range.left >= moved.left &&
      (range.right ?? range.left) <= moved.right;
    return inside ? { ...range, top: range.top + rows, bottom: bottom + rows } : range;
  });
}

/**
 * A formula as it reads when copied to a cell `rows` further down and `columns` further right: relative references
 * move along, absolute ones stay, and one that leaves the sheet becomes `#REF!`.
 *
 * @param formula - without its `=`
 */
export function copyFormula(formula: string, rows: number, columns: number): string {
  if (rows === 0 && columns === 0) return formula;
  return rewriteReferences(formula, (range) => {
    const move = (
      at: number | null | undefined,
      fixed: boolean | null | undefined,
      by: number,
    ): number | null => (at === null || at === undefined || fixed ? (at ?? null) : at + by);
    const top = move(range.top, range.$top, rows);
    const bottom = move(range.bottom ?? range.top, range.$bottom ?? range.$top, rows);
    const left = move(range.left, range.$left, columns);
    const right = move(range.right ?? range.left, range.$right ?? range.$left, columns);
    const off = [top, bottom].some((row) => row !== null && (row < 0 || row >= MAX_ROWS));
    const aside = [left, right].some((column) => column !== null && (column < 0 || column >= MAX_COLUMNS));
    return off || aside ? undefined : { ...range, top, bottom, left, right };
  });
}
