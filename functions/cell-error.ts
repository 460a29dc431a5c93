import type { Fault } from "../src/domain/result";

/** Faults of an impossible number (seconds 0, more errors than words): #NUM!. Everything unnamed here is #VALUE!. */
const IMPOSSIBLE_NUMBERS: ReadonlySet<string> = new Set([
  "impossible-number",
  "no-time",
  "clock-time",
  "negative-count",
  "more-errors-than-words",
  "more-correct-than-opportunities",
  "not-above-zero",
  "negative-score",
  "zero-mean",
  "goal-not-after-start",
  "not-a-line-length",
]);

/** Faults of a question to which there is no answer: #N/A. */
const NOTHING_TO_GIVE: ReadonlySet<string> = new Set([
  "nothing-to-give",
  "no-words",
  "no-contractions",
  "too-few-points",
  "one-day",
  "level-trend",
  "away-from-goal",
  "goal-passed",
  "too-far-ahead",
  "nothing-tried",
]);

/**
 * The error that a cell shows for a fault, with the fault's sentence as its message.
 *
 * `code` decides: an impossible number is #NUM!, nothing to give #N/A, all else #VALUE!. A new fault code
 * that is not to be #VALUE! is added to one of the two lists above.
 */
export const toCellError = (fault: Fault): CustomFunctions.Error =>
  new CustomFunctions.Error(errorCodeOf(fault), fault.message);

const errorCodeOf = (fault: Fault): CustomFunctions.ErrorCode => {
  if (IMPOSSIBLE_NUMBERS.has(fault.code)) return CustomFunctions.ErrorCode.invalidNumber;
  if (NOTHING_TO_GIVE.has(fault.code)) return CustomFunctions.ErrorCode.notAvailable;
  return CustomFunctions.ErrorCode.invalidValue;
};

/**
 * Whether a cell of an argument holds an error.
 *
 * Hosts hand errors over in three forms: an instance of `CustomFunctions.Error` (`code`), Excel's own data type
 * (`type: "Error"`, `basicValue`), and this project's spreadsheet model (`error`).
 */
export const isErrorCell = (cell: unknown): boolean => {
  if (typeof cell !== "object" || cell === null) return false;
  const { code, error, type, basicType } = cell as Record<string, unknown>;
  return isErrorText(code) || isErrorText(error) || type === "Error" || basicType === "Error";
};

const isErrorText = (text: unknown): boolean => typeof text === "string" && text.startsWith("#");
