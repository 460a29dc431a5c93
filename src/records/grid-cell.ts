import { isCellError } from "../domain/cell-value";
import type { CellValue } from "../domain/cell-value";
import type { Probe } from "../domain/probe/probe";
import type { PerMinute, Share } from "../domain/units";
import { complainOfDate } from "./cell-fault";
import type { Complaint } from "./cell-fault";
import { saysAbsent } from "./cell-text";
import { readMarks, readMeasureCell } from "./measure-cell";
import type { ColumnKind } from "./column-kind";
import { classifyFormat } from "./number-format";
import { parseFraction } from "./quantity";

/** What a cell of a grid says: part of a probe, nothing, or what is wrong with it. */
export type GridCell =
  | { readonly kind: "none" }
  | {
      readonly kind: "values";
      readonly values: Partial<Pick<Probe, "correct" | "opportunities" | "score" | "rate" | "accuracy">>;
    }
  | { readonly kind: "fault"; readonly complaint: Complaint };

/** What plain numbers of a grid are: marks (0 and 1), or a measure that its title or format names. */
export type GridNumbers = "marks" | Extract<ColumnKind, "score" | "rate" | "accuracy" | "correct">;

const fault = (code: string, message: string): GridCell => ({ kind: "fault", complaint: { code, message } });

/** Reads one cell of a grid: trial marks, 4/5, or a number of the grid's measure. */
export function readGridCell(value: CellValue, format: string, numbers: GridNumbers): GridCell {
  if (value === null || (typeof value === "string" && (value.trim() === "" || saysAbsent(value))))
    return { kind: "none" };
  if (isCellError(value))
    return fault("error-cell", `This cell holds the error ${value.error}. Type the mark.`);
  if (typeof value === "number" && classifyFormat(format) === "date") {
    return { kind: "fault", complaint: complainOfDate(value, format) };
  }
  const fraction = typeof value === "string" ? parseFraction(value) : undefined;
  if (fraction) {
    return fraction.part > fraction.total
      ? fault(
          "part-exceeds-total",
          `${String(value)} is more than all. Type it as correct/total, such as 4/5.`,
        )
      : { kind: "values", values: { correct: fraction.part, opportunities: fraction.total } };
  }
  const isPlainNumber =
    typeof value === "number" || (typeof value === "string" && /^[\d.,]+ ?%?$/.test(value.trim()));
  if (isPlainNumber && numbers !== "marks") return readNumber(value, format, numbers);
  const marks = readMarks(value);
  if (marks.kind === "none") return { kind: "none" };
  if (marks.kind !== "marks") return marks.kind === "fault" ? marks : { kind: "none" };
  return { kind: "values", values: { correct: marks.correct, opportunities: marks.opportunities } };
}

function readNumber(value: CellValue, format: string, numbers: Exclude<GridNumbers, "marks">): GridCell {
  const form = { shares: false, marks: false, clock: "m:ss", clocks: false } as const;
  const read = readMeasureCell(numbers, value, format, form);
  if (read.kind === "fault") return read;
  if (read.kind !== "value") return { kind: "none" };
  switch (numbers) {
    case "rate":
      return { kind: "values", values: { rate: read.value as PerMinute } };
    case "accuracy":
      return { kind: "values", values: { accuracy: read.value as Share } };
    case "correct":
      return { kind: "values", values: { correct: read.value } };
    case "score":
      return { kind: "values", values: { score: read.value } };
  }
}
