import type { TaughtSign } from "../domain/contraction/taught-sign";
import type { Day } from "../domain/units";
import type { CandidateBlock } from "./candidate-block";
import { holds } from "./candidate-block";
import { faultAt } from "./cell-fault";
import { saysNothing } from "./cell-text";
import { isGrouped, natureOfRow, textAt } from "./data-rows";
import { readDayCell, settleDayOrder, weighDayOrder } from "./day-cell";
import { columnOf } from "./found-block";
import type { CellFault, FoundColumn, Question } from "./found-block";
import { normaliseHeader } from "./header-text";
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

/** Headers of the columns that the tool fills, after {@link normaliseHeader}. */
const FILLED: readonly (readonly ["reading" | "writing" | "checkAgain", RegExp])[] = [
  ["reading", /^(reading|reading state|state reading|read)$/],
  ["writing", /^(writing|writing state|state writing|written|brailling)$/],
  ["checkAgain", /^(check again|check again on|next check|review|review date|next review|review on)$/],
];

/** The columns of a list of taught signs, those that the tool fills named too. */
export const nameTaughtColumns = (columns: readonly FoundColumn[]): readonly FoundColumn[] =>
  columns.map((column) => {
    const words = normaliseHeader(column.header);
    const kind = FILLED.find(([, pattern]) => pattern.test(words))?.[0];
    return kind === undefined || column.chosen ? column : { ...column, kinds: [kind] };
  });

/** Makes taught signs of the rows of a list; the days may be blank. */
export function readTaughtRows(block: CandidateBlock): TaughtRows {
  const { cells, region } = block;
  const columns = nameTaughtColumns(block.columns);
  const faults: CellFault[] = [];
  const records: TaughtSign[] = [];
  const sign = columnOf(columns, "sign");
  const pupil = columnOf(columns, "pupil");
  const introduced = columnOf(columns, "introduced") ?? columnOf(columns, "date");
  const checkAgain = columnOf(columns, "checkAgain");
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
    const dayIn = (column: FoundColumn | undefined): Day | undefined => {
      if (!column || saysNothing(textAt(block, row, column.column))) return undefined;
      const read = readDayCell(cells.value(row, column.column), cells.format(row, column.column), order);
      if (read.kind === "fault") faults.push(faultAt(cells.sheet, row, column.column, read.complaint));
      return read.kind === "day" ? read.day : undefined;
    };
    const textIn = (kind: "reading" | "writing"): string => {
      const column = columnOf(columns, kind);
      return column ? textAt(block, row, column.column) : "";
    };
    const [day, again] = [dayIn(introduced), dayIn(checkAgain)];
    const [reading, writing] = [textIn("reading"), textIn("writing")];
    records.push({
      pupil: name,
      sign: textAt(block, row, sign.column),
      ...(day === undefined ? {} : { introduced: day }),
      ...(reading === "" ? {} : { reading }),
      ...(writing === "" ? {} : { writing }),
      ...(again === undefined ? {} : { checkAgain: again }),
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
