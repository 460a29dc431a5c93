import type { CellValue } from "../domain/cell-value";
import type { Goal } from "../domain/progress/goal";
import type { Day } from "../domain/units";
import type { CandidateBlock } from "./candidate-block";
import { holds } from "./candidate-block";
import { faultAt } from "./cell-fault";
import { natureOfRow, textAt } from "./data-rows";
import { readDayCell, settleDayOrder, weighDayOrder } from "./day-cell";
import type { DayOrder } from "./day-text";
import { columnOf } from "./found-block";
import type { CellFault, FoundColumn, Question } from "./found-block";
import { readMeasureCell } from "./measure-cell";
import { askDayOrder } from "./probe-form";

export interface GoalRows {
  readonly records: readonly Goal[];
  readonly faults: readonly CellFault[];
  readonly questions: readonly Question[];
  readonly lastRow: number;
}

const TEXTS = ["text", "task", "measure", "code", "unit", "support", "criterion"] as const;

/** Whether a block states goals: a goal to reach and a day to reach it by. */
export const isGoalBlock = (block: CandidateBlock): boolean =>
  holds(block, "goalScore") && holds(block, "goalDate");

function* dateTexts(block: CandidateBlock, columns: readonly FoundColumn[]): Generator<string> {
  for (const { column } of columns) {
    for (let row = block.region.first; row <= block.region.last; row += 1) {
      const value: CellValue = block.cells.value(row, column);
      if (typeof value === "string") yield value;
    }
  }
}

function settleOrder(block: CandidateBlock): { order?: DayOrder; question?: Question } {
  if (block.choice.dayOrder) return { order: block.choice.dayOrder };
  const columns = [columnOf(block.columns, "startDate"), columnOf(block.columns, "goalDate")].filter(
    (column) => column !== undefined,
  );
  const evidence = weighDayOrder(dateTexts(block, columns));
  const order = settleDayOrder(evidence) ?? block.fallback.dayOrder;
  if (order) return { order };
  return evidence.example && columns[0]
    ? { question: askDayOrder(columns[0], evidence.example, evidence.dmy > 0) }
    : {};
}

/** Makes goals of the rows of a goals block; a goal that lacks its start or its end is a fault at that cell. */
export function readGoalRows(block: CandidateBlock): GoalRows {
  const { cells, columns, region } = block;
  const faults: CellFault[] = [];
  const records: Goal[] = [];
  const { order, question } = settleOrder(block);
  let lastRow = region.headerRow;
  const pupilColumn = columnOf(columns, "pupil");
  for (let row = region.first; row <= region.last; row += 1) {
    if (natureOfRow(block, row) !== "data") continue;
    const isFilled = (["goalScore", "goalDate", "startScore", "startDate"] as const).some((kind) => {
      const column = columnOf(columns, kind);
      return column !== undefined && !cells.isBlank(row, column.column);
    });
    if (!isFilled) continue;
    const before = faults.length;
    const report = (column: FoundColumn, code: string, message: string): void => {
      faults.push(faultAt(cells.sheet, row, column.column, { code, message }));
    };
    const anchor = columnOf(columns, "goalScore") ?? columns[0];
    let waits = false;
    const day = (kind: "startDate" | "goalDate", name: string): Day | undefined => {
      const column = columnOf(columns, kind);
      if (!column) {
        if (anchor) report(anchor, "no-date", `The ${name} is not given in this table. Add a column for it.`);
        return undefined;
      }
      const read = readDayCell(cells.value(row, column.column), cells.format(row, column.column), order);
      if (read.kind === "day") return read.day;
      if (read.kind === "waiting") waits = true;
      else
        report(
          column,
          read.kind === "fault" ? read.complaint.code : "no-date",
          read.kind === "fault" ? read.complaint.message : `The ${name} is missing. Type the day.`,
        );
      return undefined;
    };
    const score = (kind: "startScore" | "goalScore", name: string): number | undefined => {
      const column = columnOf(columns, kind);
      if (!column) {
        if (anchor)
          report(anchor, "no-score", `The ${name} is not given in this table. Add a column for it.`);
        return undefined;
      }
      const form = { shares: true, marks: false, clock: "m:ss", clocks: false } as const;
      const read = readMeasureCell(
        "score",
        cells.value(row, column.column),
        cells.format(row, column.column),
        form,
      );
      if (read.kind === "value")
        return read.total === undefined
          ? scaleOf(block, row, read.value, read.isShare ?? false)
          : read.value / read.total;
      report(
        column,
        read.kind === "fault" ? read.complaint.code : "no-score",
        read.kind === "fault" ? read.complaint.message : `The ${name} is missing. Type it as a number.`,
      );
      return undefined;
    };
    const startDay = day("startDate", "start date");
    const goalDay = day("goalDate", "goal date");
    const startScore = score("startScore", "start score");
    const goalScore = score("goalScore", "goal score");
    const pupil = pupilColumn ? textAt(block, row, pupilColumn.column) : cells.sheet;
    if (pupil === "" && pupilColumn)
      report(pupilColumn, "no-pupil", "The pupil is missing. Type the pupil's code or initials.");
    const goalDate = columnOf(columns, "goalDate");
    if (startDay !== undefined && goalDay !== undefined && goalDay <= startDay && goalDate) {
      report(goalDate, "goal-before-start", "The goal date is not after the start date. Check both dates.");
    }
    lastRow = row;
    if (faults.length > before || waits) continue;
    if (
      startDay === undefined ||
      goalDay === undefined ||
      startScore === undefined ||
      goalScore === undefined
    )
      continue;
    const texts: Partial<Record<(typeof TEXTS)[number], string>> = {};
    for (const kind of TEXTS) {
      const column = columnOf(columns, kind);
      const text = column ? textAt(block, row, column.column) : "";
      if (text !== "") texts[kind] = text;
    }
    records.push({ pupil, ...texts, startDay, startScore, goalDay, goalScore });
  }
  return { records, faults, questions: question ? [question] : [], lastRow };
}

/** A score of a goal about accuracy is a share: 90 means 0.9 there, as 90 % does. */
function scaleOf(block: CandidateBlock, row: number, value: number, isShare: boolean): number {
  const measure = columnOf(block.columns, "measure");
  const isAccuracy =
    measure !== undefined && /accura|percent|%|pct/i.test(textAt(block, row, measure.column));
  return isAccuracy && !isShare && value > 1 ? value / 100 : value;
}
