import { isCellError } from "../domain/cell-value";
import type { CellValue } from "../domain/cell-value";
import { countMarks } from "../domain/probe/trials";
import { complainOfDate } from "./cell-fault";
import type { Complaint } from "./cell-fault";
import { saysNothing } from "./cell-text";
import { isMark } from "./cell-reading";
import { KIND_NAMES } from "./column-kind";
import type { ColumnKind } from "./column-kind";
import { parseDurationText, readClock } from "./duration";
import type { ClockMeaning } from "./duration";
import { classifyFormat } from "./number-format";
import { parseFraction, parseQuantity } from "./quantity";

/** What a cell of a number column says; `total` where it names one too (45/50), `isShare` for a percentage. */
export type MeasureCell =
  | { readonly kind: "none" }
  | { readonly kind: "value"; readonly value: number; readonly total?: number; readonly isShare?: boolean }
  | { readonly kind: "marks"; readonly correct: number; readonly opportunities: number }
  | { readonly kind: "fault"; readonly complaint: Complaint };

/** How the cells of a column are meant, settled over the whole column. */
export interface MeasureForm {
  /** accuracy: plain numbers are shares from 0 to 1, not percentages */
  readonly shares: boolean;
  /** 0 and 1 are marks of single trials */
  readonly marks: boolean;
  readonly clock: ClockMeaning;
  /** clock values are to be expected here */
  readonly clocks: boolean;
}

const fault = (code: string, message: string): MeasureCell => ({
  kind: "fault",
  complaint: { code, message },
});
const none: MeasureCell = { kind: "none" };

const noNumber = (kind: ColumnKind, text: string): MeasureCell =>
  fault(
    "no-number",
    kind === "seconds" || kind === "minutes"
      ? `"${text.slice(0, 40)}" is not a time. Type it as minutes and seconds (1:30) or as a number of ${kind}.`
      : `"${text.slice(0, 40)}" is not a number. Type the ${KIND_NAMES[kind]} as a number.`,
  );

function readTimeNumber(kind: ColumnKind, value: number, format: string, form: MeasureForm): MeasureCell {
  const shown = classifyFormat(format);
  const perUnit = kind === "minutes" ? 60 : 1;
  if (shown === "minutes and seconds") return { kind: "value", value: readClock(value, "h:mm") / perUnit };
  const isClock = shown === "clock" || shown === "time of day";
  if (isClock && form.clocks) return { kind: "value", value: readClock(value, form.clock) / perUnit };
  if (isClock || (value > 0 && value < 1 && kind === "seconds")) {
    return fault(
      "clock-time",
      "A clock time such as 1:30 is stored as part of a day. Type the seconds as a number (90), or '1:30 with an apostrophe before it.",
    );
  }
  return { kind: "value", value };
}

function readNumber(kind: ColumnKind, value: number, format: string, form: MeasureForm): MeasureCell {
  const shown = classifyFormat(format);
  if (shown === "date") return complaint(complainOfDate(value, format));
  if (kind === "seconds" || kind === "minutes") return readTimeNumber(kind, value, format, form);
  if (shown === "clock" || shown === "time of day" || shown === "minutes and seconds") {
    return fault("clock-time", `This is a clock time. Type the ${KIND_NAMES[kind]} as a number.`);
  }
  if (kind === "accuracy") return readShare(value, shown === "percent" || form.shares);
  if (form.marks && (value === 0 || value === 1)) return { kind: "marks", correct: value, opportunities: 1 };
  return { kind: "value", value, ...(shown === "percent" ? { isShare: true } : {}) };
}

const complaint = (found: Complaint): MeasureCell => ({ kind: "fault", complaint: found });

/** A share, or a percentage made one. */
function readShare(value: number, isShare: boolean): MeasureCell {
  if (isShare) {
    return value > 1 || value < 0
      ? fault("no-share", "Accuracy lies between 0 and 100 %. Check this value.")
      : { kind: "value", value };
  }
  if (value < 0 || value > 100)
    return fault("no-share", "Accuracy lies between 0 and 100 %. Check this value.");
  if (value === 1) return fault("unclear-share", "Is this 1 % or 100 %? Type it with its percent sign.");
  return { kind: "value", value: value < 1 ? value : value / 100 };
}

function readTimeText(kind: ColumnKind, text: string, form: MeasureForm): MeasureCell {
  const duration = parseDurationText(text);
  if (!duration) return noNumber(kind, text);
  const perUnit = kind === "minutes" ? 60 : 1;
  if (duration.form === "number") return { kind: "value", value: duration.value };
  const seconds =
    duration.form === "h:mm:ss" &&
    form.clocks &&
    form.clock === "m:ss" &&
    /:00$/.test(text) &&
    duration.value >= 3600
      ? duration.value / 60
      : duration.value;
  return { kind: "value", value: seconds / perUnit };
}

function readText(kind: ColumnKind, text: string, form: MeasureForm): MeasureCell {
  const marksCount = kind === "correct" || kind === "score";
  if (marksCount && (form.marks || !saysNothing(text)) && isMark(text) && !/^\d+$/.test(text))
    return readMarks(text);
  if (saysNothing(text)) return none;
  if (kind === "seconds" || kind === "minutes") return readTimeText(kind, text, form);
  const fraction = parseFraction(text);
  if (fraction) {
    if (fraction.total === 0 || (fraction.part > fraction.total && kind !== "rate")) {
      return fault(
        "part-exceeds-total",
        `${text} is more than all. Type it as correct/total, such as 45/50.`,
      );
    }
    const { part, total } = fraction;
    if (kind === "accuracy") return { kind: "value", value: part / total, total };
    if (kind !== "rate") return { kind: "value", value: part, total };
  }
  const quantity = parseQuantity(text);
  if (quantity === "ambiguous") {
    return fault(
      "unclear-number",
      `"${text}" can be read as a decimal or as thousands. Type it without the comma or point.`,
    );
  }
  if (!quantity) return noNumber(kind, text);
  const isPercent = quantity.suffix.startsWith("%") || /^(?:percent|per cent|pct)$/i.test(quantity.suffix);
  if (kind === "accuracy")
    return isPercent ? readShare(quantity.value / 100, true) : readShare(quantity.value, form.shares);
  if (form.marks && quantity.suffix === "" && (quantity.value === 0 || quantity.value === 1)) {
    return { kind: "marks", correct: quantity.value, opportunities: 1 };
  }
  return {
    kind: "value",
    value: isPercent ? quantity.value / 100 : quantity.value,
    ...(isPercent ? { isShare: true } : {}),
  };
}

/** Reads trial marks of one cell; all absent is nothing. */
export function readMarks(text: string | number | boolean): MeasureCell {
  const counted = countMarks([text]);
  if (!counted.ok) return { kind: "fault", complaint: counted.fault };
  const { correct, opportunities } = counted.value;
  return opportunities === 0 ? none : { kind: "marks", correct, opportunities };
}

/**
 * Reads one cell of a number column: numbers with units, decimal commas and full-width digits, 45/50, percentages
 * as 0.9, 90 or 90 %, m:ss, clock values, trial marks; "n/a", dashes and "absent" are nothing. Seconds are given for
 * `seconds`, minutes for `minutes`, a share for `accuracy`. Negative numbers and a time of 0 are faults.
 */
export function readMeasureCell(
  kind: ColumnKind,
  value: CellValue,
  format: string,
  form: MeasureForm,
): MeasureCell {
  if (value === null) return none;
  if (isCellError(value)) {
    return fault(
      "error-cell",
      `This cell holds the error ${value.error}. Put it right, or type the ${KIND_NAMES[kind]}.`,
    );
  }
  if (typeof value === "boolean") {
    return kind === "correct" || kind === "score"
      ? readMarks(value)
      : noNumber(kind, String(value).toUpperCase());
  }
  const read =
    typeof value === "number"
      ? readNumber(kind, value, format, form)
      : value.trim() === ""
        ? none
        : readText(kind, value.trim(), form);
  if (read.kind !== "value") return read;
  if (read.value < 0 && kind !== "score") {
    return fault("negative", `The ${KIND_NAMES[kind]} cannot be less than 0. Check this number.`);
  }
  return read;
}
