import type { Probe } from "../domain/probe/probe";
import type { Day, PerMinute, Seconds, Share } from "../domain/units";
import type { CandidateBlock } from "./candidate-block";
import { holds } from "./candidate-block";
import { faultAt } from "./cell-fault";
import { saysNothing } from "./cell-text";
import { countsWords } from "./column-fit";
import { NUMBER_KINDS } from "./column-kind";
import type { ColumnKind } from "./column-kind";
import { isGrouped, natureOfRow, saysNothingAt, textAt } from "./data-rows";
import { readDayCell } from "./day-cell";
import { columnOf } from "./found-block";
import type { CellFault, FoundColumn } from "./found-block";
import { readMarks, readMeasureCell } from "./measure-cell";
import type { MeasureCell } from "./measure-cell";
import { isMark } from "./cell-reading";
import { checkMeasures, gatherMeasures } from "./probe-measures";
import type { ReadMeasures } from "./probe-measures";
import type { ProbeForm } from "./probe-form";

/** What the rows of a block gave. */
export interface ProbeRows {
  readonly records: readonly Probe[];
  readonly faults: readonly CellFault[];
  /** rows that only lack an answer to the question of day order */
  readonly waiting: number;
  /** last row that holds data of any kind, absent pupils included */
  readonly lastRow: number;
}

const TEXT_KINDS = [
  "task",
  "sign",
  "material",
  "unit",
  "code",
  "medium",
  "support",
  "expected",
  "response",
  "comprehension",
  "phase",
  "note",
] as const;

interface Row {
  readonly row: number;
  readonly measures: ReadMeasures;
}

/** Reads the number cells of one row. A calculated cell whose inputs are blank or wrong says nothing of its own. */
function readMeasures(block: CandidateBlock, form: ProbeForm, row: number): ReadMeasures {
  const found = new Map<ColumnKind, { cell: MeasureCell; column: FoundColumn }>();
  let typedFault = false;
  let blankInput = false;
  for (const kind of NUMBER_KINDS) {
    const column = columnOf(block.columns, kind);
    if (!column || (kind === "opportunities" && column.kinds.includes("words"))) continue;
    const cell = readMeasureCell(
      kind,
      block.cells.value(row, column.column),
      block.cells.format(row, column.column),
      form.measures,
    );
    found.set(kind, { cell, column });
    if (block.cells.formula(row, column.column) === null) {
      if (cell.kind === "fault") typedFault = true;
      if (cell.kind === "none") blankInput = true;
    }
  }
  for (const [kind, { cell, column }] of found) {
    const calculated = block.cells.formula(row, column.column) !== null;
    const isConsequence = cell.kind === "fault" && (typedFault || blankInput);
    if (calculated && isConsequence) found.set(kind, { cell: { kind: "none" }, column });
  }
  return found;
}

/** Whether anything that was typed says how the probe went; a calculated cell alone does not, unless all are. */
function hasOutcome(block: CandidateBlock, row: number, measures: ReadMeasures): boolean {
  let typedColumns = 0;
  let typed = 0;
  let calculated = 0;
  for (const [kind, { cell, column }] of measures) {
    if (kind === "opportunities" || kind === "seconds" || kind === "minutes") continue;
    const isFormula = block.cells.formula(row, column.column) !== null;
    if (!isFormula) typedColumns += 1;
    if (cell.kind === "none") continue;
    if (isFormula) calculated += 1;
    else typed += 1;
  }
  if (typed > 0 || (typedColumns === 0 && calculated > 0)) return true;
  const response = columnOf(block.columns, "response");
  if (!response) return false;
  const text = textAt(block, row, response.column);
  return text !== "" && (!saysNothing(text) || (isMark(text) && !/^(?:-|a)$/i.test(text)));
}

interface Filler {
  readonly column: FoundColumn | undefined;
  readonly grouped: boolean;
  last: string;
}

/** Makes probes of the rows of a block, and faults of those that cannot be used; no row hides another. */
export function readProbeRows(block: CandidateBlock, form: ProbeForm): ProbeRows {
  const faults: CellFault[] = [];
  const records: Probe[] = [];
  const sheet = block.cells.sheet;
  const date = columnOf(block.columns, "date");
  let waiting = 0;
  let lastRow = block.region.headerRow;
  const rows: Row[] = [];
  for (let row = block.region.first; row <= block.region.last; row += 1) {
    const nature = natureOfRow(block, row);
    if (nature !== "data") continue;
    rows.push({ row, measures: readMeasures(block, form, row) });
  }
  const kept = dropAfterthoughts(block, rows);
  const numbers = kept.map(({ row }) => row);
  const filler = (kind: ColumnKind): Filler => {
    const column = columnOf(block.columns, kind);
    return { column, grouped: column !== undefined && isGrouped(block, column.column, numbers), last: "" };
  };
  const pupil = filler("pupil");
  const dateGrouped = date !== undefined && isGrouped(block, date.column, numbers);
  let lastDateRow = -1;
  let phaseAbove = "";

  for (const { row, measures } of kept) {
    lastRow = row;
    const pupilName = take(block, pupil, row);
    const continues =
      (pupil.grouped && isBlankAt(block, pupil.column, row)) || (dateGrouped && isBlankAt(block, date, row));
    const phaseName = takePhase(block, row, continues ? phaseAbove : "");
    phaseAbove = phaseName;
    if (date && !block.cells.isBlank(row, date.column)) lastDateRow = row;
    if (!hasOutcome(block, row, measures)) continue;
    const before = faults.length;
    const report = (column: FoundColumn, code: string, message: string): void => {
      faults.push(faultAt(sheet, row, column.column, { code, message }));
    };
    for (const { cell, column } of measures.values()) {
      if (cell.kind === "fault") report(column, cell.complaint.code, cell.complaint.message);
    }
    if (faults.length === before) checkMeasures(measures, report);
    const dateRow = dateGrouped && lastDateRow >= 0 ? lastDateRow : row;
    const day = date
      ? readDayCell(
          block.cells.value(dateRow, date.column),
          block.cells.format(dateRow, date.column),
          form.dayOrder,
        )
      : undefined;
    if (date && day?.kind === "fault") report(date, day.complaint.code, day.complaint.message);
    if (date && day?.kind === "none")
      report(date, "no-date", "The date is missing. Type the day of the probe.");
    if (pupil.column && pupilName === "")
      report(pupil.column, "no-pupil", "The pupil is missing. Type the pupil's code or initials.");
    if (faults.length > before) continue;
    if (day?.kind === "waiting") waiting += 1;
    if (day?.kind !== "day") continue;
    records.push(makeProbe(block, row, day.day, pupilName, phaseName, measures));
  }
  return { records, faults, waiting, lastRow };
}

const isBlankAt = (block: CandidateBlock, column: FoundColumn | undefined, row: number): boolean =>
  column !== undefined && block.cells.isBlank(row, column.column);

/**
 * The phase of a row, or the phase above where the row goes on with the group that began there. Elsewhere a blank
 * stays one: within its series it means "as before", and the row above may be another pupil's.
 */
function takePhase(block: CandidateBlock, row: number, above: string): string {
  const column = columnOf(block.columns, "phase");
  const own = column === undefined ? "" : textAt(block, row, column.column);
  return own === "" || (column !== undefined && saysNothingAt(block, row, column.column)) ? above : own;
}

/** The text of a column that may be filled down from the row above. */
function take(block: CandidateBlock, filler: Filler, row: number): string {
  if (!filler.column) return "";
  const text = textAt(block, row, filler.column.column);
  const own = saysNothing(text) ? "" : text;
  if (own !== "") filler.last = own;
  return own === "" && filler.grouped ? filler.last : own;
}

/**
 * Leaves out what stands beneath a table and is none of it: after the last dated row, and beyond a blank row, notes
 * and legends that carry no date.
 */
function dropAfterthoughts(block: CandidateBlock, rows: readonly Row[]): Row[] {
  const date = columnOf(block.columns, "date");
  if (!date || block.region.table) return [...rows];
  let lastDated = -1;
  rows.forEach(({ row }, place) => {
    const { kind } = readDayCell(
      block.cells.value(row, date.column),
      block.cells.format(row, date.column),
      undefined,
    );
    if (kind === "day" || kind === "waiting") lastDated = place;
  });
  let end = lastDated;
  if (lastDated >= 0) {
    while (
      end + 1 < rows.length &&
      rows[end + 1]?.row === (rows[end]?.row ?? 0) + 1 &&
      isRowOfProbes(block, rows[end + 1])
    )
      end += 1;
  } else end = rows.length - 1;
  return rows.slice(0, end + 1);
}

const isRowOfProbes = (block: CandidateBlock, row: Row | undefined): boolean =>
  row !== undefined && hasOutcome(block, row.row, row.measures);

function makeProbe(
  block: CandidateBlock,
  row: number,
  day: Day,
  pupil: string,
  phase: string,
  measures: ReadMeasures,
): Probe {
  const texts: Partial<Record<(typeof TEXT_KINDS)[number], string>> = {};
  for (const kind of TEXT_KINDS) {
    const column = columnOf(block.columns, kind);
    if (!column) continue;
    const text = kind === "phase" ? phase : textAt(block, row, column.column);
    const keepsDash = kind === "response" || kind === "expected" || kind === "support" || kind === "sign";
    if (text !== "" && (keepsDash || !saysNothingAt(block, row, column.column))) texts[kind] = text;
  }
  const values = gatherMeasures(measures);
  const unitIsWords = texts.unit === undefined ? undefined : countsWords(texts.unit);
  const attempted = columnOf(block.columns, "words");
  if (attempted?.kinds.includes("opportunities") && unitIsWords === false && values.words !== undefined) {
    values.opportunities = values.words;
    delete values.words;
  }
  if (
    texts.response !== undefined &&
    values.correct === undefined &&
    isMark(texts.response) &&
    !holds(block, "expected")
  ) {
    const marks = readMarks(texts.response);
    if (marks.kind === "marks") {
      values.correct = marks.correct;
      values.opportunities ??= marks.opportunities;
    }
  }
  return {
    pupil: holds(block, "pupil") ? pupil : block.cells.sheet,
    day,
    ...texts,
    ...(values.words === undefined ? {} : { words: values.words }),
    ...(values.errors === undefined ? {} : { errors: values.errors }),
    ...(values.correct === undefined ? {} : { correct: values.correct }),
    ...(values.opportunities === undefined ? {} : { opportunities: values.opportunities }),
    ...(values.seconds === undefined ? {} : { seconds: values.seconds as Seconds }),
    ...(values.rate === undefined ? {} : { rate: values.rate as PerMinute }),
    ...(values.accuracy === undefined ? {} : { accuracy: values.accuracy as Share }),
    ...(values.score === undefined ? {} : { score: values.score }),
    source: { sheet: block.cells.sheet, row: row + 1 },
  };
}
