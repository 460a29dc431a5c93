import type { Day } from "../domain/units";
import type { CandidateBlock } from "./candidate-block";
import { holds } from "./candidate-block";
import { faultAt } from "./cell-fault";
import { saysNothing } from "./cell-text";
import { isGrouped, natureOfRow, textAt } from "./data-rows";
import { readDayCell, settleDayOrder, weighDayOrder } from "./day-cell";
import { columnOf } from "./found-block";
import type { CellFault, Question, TaughtSign } from "./found-block";
import { askDayOrder } from "./probe-form";

export interface TaughtRows {
  readonly records: readonly TaughtSign[];
  readonly faults: readonly CellFault[];
  readonly questions: readonly Question[];
  readonly lastRow: number;
}

/** Whether a block lists taught signs: signs with the day each was introduced, and no scores. */
export const isTaughtBlock = (block: CandidateBlock): boolean =>
  holds(block, "sign") &&
  (holds(block, "introduced") ||
    (/taught|known|learn/i.test(`${block.region.table?.name ?? ""} ${block.cells.sheet}`) &&
      !holds(block, "correct")));

/** Makes taught signs of the rows of a list; the day may be blank. */
export function readTaughtRows(block: CandidateBlock): TaughtRows {
  const { cells, columns, region } = block;
  const faults: CellFault[] = [];
  const records: TaughtSign[] = [];
  const sign = columnOf(columns, "sign");
  const pupil = columnOf(columns, "pupil");
  const introduced = columnOf(columns, "introduced") ?? columnOf(columns, "date");
  const rows: number[] = [];
  const texts: string[] = [];
  for (let row = region.first; row <= region.last; row += 1) {
    if (natureOfRow(block, row) !== "data" || !sign || textAt(block, row, sign.column) === "") continue;
    rows.push(row);
    const value = introduced ? cells.value(row, introduced.column) : null;
    if (typeof value === "string") texts.push(value);
  }
  const evidence = weighDayOrder(texts);
  const order = block.choice.dayOrder ?? settleDayOrder(evidence) ?? block.fallback.dayOrder;
  const fillsDown = pupil !== undefined && isGrouped(block, pupil.column, rows);
  let lastPupil = "";
  for (const row of rows) {
    if (!sign) break;
    const own = pupil ? textAt(block, row, pupil.column) : cells.sheet;
    if (own !== "") lastPupil = own;
    const name = own === "" && fillsDown ? lastPupil : own;
    if (pupil && name === "") {
      faults.push(
        faultAt(cells.sheet, row, pupil.column, {
          code: "no-pupil",
          message: "The pupil is missing. Type the pupil's code or initials.",
        }),
      );
      continue;
    }
    let day: Day | undefined;
    if (introduced && !saysNothing(textAt(block, row, introduced.column))) {
      const read = readDayCell(
        cells.value(row, introduced.column),
        cells.format(row, introduced.column),
        order,
      );
      if (read.kind === "day") day = read.day;
      if (read.kind === "fault") faults.push(faultAt(cells.sheet, row, introduced.column, read.complaint));
    }
    records.push({
      pupil: name,
      sign: textAt(block, row, sign.column),
      ...(day === undefined ? {} : { introduced: day }),
      source: { sheet: cells.sheet, row: row + 1 },
    });
  }
  const question =
    order === undefined && evidence.example && introduced
      ? askDayOrder(introduced, evidence.example, evidence.dmy > 0)
      : undefined;
  return {
    records,
    faults,
    questions: question ? [question] : [],
    lastRow: rows[rows.length - 1] ?? region.headerRow,
  };
}
