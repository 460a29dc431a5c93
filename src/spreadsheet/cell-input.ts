import { ERROR_CODES } from "../domain/cell-value";
import { isPercentFormat, isTextFormat } from "numfmt";
import { refusal, success, type Result } from "../domain/result";
import { DAYS_1904 } from "./calendar";
import { parseFormula } from "./formula";
import { parseNumberText, type TypingSettings } from "./number-input";
import type { CellContent } from "./open-workbook";

/** What a typed text puts into a cell; `numberFormat` is meant for a cell whose format is `General`. */
export interface TypedInput {
  readonly content: CellContent;
  readonly numberFormat?: string;
}

/** How the cell that is typed into looks, and the workbook's day system. */
export interface TypingPlace {
  readonly numberFormat: string;
  readonly date1904: boolean;
}

/**
 * What she typed, as the cell keeps it: a formula after `=`, text after an apostrophe or in a cell formatted as
 * text, a number, date, time or percentage, TRUE or FALSE, an error value, otherwise text.
 *
 * @returns a fault `formula` with what is wrong where a formula does not parse
 */
export function parseTyped(text: string, settings: TypingSettings, place: TypingPlace): Result<TypedInput> {
  if (text === "") return success({ content: null });
  if (text.startsWith("'")) return success({ content: text.slice(1) });
  if (isTextFormat(place.numberFormat) && place.numberFormat !== "General") return success({ content: text });
  const trimmed = text.trim();
  if (/^=./s.test(trimmed)) {
    const parsed = parseFormula(trimmed.slice(1));
    return parsed.ok
      ? success({ content: { formula: trimmed.slice(1) } })
      : refusal("formula", parsed.fault.message);
  }
  if (/^(?:true|false)$/i.test(trimmed)) return success({ content: trimmed.toLowerCase() === "true" });
  const error = ERROR_CODES.find((code) => code === trimmed.toUpperCase());
  if (error) return success({ content: { error } });
  const number = parseNumberText(text, settings);
  if (!number) return success({ content: text });
  return success(dressNumber(number.value, number.format, place));
}

function dressNumber(value: number, format: string | undefined, place: TypingPlace): TypedInput {
  // Typing 45 or .45 into a cell formatted as per cent means 45 %.
  if (isPercentFormat(place.numberFormat) && format === undefined) {
    return { content: Math.abs(value) >= 1 ? value / 100 : value };
  }
  const isDay = format !== undefined && /y|d-mmm/.test(format);
  const content = isDay && place.date1904 ? value - DAYS_1904 : value;
  return format !== undefined && place.numberFormat === "General"
    ? { content, numberFormat: format }
    : { content };
}
