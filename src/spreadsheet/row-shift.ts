import type { Area } from "../domain/area";
import { MAX_ROWS } from "./address";

/** Rows put in before row `at`, or taken out from row `at` on. */
export interface RowShift {
  readonly kind: "insert-rows" | "delete-rows";
  readonly at: number;
  readonly count: number;
}

/** Where a row goes, or undefined where it is deleted or pushed off the sheet. */
export function shiftRow(row: number, shift: RowShift): number | undefined {
  if (row < shift.at) return row;
  if (shift.kind === "insert-rows") return row + shift.count < MAX_ROWS ? row + shift.count : undefined;
  return row < shift.at + shift.count ? undefined : row - shift.count;
}

/** Where a stretch of rows goes: it grows by rows put in inside it and shrinks by rows taken out. */
export function shiftRows(
  top: number,
  bottom: number,
  shift: RowShift,
): { top: number; bottom: number } | undefined {
  if (top === 0 && bottom === MAX_ROWS - 1) return { top, bottom };
  const { at, count } = shift;
  if (shift.kind === "insert-rows") {
    const start = top >= at ? top + count : top;
    if (start >= MAX_ROWS) return undefined;
    return { top: start, bottom: Math.min(bottom >= at ? bottom + count : bottom, MAX_ROWS - 1) };
  }
  const end = at + count;
  if (top >= at && bottom < end) return undefined;
  return {
    top: top >= end ? top - count : Math.min(top, at),
    bottom: bottom >= end ? bottom - count : Math.min(bottom, at - 1),
  };
}

/** Where an area goes, or undefined where all its rows are deleted. */
export function shiftArea(area: Area, shift: RowShift): Area | undefined {
  const rows = shiftRows(area.top, area.bottom, shift);
  return rows && { ...area, ...rows };
}
