import { ERROR_CODES, type CellError, type CellValue, type ErrorCode } from "../../domain/cell-value";
import { parseFileText } from "./cell-text";

/** Errors of newer programs that the model has no code for. */
const OTHER_ERRORS: Readonly<Record<string, ErrorCode>> = { "#GETTING_DATA": "#BUSY!" };

/** The error that a file names. */
export const parseFileError = (text: string): CellError => {
  const known = ERROR_CODES.find((code) => code === text);
  if (known) return { error: known };
  return { error: OTHER_ERRORS[text] ?? "#VALUE!", message: `The file holds the error ${text} here.` };
};

/**
 * The error as a file may hold it: programs keep the newer ones as #VALUE! beside a part of their own and find them
 * again when they calculate.
 */
export const formatFileError = (code: ErrorCode): string =>
  code === "#SPILL!" || code === "#CALC!" || code === "#BUSY!" ? "#VALUE!" : code;

/**
 * The value of a cell from its type and text.
 *
 * Source: ECMA-376 part 1, 18.18.11 (ST_CellType).
 *
 * @param type - the attribute `t`; a number where there is none
 * @param text - the content of `v`, or of the inline string
 * @param strings - those that cells share
 */
export const parseFileValue = (
  type: string | undefined,
  text: string,
  strings: readonly string[],
  date1904: boolean,
): CellValue => {
  switch (type) {
    case "s":
      return strings[Number(text)] ?? "";
    case "str":
      return parseFileText(text);
    case "inlineStr":
      return text;
    case "b":
      return text.trim() === "1" || text.trim() === "true";
    case "e":
      return parseFileError(text.trim());
    case "d":
      return parseIsoDate(text.trim(), date1904);
    default: {
      if (text === "") return null;
      const number = Number(text);
      return Number.isNaN(number) ? text : number;
    }
  }
};

/** A date of ISO 8601 as the serial number of the file's date system; the text itself where it is none. */
const parseIsoDate = (text: string, date1904: boolean): number | string => {
  const match = /^(\d{4})-(\d\d)-(\d\d)(?:T(\d\d):(\d\d)(?::(\d\d(?:\.\d+)?))?)?Z?$/.exec(text);
  if (!match) return text;
  const [year = 0, month = 0, day = 0, hours = 0, minutes = 0, seconds = 0] = match
    .slice(1)
    .map((part) => Number(part ?? 0));
  const days = Math.round(Date.UTC(year, month - 1, day) / 86_400_000);
  // 25,569 days lie between 30 December 1899 and 1 January 1970; before March 1900 serials count one less.
  const serial1900 = days + 25_569 < 61 ? days + 25_568 : days + 25_569;
  return (date1904 ? days + 24_107 : serial1900) + (hours * 3600 + minutes * 60 + seconds) / 86_400;
};
