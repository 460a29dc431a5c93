import type { Probe } from "../domain/probe/probe";
import { formatArea, formatColumn } from "./cell-address";
import { blockKey } from "./candidate-block";
import { faultAt } from "./cell-fault";
import { tidyText } from "./cell-text";
import type { BlockChoice, ColumnChoices } from "./column-choices";
import { readDayCell, settleDayOrder, weighDayOrder } from "./day-cell";
import type { DayOrder } from "./day-text";
import type { CellFault, FoundColumn, ProbeBlock, Question } from "./found-block";
import type { GridCells } from "./grid-cells";
import { readGridCell } from "./grid-cell";
import type { GridRegion } from "./grid-region";
import { headerText } from "./header-row";
import { askDayOrder } from "./probe-form";

interface DayHeadings {
  readonly order?: DayOrder;
  readonly question?: Question;
}

type Place = { readonly row: number; readonly column: number };

/** Places of the dates of a grid: across its heading row, or down its side. */
const dayPlaces = (region: GridRegion): Place[] =>
  region.layout === "signs down"
    ? region.across.map((column) => ({ row: region.headerRow, column }))
    : region.rows.map((row) => ({ row, column: region.side }));

function settleDays(
  cells: GridCells,
  region: GridRegion,
  choice: BlockChoice,
  fallback: ColumnChoices,
): DayHeadings {
  if (choice.dayOrder) return { order: choice.dayOrder };
  const places = dayPlaces(region);
  const texts = places
    .map(({ row, column }) => cells.value(row, column))
    .filter((value) => typeof value === "string");
  const evidence = weighDayOrder(texts);
  const order = settleDayOrder(evidence) ?? fallback.dayOrder;
  if (order) return { order };
  if (!evidence.example) return {};
  const shown = evidence.example.text;
  const first = places.find(
    ({ row, column }) => tidyText(String(cells.value(row, column))) === tidyText(shown),
  ) ?? { row: region.headerRow, column: region.side };
  const at = region.layout === "signs down" ? first : { row: region.headerRow, column: region.side };
  const header = headerText(cells, region.headerRow, at.column);
  return {
    question: askDayOrder(
      { column: at.column, headerRow: at.row, header },
      evidence.example,
      evidence.dmy > 0,
    ),
  };
}

const lettersOf = (columns: readonly number[]): string => {
  const [first = 0] = columns;
  const last = columns[columns.length - 1] ?? first;
  return first === last ? formatColumn(first) : `${formatColumn(first)}:${formatColumn(last)}`;
};

function describeColumns(cells: GridCells, region: GridRegion): FoundColumn[] {
  const across = region.layout === "signs down" ? "date" : "sign";
  const down = region.layout === "dates down" ? "date" : region.pupilsDown ? "pupil" : "sign";
  const column = (at: number, kind: FoundColumn["kinds"][number]): FoundColumn => ({
    column: at,
    lastColumn: at,
    letters: formatColumn(at),
    header: headerText(cells, region.headerRow, at),
    headerRow: region.headerRow,
    key: headerText(cells, region.headerRow, at),
    kinds: [kind],
    chosen: false,
  });
  const columns = [column(region.side, down)];
  if (region.pupilColumn !== undefined) columns.push(column(region.pupilColumn, "pupil"));
  const first = region.across[0] ?? region.side;
  columns.push({
    ...column(first, across),
    lastColumn: region.across[region.across.length - 1] ?? first,
    letters: lettersOf(region.across),
    header: "",
    key: "",
  });
  return columns.sort((a, b) => a.column - b.column);
}

const headingText = (cells: GridCells, row: number, column: number): string => {
  const value = cells.value(row, column);
  return value === null || typeof value === "object" ? "" : String(value).trim();
};

/** Makes one probe of each marked cell of a grid: its sign, its day, correct and opportunities from the mark. */
export function readGrid(
  cells: GridCells,
  region: GridRegion,
  choices: ColumnChoices,
  hidden: boolean,
): ProbeBlock {
  const columns = describeColumns(cells, region);
  const down = region.rows;
  const headers = [headerText(cells, region.headerRow, region.side), "grid"];
  const key = blockKey(cells.sheet, headers);
  const choice = choices.blocks?.[key] ?? {};
  const { order, question } = settleDays(cells, region, choice, choices);
  const records: Probe[] = [];
  const faults: CellFault[] = [];
  const faultedDays = new Set<string>();
  let waiting = 0;
  let pupilGiven = "";
  for (const row of down) {
    if (region.pupilColumn !== undefined)
      pupilGiven = headingText(cells, row, region.pupilColumn) || pupilGiven;
    for (const column of region.across) {
      const cell = readGridCell(cells.value(row, column), cells.format(row, column), region.numbers);
      if (cell.kind === "none") continue;
      if (cell.kind === "fault") {
        faults.push(faultAt(cells.sheet, row, column, cell.complaint));
        continue;
      }
      const at: Place =
        region.layout === "signs down" ? { row: region.headerRow, column } : { row, column: region.side };
      const day = readDayCell(cells.value(at.row, at.column), cells.format(at.row, at.column), order);
      if (day.kind === "fault" || day.kind === "none") {
        const name = `${at.row},${at.column}`;
        if (!faultedDays.has(name)) {
          const complaint =
            day.kind === "fault"
              ? day.complaint
              : { code: "no-date", message: "The date is missing. Type the day of the probe." };
          faults.push(faultAt(cells.sheet, at.row, at.column, complaint));
        }
        faultedDays.add(name);
        continue;
      }
      if (day.kind === "waiting") {
        waiting += 1;
        continue;
      }
      const label =
        region.layout === "signs down"
          ? headingText(cells, row, region.side)
          : headingText(cells, region.headerRow, column);
      records.push({
        pupil: region.pupilsDown ? label : pupilGiven || cells.sheet,
        day: day.day,
        ...(region.pupilsDown ? {} : { sign: label }),
        ...(region.numbers === "marks" && !region.pupilsDown ? { unit: "signs" } : {}),
        ...cell.values,
        source: { sheet: cells.sheet, row: row + 1 },
      });
    }
  }
  const bottom = Math.max(region.headerRow, ...down);
  const area = { top: region.headerRow, left: region.left, bottom, right: region.right };
  return {
    kind: "probes",
    layout: region.layout,
    key,
    sheet: cells.sheet,
    hidden,
    ...(region.table ? { table: region.table.name } : {}),
    area,
    range: formatArea(area),
    headerRow: region.headerRow,
    columns,
    records,
    faults,
    questions: question ? [question] : [],
    waiting,
    leftOut: choice.leftOut ?? false,
  };
}
