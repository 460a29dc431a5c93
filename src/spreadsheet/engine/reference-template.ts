import type { RangeA1, ReferenceA1 } from "@borgar/fx";
import type { Area } from "../../domain/area";
import { MAX_COLUMNS, MAX_ROWS } from "../address";

/** A reference as it reads from any cell: each bound is absolute, or counted from the formula's own cell. */
export interface ReferenceTemplate {
  readonly sheet: string | undefined;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly topFixed: boolean;
  readonly leftFixed: boolean;
  readonly bottomFixed: boolean;
  readonly rightFixed: boolean;
  /** One cell, not a range. */
  readonly isCell: boolean;
}

/** The template of a reference that was written in the cell at this row and column. */
export function makeTemplate(reference: ReferenceA1, row: number, column: number): ReferenceTemplate {
  const range: RangeA1 = reference.range;
  const wholeColumns = range.top === null;
  const wholeRows = range.left === null;
  const top = range.top ?? 0;
  const left = range.left ?? 0;
  const bottom = wholeColumns ? MAX_ROWS - 1 : (range.bottom ?? top);
  const right = wholeRows ? MAX_COLUMNS - 1 : (range.right ?? left);
  const topFixed = wholeColumns || Boolean(range.$top);
  const leftFixed = wholeRows || Boolean(range.$left);
  const bottomFixed = wholeColumns || Boolean(range.$bottom ?? range.$top);
  const rightFixed = wholeRows || Boolean(range.$right ?? range.$left);
  return {
    sheet: reference.context?.[0],
    top: topFixed ? top : top - row,
    left: leftFixed ? left : left - column,
    bottom: bottomFixed ? bottom : bottom - row,
    right: rightFixed ? right : right - column,
    topFixed,
    leftFixed,
    bottomFixed,
    rightFixed,
    isCell: !wholeColumns && !wholeRows && top === bottom && left === right,
  };
}

/** The area of a template seen from a cell; undefined where it leaves the sheet. */
export function placeTemplate(template: ReferenceTemplate, row: number, column: number): Area | undefined {
  const top = template.topFixed ? template.top : template.top + row;
  const bottom = template.bottomFixed ? template.bottom : template.bottom + row;
  const left = template.leftFixed ? template.left : template.left + column;
  const right = template.rightFixed ? template.right : template.right + column;
  if (Math.min(top, left, bottom, right) < 0) return undefined;
  if (Math.max(top, bottom) >= MAX_ROWS || Math.max(left, right) >= MAX_COLUMNS) return undefined;
  return {
    top: Math.min(top, bottom),
    left: Math.min(left, right),
    bottom: Math.max(top, bottom),
    right: Math.max(left, right),
  };
}
