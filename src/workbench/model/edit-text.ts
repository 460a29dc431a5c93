import type { Cell, CellStyle } from "../../spreadsheet/workbook";
import { displayText } from "../../spreadsheet/cell-display";
import { parseTyped } from "../../spreadsheet/cell-input";
import type { TypingSettings } from "../../spreadsheet/number-input";

/** What turns numbers into dates and back. */
export interface EditSettings extends TypingSettings {
  readonly date1904: boolean;
}

/**
 * The text that editing a cell starts with. Entering it again unchanged gives the same cell: text that would be
 * read as something else has an apostrophe before it, dates are written in full in the order they are typed in.
 */
export function formatEditText(
  cell: Cell | undefined,
  style: CellStyle | undefined,
  settings: EditSettings,
): string {
  if (cell === undefined) return "";
  if (cell.formula !== undefined) return `=${cell.formula}`;
  const { value } = cell;
  const numberFormat = style?.numberFormat ?? "General";
  if (value === null) return "";
  if (typeof value === "object") return value.error;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "string") return readsAsText(value, numberFormat, settings) ? value : `'${value}`;
  for (const text of numberTexts(value, numberFormat, settings)) {
    const read = parseTyped(text, settings, { numberFormat, date1904: settings.date1904 });
    if (read.ok && typeof read.value.content === "number" && Math.abs(read.value.content - value) < 1e-9)
      return text;
  }
  return String(value);
}

function readsAsText(text: string, numberFormat: string, settings: EditSettings): boolean {
  if (text.startsWith("'")) return false;
  const read = parseTyped(text, settings, { numberFormat, date1904: settings.date1904 });
  return read.ok && read.value.content === text;
}

/** Ways to write a number, the one that says most first. */
function numberTexts(value: number, numberFormat: string, settings: EditSettings): readonly string[] {
  const codes = numberFormat.replaceAll(/"[^"]*"|\[(?![hms]+\])[^\]]*\]|\\./gi, "");
  const write = (format: string): string => displayText(value, format, settings);
  const day = settings.dayOrder === "dmy" ? "dd/mm/yyyy" : "m/d/yyyy";
  if (/%/.test(codes)) return [`${String(Number((value * 100).toPrecision(15)))}%`];
  if (/general/i.test(codes)) return [];
  const hasDay = /[dy]|mmm/i.test(codes);
  const hasTime = /[hs]/i.test(codes);
  if (hasDay) return [write(day), write(`${day} h:mm`)];
  if (hasTime) return value >= 1 ? [write("[h]:mm:ss")] : [write("h:mm:ss"), write("h:mm:ss.000")];
  return [];
}
