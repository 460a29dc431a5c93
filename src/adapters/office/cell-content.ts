import { ERROR_CODES } from "../../domain/cell-value";
import type { CellValue, ErrorCode } from "../../domain/cell-value";
import { HostError } from "../../ports/sheet";
import type { CellInput } from "../../ports/sheet";

/** Most characters that a cell of Excel holds, and most of a formula. */
const LONGEST_TEXT = 32_767;
const LONGEST_FORMULA = 8_192;

const isErrorCode = (text: string): text is ErrorCode => (ERROR_CODES as readonly string[]).includes(text);

/**
 * The cell value for what Excel reports.
 *
 * @param value - an element of `Range.values`
 * @param type - the same element of `Range.valueTypes`: it alone tells the error #N/A from the text "#N/A"
 */
export const readCellValue = (value: unknown, type: string): CellValue => {
  if (type === "Empty") return null;
  if (type === "Error") {
    const shown = String(value);
    // Newer errors, such as #FIELD! or #CONNECT!, stand outside the list that every program writes.
    return isErrorCode(shown)
      ? { error: shown }
      : { error: "#VALUE!", message: `Excel shows ${shown} in this cell.` };
  }
  if (typeof value === "number" || typeof value === "string" || typeof value === "boolean") return value;
  return String(value);
};

/**
 * The formula of a cell, or null for a constant.
 *
 * @param formula - an element of `Range.formulas`: the constant itself where there is no formula
 * @param value - the same element of `Range.values`
 */
export const readFormula = (formula: unknown, value: unknown): string | null =>
  // Text that begins with "=" is reported in both places alike; no formula results in its own text.
  typeof formula === "string" && formula.startsWith("=") && formula !== value ? formula : null;

/** Text that Excel takes for what it says: it begins with a letter or braille, has no digit and is no truth value. */
const isPlainText = (text: string): boolean =>
  /^[\p{L}\u2800-\u28FF]\P{N}*$/u.test(text) && !/^(true|false)$/i.test(text);

/** What makes Excel keep a text as text: an apostrophe in front, where it might see a number, date or formula. */
export const enterText = (text: string): string => {
  if (text.length > LONGEST_TEXT) {
    throw new HostError(
      `A text of ${text.length.toLocaleString("en")} characters does not fit into a cell (at most 32,767). Split it.`,
    );
  }
  return text === "" || isPlainText(text) ? text : `'${text}`;
};

/**
 * The element of `Range.formulas` that enters this: `null` leaves a cell alone, `""` empties it.
 * @throws {HostError} where it does not fit into a cell
 */
const enterCell = (input: CellInput): string | number | boolean | null => {
  if (input === undefined) return null;
  if (input === null) return "";
  if (typeof input === "boolean") return input;
  if (typeof input === "string") return enterText(input);
  if (typeof input === "number") {
    if (!Number.isFinite(input))
      throw new HostError("A cell cannot hold a number without end. Check what was computed.");
    return input;
  }
  if ("error" in input) return input.error;
  if (input.formula.length > LONGEST_FORMULA) {
    throw new HostError("A formula is longer than Excel allows (8,192 characters). Shorten it.");
  }
  return input.formula;
};

/** The same for rows, which must all be equally wide. */
export const enterRows = (
  rows: readonly (readonly CellInput[])[],
  width: number,
): (string | number | boolean | null)[][] => {
  const odd = rows.findIndex((row) => row.length !== width);
  if (odd >= 0) {
    throw new HostError(
      `Row ${odd + 1} to be written has ${rows[odd]?.length ?? 0} cells instead of ${width}. Give one for every column.`,
    );
  }
  return rows.map((row) => row.map(enterCell));
};
