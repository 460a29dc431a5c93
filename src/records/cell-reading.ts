import { isCellError } from "../domain/cell-value";
import type { CellValue } from "../domain/cell-value";
import { countMarks } from "../domain/probe/trials";
import { saysNothing } from "./cell-text";
import { parseDayText } from "./day-text";
import { parseDurationText } from "./duration";
import { classifyFormat } from "./number-format";
import { parseFraction, parseQuantity } from "./quantity";

/** What one cell holds, judged by itself. */
export type CellClass =
  | "blank"
  | "nothing"
  | "error"
  | "date"
  | "text date"
  | "clock"
  | "duration"
  | "percent"
  | "fraction"
  | "number"
  | "quantity"
  | "mark"
  | "text";

/** Whether a text is one or more trial marks of which one at least is no plain number: `+`, `✓`, `++-P`, `NR`. */
export function isMark(text: string): boolean {
  return text.length <= 24 && countMarks([text]).ok;
}

/** Tells what a cell holds: a date, a clock value, m:ss, 45/50, a percentage, a number, a mark or other text. */
export function classifyCell(value: CellValue, format: string): CellClass {
  if (value === null) return "blank";
  if (isCellError(value)) return "error";
  if (typeof value === "boolean") return "mark";
  if (typeof value === "number") {
    const kind = classifyFormat(format);
    if (kind === "date") return "date";
    if (kind === "clock" || kind === "time of day") return "clock";
    if (kind === "minutes and seconds") return "duration";
    return kind === "percent" ? "percent" : "number";
  }
  const found = known.get(value) ?? classifyText(value);
  if (known.size > MOST_KNOWN) known.clear();
  known.set(value, found);
  return found;
}

/** Texts seen before: a long sheet repeats few of them. */
const known = new Map<string, CellClass>();
const MOST_KNOWN = 20_000;

function classifyText(value: string): CellClass {
  const text = value.trim();
  if (text === "") return "blank";
  if (parseFraction(text)) return "fraction";
  if (parseDayText(text)) return "text date";
  const quantity = parseQuantity(text);
  if (quantity === "ambiguous") return "quantity";
  if (quantity)
    return quantity.suffix === "" ? "number" : quantity.suffix.startsWith("%") ? "percent" : "quantity";
  const duration = parseDurationText(text);
  if (duration) return duration.form === "number" ? "number" : "duration";
  // "-" and "A" are marks where marks stand and nothing elsewhere; the column decides.
  if (saysNothing(text)) return "nothing";
  return isMark(text) ? "mark" : "text";
}
