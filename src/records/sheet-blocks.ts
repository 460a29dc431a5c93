import type { SheetOutline } from "../ports/sheet";
import { holds, outlineArea, understandRegion } from "./candidate-block";
import type { CandidateBlock } from "./candidate-block";
import type { ColumnChoices } from "./column-choices";
import { OUTCOME_KINDS } from "./column-kind";
import type { FoundBlock, ListBlock, ProbeBlock } from "./found-block";
import { isGoalBlock, readGoalRows } from "./goal-rows";
import type { GridCells } from "./grid-cells";
import { readGrid } from "./grid-records";
import { findGrid } from "./grid-region";
import type { GridRegion } from "./grid-region";
import { runsOf } from "./header-row";
import { findHeaderRegions } from "./header-region";
import type { HeaderRegion } from "./header-region";
import { settleForm } from "./probe-form";
import { readProbeRows } from "./probe-rows";
import { understandList, readListRows } from "./list-rows";
import type { ListCandidate } from "./list-rows";
import { isTaughtBlock, nameTaughtColumns, readTaughtRows } from "./taught-rows";

/** Whether a block can hold probes: a day, and a column that says how it went. */
function isProbeBlock(block: CandidateBlock): boolean {
  if (!holds(block, "date")) return false;
  const outcomes = OUTCOME_KINDS.filter((kind) => holds(block, kind));
  if (outcomes.length === 0) return false;
  // A list of single miscues has expected and response too, with the place and kind of each.
  const isList = holds(block, "position") || holds(block, "error kind");
  return outcomes.some((kind) => kind !== "response") || (holds(block, "expected") && !isList);
}

function outline(
  block: CandidateBlock,
  lastRow: number,
): Pick<
  ProbeBlock,
  "key" | "sheet" | "hidden" | "table" | "area" | "range" | "headerRow" | "columns" | "leftOut"
> {
  return {
    key: block.key,
    sheet: block.cells.sheet,
    hidden: block.hidden,
    ...(block.region.table ? { table: block.region.table.name } : {}),
    ...outlineArea(block.region, lastRow),
    headerRow: block.region.headerRow,
    columns: block.columns,
    leftOut: block.choice.leftOut ?? false,
  };
}

/** Reads a region as what it is, or undefined where it is none of ours. */
function readRegion(block: CandidateBlock): FoundBlock | undefined {
  if (isProbeBlock(block) && !isGoalBlock(block)) {
    const form = settleForm(block);
    const { lastRow, records, faults, waiting } = readProbeRows(block, form);
    return {
      kind: "probes",
      layout: "rows",
      ...outline(block, lastRow),
      records,
      faults,
      waiting,
      questions: form.questions,
      ...(form.dayOrder ? { dayOrder: form.dayOrder } : {}),
      ...(form.measures.clocks ? { clock: form.measures.clock } : {}),
    };
  }
  if (isGoalBlock(block)) {
    const { lastRow, records, faults, questions } = readGoalRows(block);
    return { kind: "goals", layout: "rows", ...outline(block, lastRow), records, faults, questions };
  }
  if (isTaughtBlock(block)) {
    const { lastRow, records, faults, questions } = readTaughtRows(block);
    const columns = nameTaughtColumns(block.columns);
    return {
      kind: "taught",
      layout: "rows",
      ...outline(block, lastRow),
      columns,
      records,
      faults,
      questions,
    };
  }
  return undefined;
}

function readList({ kind, block }: ListCandidate): ListBlock {
  const { lastRow, ...rows } = readListRows(kind, block);
  return { kind, layout: "rows", ...outline(block, lastRow), ...rows } as ListBlock;
}

const meets = (grid: GridRegion, region: HeaderRegion): boolean =>
  region.left <= grid.right &&
  grid.left <= region.right &&
  region.top <= Math.max(...grid.rows) &&
  grid.headerRow <= region.last &&
  region.headerRow >= grid.headerRow - 1;

/** Grids of a sheet: inside host tables, and free ones, whose heading row is found like any header row. */
function findGrids(cells: GridCells, outlineOfSheet: SheetOutline): GridRegion[] {
  const tables = outlineOfSheet.tables.filter((table) => table.headerRow);
  const grids: GridRegion[] = [];
  for (const table of tables) {
    const { top, left, right, bottom } = table.area;
    const grid = findGrid(cells, top, left, right, bottom - (table.totalsRow ? 1 : 0));
    if (grid) grids.push({ ...grid, table });
  }
  const isFree = (row: number, column: number): boolean =>
    !tables.some(
      ({ area }) => row >= area.top && row <= area.bottom && column >= area.left && column <= area.right,
    ) &&
    !grids.some(
      (grid) =>
        row >= grid.headerRow && row <= Math.max(...grid.rows) && column >= grid.left && column <= grid.right,
    );
  for (let row = cells.area.top; row < cells.area.bottom; row += 1) {
    for (const run of runsOf(cells, row, isFree)) {
      // An empty corner above the signs belongs to the grid.
      let { left } = run;
      while (
        left > cells.area.left &&
        isFree(row, left - 1) &&
        cells.isBlank(row, left - 1) &&
        !cells.isBlank(row + 1, left - 1)
      )
        left -= 1;
      const grid = run.right > left ? findGrid(cells, row, left, run.right, cells.area.bottom) : undefined;
      if (grid) grids.push(grid);
    }
  }
  return grids;
}

/** Everything on one sheet that holds records of ours, from the top down and from left to right. */
export function findBlocks(
  cells: GridCells,
  outlineOfSheet: SheetOutline,
  choices: ColumnChoices,
): FoundBlock[] {
  const { hidden } = outlineOfSheet;
  const grids = findGrids(cells, outlineOfSheet);
  const found: FoundBlock[] = grids.map((grid) => readGrid(cells, grid, choices, hidden));
  for (const region of findHeaderRegions(cells, outlineOfSheet.tables)) {
    if (grids.some((grid) => meets(grid, region))) continue;
    const next = Math.min(
      ...grids
        .filter(
          (grid) =>
            grid.headerRow > region.headerRow && grid.left <= region.right && region.left <= grid.right,
        )
        .map((grid) => grid.headerRow),
      region.last + 1,
    );
    const whole = { ...region, last: next - 1 };
    const list = understandList(cells, whole, choices, hidden);
    const block = list ? readList(list) : readRegion(understandRegion(cells, whole, choices, hidden));
    if (block) found.push(block);
  }
  return found.sort((a, b) => a.area.top - b.area.top || a.area.left - b.area.left);
}
