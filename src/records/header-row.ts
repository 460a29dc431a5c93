import { classifyCell } from "./cell-reading";
import type { GridCells } from "./grid-cells";
import { matchHeader } from "./header-words";
import { couldHeadList, matchLists } from "./list-shape";

/** A run of cells in one row that may be headers. */
export interface HeaderRun {
  readonly row: number;
  readonly left: number;
  readonly right: number;
  /** different meanings that its cells name clearly */
  readonly recognised: number;
  readonly labels: number;
}

const CLEAR = 0.6;
const LONGEST_HEADER = 80;

/** The text of a cell as a header; "" where it holds none. */
export function headerText(cells: GridCells, row: number, column: number): string {
  const value = cells.value(row, column);
  return typeof value === "string" ? value.replace(/\s+/g, " ").trim() : "";
}

/** The strongest meaning of a cell read as a header, probe kinds and others alike. */
function strongest(text: string): { kind: string; strength: number } | undefined {
  let best: { kind: string; strength: number } | undefined;
  for (const [kind, strength] of matchHeader(text))
    if (!best || strength > best.strength) best = { kind, strength };
  return best;
}

/** Runs of filled cells of a row; a blank header is bridged where cells stand beneath it. */
export function runsOf(
  cells: GridCells,
  row: number,
  isFree: (row: number, column: number) => boolean,
): { left: number; right: number }[] {
  const { left, right, bottom } = cells.area;
  const runs: { left: number; right: number }[] = [];
  const holdsBeneath = (column: number): boolean => {
    for (let below = row + 1; below <= Math.min(bottom, row + 3); below += 1) {
      if (!cells.isBlank(below, column) && isFree(below, column)) return true;
    }
    return false;
  };
  let start = -1;
  let end = -1;
  for (let column = left; column <= right + 1; column += 1) {
    const filled = column <= right && isFree(row, column) && !cells.isBlank(row, column);
    if (filled) {
      if (start < 0) start = column;
      end = column;
    } else if (start >= 0 && (column > right || !isFree(row, column) || !holdsBeneath(column))) {
      runs.push({ left: start, right: end });
      start = -1;
    }
  }
  return runs;
}

const isLongNumber = (value: unknown): boolean => typeof value === "number" && value > 9999;

/** Judges a run as headers: how many different meanings it names, or undefined where it cannot be a header row. */
export function judgeHeaders(
  cells: GridCells,
  row: number,
  left: number,
  right: number,
): HeaderRun | undefined {
  const kinds = new Set<string>();
  let labels = 0;
  let clear = 0;
  let data = 0;
  for (let column = left; column <= right; column += 1) {
    const found = classifyCell(cells.value(row, column), cells.format(row, column));
    if (found === "blank") continue;
    labels += 1;
    const text = headerText(cells, row, column);
    const best = text === "" || text.length > LONGEST_HEADER ? undefined : strongest(text);
    if (best && best.strength >= CLEAR) {
      clear += 1;
      kinds.add(best.kind);
    } else if (found === "number" && !isLongNumber(cells.value(row, column))) data += 1;
    else if ((found !== "text" && found !== "mark" && found !== "nothing") || text.length > LONGEST_HEADER)
      return undefined;
  }
  // One bare number may head a column ("1", a year); more are data.
  if (data > 1 || (data === 1 && kinds.size < 5)) return undefined;
  if (kinds.size < 2 || clear < 0.3 * labels) return undefined;
  return { row, left, right, recognised: kinds.size, labels };
}

/** Judges a run as the headers of a list of words, passages, pupils or the like, or undefined. */
export function judgeListHeaders(
  cells: GridCells,
  row: number,
  left: number,
  right: number,
): HeaderRun | undefined {
  if (right === left || !couldHeadList(headerText(cells, row, left))) return undefined;
  const headers: string[] = [];
  for (let column = left; column <= right; column += 1) {
    const text = headerText(cells, row, column);
    if (text.length > LONGEST_HEADER || (text === "" && !cells.isBlank(row, column))) return undefined;
    headers.push(text);
  }
  const [list] = matchLists(headers);
  return list ? { row, left, right, recognised: list.kinds.length, labels: headers.length } : undefined;
}

/** Whether a row beneath the headers holds only units or a second line of headers, such as `(sec)` or `m:ss`. */
export function isUnitRow(cells: GridCells, row: number, left: number, right: number): boolean {
  let labels = 0;
  let units = 0;
  for (let column = left; column <= right; column += 1) {
    if (cells.isBlank(row, column)) continue;
    const text = headerText(cells, row, column);
    if (text === "") return false;
    labels += 1;
    if (
      /^[([].*[)\]]$/.test(text) ||
      /^(?:m{1,2}:ss|min:sec|secs?|seconds|min(?:ute)?s|%|wpm|wcpm|words|d\/m\/y+|m\/d\/y+|dd\/mm\/yy(?:yy)?|mm\/dd\/yy(?:yy)?|n|count)$/i.test(
        text,
      )
    )
      units += 1;
  }
  return units > 0 && units >= 0.5 * labels;
}
