import type { ColumnKind } from "./column-kind";
import type { FoundColumn } from "./found-block";
import type { MeasureCell } from "./measure-cell";

/** The number cells of one row by kind, each with the column it came from. */
export type ReadMeasures = ReadonlyMap<
  ColumnKind,
  { readonly cell: MeasureCell; readonly column: FoundColumn }
>;

/** The numbers of one probe; `seconds` is the whole time. */
export interface MeasureValues {
  words?: number;
  errors?: number;
  correct?: number;
  opportunities?: number;
  seconds?: number;
  rate?: number;
  accuracy?: number;
  score?: number;
}

const valueOf = (measures: ReadMeasures, kind: ColumnKind): number | undefined => {
  const cell = measures.get(kind)?.cell;
  return cell?.kind === "value" ? cell.value : undefined;
};

/** Minutes and seconds in two columns are one time where the seconds stay below 60; otherwise the seconds are it. */
function timeOf(measures: ReadMeasures): number | undefined {
  const minutes = valueOf(measures, "minutes");
  const seconds = valueOf(measures, "seconds");
  if (minutes === undefined) return seconds;
  if (seconds === undefined) return Math.round(minutes * 60 * 1000) / 1000;
  return seconds < 60 && Number.isInteger(minutes) ? minutes * 60 + seconds : seconds;
}

/** Puts the numbers of a row together: 45/50 gives both, marks give correct and opportunities, minutes become seconds. */
export function gatherMeasures(measures: ReadMeasures): MeasureValues {
  const values: MeasureValues = {};
  for (const kind of ["words", "errors", "correct", "opportunities", "rate", "accuracy", "score"] as const) {
    const value = valueOf(measures, kind);
    if (value !== undefined) values[kind] = value;
  }
  for (const kind of ["correct", "score"] as const) {
    const cell = measures.get(kind)?.cell;
    if (cell?.kind === "marks") {
      values.correct ??= cell.correct;
      values.opportunities ??= cell.opportunities;
    }
  }
  for (const [kind, { cell }] of measures) {
    if (cell.kind !== "value" || cell.total === undefined) continue;
    if (kind === "errors") values.words ??= cell.total;
    else if (kind === "words") {
      values.words = cell.total;
      values.errors ??= cell.total - cell.value;
    } else {
      values.correct ??= kind === "accuracy" ? cell.value * cell.total : cell.value;
      if (values.words === undefined) values.opportunities ??= cell.total;
    }
  }
  const time = timeOf(measures);
  if (time !== undefined) values.seconds = time;
  return values;
}

/** Finds what cannot be in one row: more errors than words, more correct than shown, no time at all. */
export function checkMeasures(
  measures: ReadMeasures,
  report: (column: FoundColumn, code: string, message: string) => void,
): void {
  const values = gatherMeasures(measures);
  const total = values.words ?? values.opportunities;
  const errors = measures.get("errors")?.column;
  if (errors && values.errors !== undefined && total !== undefined && values.errors > total) {
    report(
      errors,
      "more-errors-than-words",
      `There are more errors (${values.errors}) than ${values.words === undefined ? "opportunities" : "words"} (${total}). Check both numbers.`,
    );
  }
  const correct = measures.get("correct")?.column;
  const most = values.opportunities ?? values.words;
  if (correct && values.correct !== undefined && most !== undefined && values.correct > most) {
    report(
      correct,
      "more-correct-than-all",
      `More are correct (${values.correct}) than there were (${most}). Check both numbers.`,
    );
  }
  const time = measures.get("seconds")?.column ?? measures.get("minutes")?.column;
  if (time && values.seconds === 0) {
    report(
      time,
      "no-time",
      "A time of 0 gives no rate. Type the time taken, or leave the cell empty if it was not timed.",
    );
  }
}
