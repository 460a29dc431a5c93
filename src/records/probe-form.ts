import type { CandidateBlock } from "./candidate-block";
import { formatCell } from "./cell-address";
import { settleDayOrder, weighDayOrder } from "./day-cell";
import type { DayOrder } from "./day-text";
import { formatDay } from "../domain/calendar";
import { columnOf } from "./found-block";
import type { FoundColumn, Question } from "./found-block";
import type { MeasureForm } from "./measure-cell";
import { normaliseHeader } from "./header-text";
import { classifyFormat } from "./number-format";
import type { ClockMeaning } from "./duration";

/** How the cells of a block are meant, as its whole columns and the teacher's answers settle it. */
export interface ProbeForm {
  readonly dayOrder?: DayOrder;
  readonly measures: MeasureForm;
  readonly questions: readonly Question[];
}

function* textsOf(block: CandidateBlock, column: number): Generator<string> {
  for (let row = block.region.first; row <= block.region.last; row += 1) {
    const value = block.cells.value(row, column);
    if (typeof value === "string") yield value;
  }
}

/** The day order of a date column: the teacher's answer, or a value above 12; otherwise a question. */
export function settleOrder(
  block: CandidateBlock,
  date: FoundColumn,
): { order?: DayOrder; question?: Question } {
  if (block.choice.dayOrder) return { order: block.choice.dayOrder };
  const evidence = weighDayOrder(textsOf(block, date.column));
  const order = settleDayOrder(evidence) ?? block.fallback.dayOrder;
  if (order) return { order };
  if (!evidence.example) return {};
  return { question: askDayOrder(date, evidence.example, evidence.dmy > 0) };
}

/** The question which of day and month comes first. */
export function askDayOrder(
  at: Pick<FoundColumn, "column" | "headerRow" | "header">,
  example: { readonly text: string; readonly dmy: number; readonly mdy: number },
  mixed: boolean,
): Question {
  const dmy = formatDay(example.dmy as Parameters<typeof formatDay>[0]);
  const mdy = formatDay(example.mdy as Parameters<typeof formatDay>[0]);
  return {
    kind: "day order",
    row: at.headerRow,
    column: at.column,
    cell: formatCell(at.headerRow, at.column),
    header: at.header,
    message:
      (mixed
        ? `Some dates here have the day first and some the month first: is ${example.text} ${dmy} or ${mdy}? `
        : `Is ${example.text} ${dmy} or ${mdy}? Nothing in this column tells whether day or month comes first. `) +
      "Answer once in the pane, or give --day-order dmy or --day-order mdy.",
    example: { shown: example.text, dmy, mdy },
  };
}

interface Clocks {
  readonly meaning: ClockMeaning;
  readonly present: boolean;
  readonly question?: Question;
}

/** How clock values of a time column are meant: 1:30 typed into a spreadsheet is half past one to it. */
function settleClock(block: CandidateBlock, time: FoundColumn | undefined): Clocks {
  if (!time) return { meaning: "m:ss", present: false };
  const { cells, region } = block;
  const answer = block.choice.clock ?? block.fallback.clock;
  let clocks = 0;
  let filled = 0;
  let withHours = 0;
  let hoursAndMinutes = 0;
  let example: { value: number; format: string } | undefined;
  for (let row = region.first; row <= region.last; row += 1) {
    const value = cells.value(row, time.column);
    const format = cells.format(row, time.column);
    if (!cells.isBlank(row, time.column)) filled += 1;
    if (typeof value !== "number" || classifyFormat(format) !== "clock") continue;
    clocks += 1;
    example ??= { value, format };
    if (value >= 1 / 24) withHours += 1;
    if (!/s/i.test(format)) hoursAndMinutes += 1;
  }
  // A clock value among plain seconds is a slip of one row, not the form of the column.
  if (clocks === 0 || clocks < 0.5 * filled || !example) return { meaning: "m:ss", present: false };
  const header = normaliseHeader(time.header);
  if (/\bhour|\bhourmin\b/.test(header)) return { meaning: "h:mm", present: true };
  if (answer) return { meaning: answer, present: true };
  // 0:01:30 under h:mm:ss is a minute and a half by its own form; so is any column that shows no hour.
  if (withHours === 0 && hoursAndMinutes === 0) return { meaning: "h:mm", present: true };
  if (/\bminsec\b/.test(header))
    return { meaning: withHours === 0 && hoursAndMinutes < clocks ? "h:mm" : "m:ss", present: true };
  return { meaning: "m:ss", present: true, question: askClock(time, example) };
}

function askClock(time: FoundColumn, { value }: { value: number }): Question {
  const minutes = Math.round(value * 1440);
  const shown = `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, "0")}`;
  const words = (first: number, firstName: string, second: number, secondName: string): string =>
    `${first} ${firstName}${first === 1 ? "" : "s"} ${second} ${secondName}${second === 1 ? "" : "s"}`;
  const mss = words(Math.floor(minutes / 60), "minute", minutes % 60, "second");
  const hmm = words(Math.floor(minutes / 60), "hour", minutes % 60, "minute");
  return {
    kind: "clock",
    row: time.headerRow,
    column: time.column,
    cell: formatCell(time.headerRow, time.column),
    header: time.header,
    message:
      `The times here are stored as clock times: ${shown} is ${hmm} to the spreadsheet. They are read as minutes and ` +
      `seconds (m:ss), ${shown} as ${mss}. Confirm this once in the pane, or give --clock m:ss or --clock h:mm.`,
    example: { shown, mss, hmm },
  };
}

/** Settles how the cells of a block are meant: day order, clock values, shares or percentages, 0 and 1 as marks. */
export function settleForm(block: CandidateBlock): ProbeForm {
  const date = columnOf(block.columns, "date");
  const { order, question } = date ? settleOrder(block, date) : {};
  const clock = settleClock(block, columnOf(block.columns, "seconds") ?? columnOf(block.columns, "minutes"));
  const evidenceOf = (column: FoundColumn | undefined): CandidateBlock["evidence"][number] | undefined =>
    column && block.evidence[block.columns.indexOf(column)];
  const accuracy = evidenceOf(columnOf(block.columns, "accuracy"));
  const correct = evidenceOf(columnOf(block.columns, "correct") ?? columnOf(block.columns, "score"));
  const hasTotal =
    columnOf(block.columns, "opportunities") !== undefined || columnOf(block.columns, "words") !== undefined;
  return {
    ...(order ? { dayOrder: order } : {}),
    measures: {
      shares:
        accuracy !== undefined &&
        (accuracy.middle <= 1 || (Number.isNaN(accuracy.middle) && accuracy.share("percent") > 0)),
      marks: correct !== undefined && !hasTotal && (correct.binary || correct.markShare > 0.5),
      clock: clock.meaning,
      clocks: clock.present,
    },
    questions: [question, clock.question].filter((asked) => asked !== undefined),
  };
}
