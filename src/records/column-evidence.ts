import { tidyText } from "./cell-text";
import { classifyCell } from "./cell-reading";
import type { CellClass } from "./cell-reading";
import type { GridCells } from "./grid-cells";
import { classifyFormat } from "./number-format";

/** What a column holds, over a sample of its filled data cells. */
export interface ColumnEvidence {
  /** cells that hold something, "absent" and dashes left out */
  readonly filled: number;
  /** share of the filled cells of each class, from 0 to 1 */
  share(...classes: readonly CellClass[]): number;
  /** cells such as "-", "n/a", "absent" */
  readonly nothing: number;
  /** smallest, middle and largest plain number; NaN where there is none */
  readonly least: number;
  readonly middle: number;
  readonly most: number;
  /** every filled cell is 0 or 1, or a mark */
  readonly binary: boolean;
  /** dashes count among marks */
  readonly markShare: number;
  readonly formulas: number;
  readonly texts: readonly string[];
  readonly timeOfDay: number;
  readonly textLength: number;
}

const SAMPLE = 400;

/** Gathers the evidence of a column over the given rows (the first few hundred filled ones). */
export function describeColumn(cells: GridCells, column: number, rows: Iterable<number>): ColumnEvidence {
  const counts = new Map<CellClass, number>();
  const numbers: number[] = [];
  const texts: string[] = [];
  let filled = 0;
  let nothing = 0;
  let dashes = 0;
  let formulas = 0;
  let timeOfDay = 0;
  let binary = true;
  for (const row of rows) {
    const value = cells.value(row, column);
    const format = cells.format(row, column);
    const found = classifyCell(value, format);
    // An error tells nothing of what the column is meant to hold.
    if (found === "blank" || found === "error") continue;
    if (found === "nothing") {
      nothing += 1;
      if (typeof value === "string" && tidyText(value).length <= 2) dashes += 1;
      continue;
    }
    filled += 1;
    counts.set(found, (counts.get(found) ?? 0) + 1);
    if (cells.formula(row, column) !== null) formulas += 1;
    if (typeof value === "number" && found === "number") {
      numbers.push(value);
      if (value !== 0 && value !== 1) binary = false;
    } else if (found !== "mark") {
      binary = binary && typeof value === "string" && /^[01]$/.test(value.trim());
    }
    if (typeof value === "string" && texts.length < SAMPLE) texts.push(tidyText(value));
    if (
      found === "clock" &&
      (classifyFormat(format) === "time of day" ||
        (typeof value === "number" &&
          value > 7 / 24 &&
          value < 18 / 24 &&
          Math.round(value * 1440) % 5 === 0))
    )
      timeOfDay += 1;
    if (filled >= SAMPLE) break;
  }
  numbers.sort((a, b) => a - b);
  const marks = (counts.get("mark") ?? 0) + (binary ? (counts.get("number") ?? 0) : 0) + dashes;
  return {
    filled,
    nothing,
    formulas,
    binary: binary && filled > 0,
    share: (...classes) =>
      filled === 0 ? 0 : classes.reduce((sum, name) => sum + (counts.get(name) ?? 0), 0) / filled,
    least: numbers[0] ?? NaN,
    middle: numbers[Math.floor(numbers.length / 2)] ?? NaN,
    most: numbers[numbers.length - 1] ?? NaN,
    markShare: filled + dashes === 0 ? 0 : marks / (filled + dashes),
    texts,
    timeOfDay: filled === 0 ? 0 : timeOfDay / filled,
    textLength: texts.length === 0 ? 0 : texts.reduce((sum, text) => sum + text.length, 0) / texts.length,
  };
}
