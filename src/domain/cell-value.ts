/** The error values that a cell can show, as every spreadsheet program writes them. */
export const ERROR_CODES = [
  "#NULL!",
  "#DIV/0!",
  "#VALUE!",
  "#REF!",
  "#NAME?",
  "#NUM!",
  "#N/A",
  "#SPILL!",
  "#CALC!",
  "#BUSY!",
] as const;

export type ErrorCode = (typeof ERROR_CODES)[number];

/** An error in a cell, with the sentence that says what to do where one is known. */
export interface CellError {
  readonly error: ErrorCode;
  readonly message?: string;
}

/** What a cell holds; `null` is an empty cell. Dates are serial numbers. */
export type CellValue = null | number | string | boolean | CellError;

/** Whether a cell value is an error. */
export const isCellError = (value: unknown): value is CellError =>
  typeof value === "object" && value !== null && "error" in value;
