import type { CellValue } from "../domain/cell-value";
import { parseExceptions } from "../domain/contraction/exceptions";
import type { CandidateBlock } from "./candidate-block";
import { blockKey } from "./candidate-block";
import { formatColumn } from "./cell-address";
import { labelsSummary } from "./cell-text";
import type { ColumnChoices } from "./column-choices";
import type { AnyKind } from "./column-kind";
import { settleDayOrder, weighDayOrder } from "./day-cell";
import type { DayOrder } from "./day-text";
import { columnOf } from "./found-block";
import type { CellFault, ListName, ListRecords, Question } from "./found-block";
import type { GridCells } from "./grid-cells";
import type { HeaderRegion } from "./header-region";
import { ListCells } from "./list-cells";
import { LIST_READERS } from "./list-records";
import { matchLists } from "./list-shape";
import { askDayOrder } from "./probe-form";

/** A region that is a list, with its columns. */
export interface ListCandidate {
  readonly kind: ListName;
  readonly block: CandidateBlock;
}

/** What a list gave. */
export interface ListRows<K extends ListName> {
  readonly records: readonly ListRecords[K][];
  readonly faults: readonly CellFault[];
  readonly questions: readonly Question[];
  readonly lastRow: number;
  readonly dayOrder?: DayOrder;
}

const LONGEST_WORD = 40;
const SAMPLE = 30;

/** The first rows with a word, down to where a list without a host's table ends. */
function sampleRows({ cells, region }: CandidateBlock, column: number): number[] {
  const rows: number[] = [];
  for (let row = region.first; row <= region.last && rows.length < SAMPLE; row += 1) {
    if (!cells.isBlank(row, column)) rows.push(row);
    else if (!region.table && rows.length > 0) break;
  }
  return rows;
}

const isWord = (value: CellValue): boolean => typeof value === "string" && value.length <= LONGEST_WORD;
const isBraille = (value: CellValue): boolean =>
  typeof value === "string" && parseExceptions([["word", value]]).ok;
const isUnicodeBraille = (value: CellValue): boolean =>
  typeof value === "string" && /[\u2800-\u28FF]/.test(value);

/** Whether the cells beneath speak for the list: braille under Braille, and words under Word. */
function cellsAgree(kind: ListName, block: CandidateBlock): boolean {
  const { cells, columns, region } = block;
  const word = columnOf(columns, "word");
  if (!word) return true;
  const rows = sampleRows(block, word.column);
  const most = (column: number, test: (value: CellValue) => boolean): boolean =>
    rows.filter((row) => test(cells.value(row, column))).length >= 0.7 * rows.length;
  if (!most(word.column, isWord)) return false;
  const braille = columnOf(columns, "braille");
  if (kind !== "exceptions" || !braille) return true;
  if (/except/i.test(`${region.table?.name ?? ""} ${cells.sheet}`)) return true;
  // What a formula shows is the engine's braille, not hers.
  if (rows.some((row) => cells.formula(row, braille.column) !== null)) return false;
  return (
    most(braille.column, isBraille) && rows.some((row) => isUnicodeBraille(cells.value(row, braille.column)))
  );
}

/** Understands a region as a list of pupils, lessons, miscues, words, passages or exceptions, or not at all. */
export function understandList(
  cells: GridCells,
  region: HeaderRegion,
  choices: ColumnChoices,
  hidden: boolean,
): ListCandidate | undefined {
  const key = blockKey(cells.sheet, region.headers);
  const choice = choices.blocks?.[key] ?? {};
  // Where she said herself what a column means, the table is not known by its headers alone.
  if (choice.columns && Object.keys(choice.columns).length > 0) return undefined;
  for (const { kind, kinds } of matchLists(region.headers)) {
    const columns = region.headers.map((header, place) => {
      const column = region.left + place;
      const own: AnyKind | undefined = kinds[place];
      return {
        column,
        lastColumn: column,
        letters: formatColumn(column),
        header,
        headerRow: region.headerRows[place] ?? region.headerRow,
        key: header,
        kinds: own === undefined ? [] : [own],
        chosen: false,
      };
    });
    const block = { key, cells, region, columns, evidence: [], choice, fallback: choices, hidden };
    if (cellsAgree(kind, block)) return { kind, block };
  }
  return undefined;
}

function settleOrder(block: CandidateBlock): { order?: DayOrder; question?: Question } {
  const date = columnOf(block.columns, "date");
  if (!date) return {};
  const texts: string[] = [];
  for (let row = block.region.first; row <= block.region.last; row += 1) {
    const value = block.cells.value(row, date.column);
    if (typeof value === "string") texts.push(value);
  }
  const evidence = weighDayOrder(texts);
  const order = block.choice.dayOrder ?? settleDayOrder(evidence) ?? block.fallback.dayOrder;
  if (order) return { order };
  return evidence.example ? { question: askDayOrder(date, evidence.example, evidence.dmy > 0) } : {};
}

/** A row of totals: its first cell says so, and it has no day. */
const isSummary = (cells: ListCells): boolean => {
  const { block, row } = cells;
  const first = block.cells.value(row, block.region.left);
  return cells.column("date") !== undefined && typeof first === "string" && labelsSummary(first);
};

/**
 * Makes records of the rows of a list. A row with a fault is none; a list without a host's table ends at its first blank
 * row, because beneath it anything may stand.
 */
export function readListRows<K extends ListName>(kind: K, block: CandidateBlock): ListRows<K> {
  const { region } = block;
  const { order, question } = settleOrder(block);
  const records: ListRecords[K][] = [];
  const faults: CellFault[] = [];
  let lastRow = region.headerRow;
  for (let row = region.first; row <= region.last; row += 1) {
    const cells = new ListCells(block, row, order);
    if (cells.isBlank) {
      if (region.table || cells.column("date")) continue;
      break;
    }
    if (isSummary(cells)) continue;
    lastRow = row;
    const record = LIST_READERS[kind](cells);
    faults.push(...cells.faults);
    if (record !== undefined && cells.faults.length === 0) records.push(record);
  }
  return {
    records,
    faults,
    questions: question ? [question] : [],
    lastRow,
    ...(order ? { dayOrder: order } : {}),
  };
}
