import type { Area } from "../../domain/area";
import type { Axis } from "./axis";

export interface Place {
  readonly row: number;
  readonly column: number;
}

/** What is selected: the rectangle between `anchor` and `extent`, with the active cell inside. */
export interface Selection {
  readonly active: Place;
  readonly anchor: Place;
  readonly extent: Place;
}

/** What moving about a sheet depends on. */
export interface Terrain {
  readonly rows: Axis;
  readonly columns: Axis;
  readonly merges: readonly Area[];
  isFilled(row: number, column: number): boolean;
}

export type Direction = "up" | "down" | "left" | "right";

const STEPS: Record<Direction, { readonly rows: -1 | 0 | 1; readonly columns: -1 | 0 | 1 }> = {
  up: { rows: -1, columns: 0 },
  down: { rows: 1, columns: 0 },
  left: { rows: 0, columns: -1 },
  right: { rows: 0, columns: 1 },
};

/** A selection of one cell. */
export const selectPlace = (place: Place): Selection => ({ active: place, anchor: place, extent: place });

/** A selection of a whole area with its first cell active. */
export const selectArea = (area: Area): Selection => ({
  active: { row: area.top, column: area.left },
  anchor: { row: area.top, column: area.left },
  extent: { row: area.bottom, column: area.right },
});

/** The rectangle that is selected, grown so that no merged cell is cut. */
export function selectedArea(selection: Selection, merges: readonly Area[]): Area {
  let area = rectangle(selection.anchor, selection.extent);
  for (let grown = true; grown;) {
    grown = false;
    for (const merge of merges) {
      if (!overlaps(area, merge) || contains(area, merge)) continue;
      area = {
        top: Math.min(area.top, merge.top),
        left: Math.min(area.left, merge.left),
        bottom: Math.max(area.bottom, merge.bottom),
        right: Math.max(area.right, merge.right),
      };
      grown = true;
    }
  }
  return area;
}

/** The cell that stands for a place: the first cell of the merged area that covers it, else itself. */
export function leadingPlace(place: Place, merges: readonly Area[]): Place {
  const merge = mergeAt(place, merges);
  return merge === undefined ? place : { row: merge.top, column: merge.left };
}

/** The merged area that covers a place. */
export const mergeAt = (place: Place, merges: readonly Area[]): Area | undefined =>
  merges.find((area) => holds(area, place));

/** Moves the active cell one visible cell on, past a merged area and hidden rows; stays at the edge. */
export function stepFrom(place: Place, direction: Direction, terrain: Terrain): Place {
  const { rows, columns } = STEPS[direction];
  const merge = mergeAt(place, terrain.merges);
  const edge = merge === undefined ? place : leavingEdge(place, merge, direction);
  const row = rows === 0 ? edge.row : terrain.rows.visibleFrom(edge.row + rows, rows);
  const column = columns === 0 ? edge.column : terrain.columns.visibleFrom(edge.column + columns, columns);
  if (row === undefined || column === undefined) return place;
  return leadingPlace({ row, column }, terrain.merges);
}

/**
 * The end of a run of filled cells in a direction, or the next filled cell across a gap, or the sheet's edge:
 * what the Ctrl key does to an arrow key.
 */
export function jumpFrom(place: Place, direction: Direction, terrain: Terrain): Place {
  const isFilled = ({ row, column }: Place): boolean => terrain.isFilled(row, column);
  let here = place;
  let next = stepFrom(here, direction, terrain);
  if (isSame(next, here)) return here;
  const alongRun = isFilled(here) && isFilled(next);
  for (;;) {
    if (!alongRun && isFilled(next)) return next;
    if (alongRun && !isFilled(next)) return here;
    here = next;
    next = stepFrom(here, direction, terrain);
    if (isSame(next, here)) return here;
  }
}

/** Moves on by about one window: to the visible row that many pixels away. */
export function pageFrom(place: Place, pixels: number, rows: Axis): Place {
  const step = pixels > 0 ? 1 : -1;
  const wanted = rows.indexAt(Math.max(0, rows.startOf(place.row) + pixels));
  const row = rows.visibleFrom(wanted === place.row ? wanted + step : wanted, step);
  return row === undefined ? place : { row: Math.min(row, rows.count - 1), column: place.column };
}

/**
 * The next active cell inside a selection of several cells, row by row (Tab) or column by column (Enter), going
 * round at the ends and past hidden cells.
 */
export function nextWithin(
  active: Place,
  area: Area,
  along: "rows" | "columns",
  step: 1 | -1,
  terrain: Terrain,
): Place {
  const height = area.bottom - area.top + 1;
  const width = area.right - area.left + 1;
  const size = height * width;
  const down = active.row - area.top;
  const across = active.column - area.left;
  let position = along === "rows" ? down * width + across : across * height + down;
  for (let tries = 0; tries < size; tries += 1) {
    position = (position + step + size) % size;
    const place =
      along === "rows"
        ? { row: area.top + Math.floor(position / width), column: area.left + (position % width) }
        : { row: area.top + (position % height), column: area.left + Math.floor(position / height) };
    const shown = terrain.rows.sizeOf(place.row) > 0 && terrain.columns.sizeOf(place.column) > 0;
    if (shown && isSame(leadingPlace(place, terrain.merges), place)) return place;
  }
  return active;
}

/** Whether two places are the same cell. */
export const isSame = (a: Place, b: Place): boolean => a.row === b.row && a.column === b.column;
/** Whether an area holds a cell. */
export const holds = (area: Area, { row, column }: Place): boolean =>
  row >= area.top && row <= area.bottom && column >= area.left && column <= area.right;

const rectangle = (a: Place, b: Place): Area => ({
  top: Math.min(a.row, b.row),
  left: Math.min(a.column, b.column),
  bottom: Math.max(a.row, b.row),
  right: Math.max(a.column, b.column),
});

const overlaps = (a: Area, b: Area): boolean =>
  a.top <= b.bottom && b.top <= a.bottom && a.left <= b.right && b.left <= a.right;

const contains = (outer: Area, inner: Area): boolean =>
  outer.top <= inner.top &&
  outer.left <= inner.left &&
  outer.bottom >= inner.bottom &&
  outer.right >= inner.right;

function leavingEdge(place: Place, merge: Area, direction: Direction): Place {
  if (direction === "down") return { row: merge.bottom, column: place.column };
  if (direction === "right") return { row: place.row, column: merge.right };
  return { row: merge.top, column: merge.left };
}
