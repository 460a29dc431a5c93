import type { Axis } from "./axis";

/** First and last index, both included; empty where `last` is below `first`. */
export interface Span {
  readonly first: number;
  readonly last: number;
}

/**
 * The rows (or columns) to keep in the page: those in view beyond the frozen ones, and a margin on both sides so
 * that a small scroll finds them ready.
 *
 * @param scroll - distance scrolled, CSS pixels
 * @param view - height (or width) of the view for rows beyond the frozen ones, CSS pixels
 * @param frozen - how many are frozen at the beginning
 * @param margin - how many more to keep on each side
 */
export function windowOf(axis: Axis, scroll: number, view: number, frozen: number, margin: number): Span {
  const frozenSize = axis.startOf(frozen);
  const first = axis.indexAt(frozenSize + scroll);
  const last = axis.indexAt(frozenSize + scroll + Math.max(0, view));
  return { first: Math.max(frozen, first - margin), last: Math.min(axis.count - 1, last + margin) };
}

/**
 * Where to scroll so that one of them is in view: unchanged where it is already.
 *
 * @returns distance to scroll to, CSS pixels
 */
export function scrollToShow(
  axis: Axis,
  index: number,
  scroll: number,
  view: number,
  frozen: number,
): number {
  if (index < frozen) return scroll;
  const start = axis.startOf(index) - axis.startOf(frozen);
  const end = start + axis.sizeOf(index);
  if (start < scroll) return start;
  if (end > scroll + view) return Math.max(0, Math.min(start, end - view));
  return scroll;
}
