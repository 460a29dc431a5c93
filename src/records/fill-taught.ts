import type { TaughtSign } from "../domain/contraction/taught-sign";
import { refusal, success, type Result } from "../domain/result";
import type { Day } from "../domain/units";
import { HostError } from "../ports/sheet";
import type { CellInput, Sheet } from "../ports/sheet";
import { styleDay } from "./column-style";
import { isCalculated, styleOf } from "./entry-row";
import { columnOf, type FoundBlock } from "./found-block";
import { gridCells } from "./grid-cells";
import { undoable } from "./undoable-writes";

/** What a row of taught signs is to say; a day that is missing empties its cell. */
export interface TaughtFilling {
  readonly reading: string;
  readonly writing: string;
  readonly checkAgain?: Day;
}

/** The columns that the tool fills. */
const FILLED = ["reading", "writing", "checkAgain"] as const;

/** What was filled in. */
export interface FilledTaught {
  readonly rows: number;
  readonly sheets: readonly string[];
  /** puts back what stood there before */
  undo(): Promise<void>;
}

interface Patch {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly written: readonly CellInput[];
  readonly before: readonly CellInput[];
}

/**
 * Fills the columns Reading, Writing and Check again of the tables of taught signs, as far as they have them. Other rows,
 * other columns and cells with formulas stay as they are.
 *
 * @param fill - what to write for a row, or undefined to leave it
 * @returns what was filled, or `no-columns` where no table has such a column, or `nothing-to-give` where no row is meant
 * @throws {HostError} where the host refuses: a protected sheet
 */
export async function fillTaught(
  sheet: Sheet,
  blocks: readonly FoundBlock[],
  fill: (row: TaughtSign) => TaughtFilling | undefined,
): Promise<Result<FilledTaught>> {
  const tables = blocks.filter((block) => block.kind === "taught" && !block.leftOut && !block.hidden);
  const open = tables.filter(({ columns }) => FILLED.some((kind) => columnOf(columns, kind)));
  if (open.length === 0) {
    return refusal(
      "no-columns",
      tables.length === 0
        ? "There is no table of taught signs yet. Mark a sign as taught, which makes one."
        : "Your table of taught signs has no column for it. Type the headings Reading, Writing and Check again beside the others, then try once more.",
    );
  }
  const patches: Patch[] = [];
  const filled = new Set<string>();
  for (const block of open)
    for (const patch of await planPatches(sheet, block, fill)) {
      patches.push(patch);
      patch.written.forEach((input, down) => {
        if (input !== undefined) filled.add(`${patch.sheet}\n${patch.row + down}`);
      });
    }
  if (filled.size === 0)
    return refusal("nothing-to-give", "No row of the table of taught signs is of this pupil.");
  const write = async (): Promise<void> => {
    for (const { sheet: name, row, column, written } of patches)
      await sheet.writeBlock(
        name,
        { row, column },
        written.map((input) => [input]),
      );
  };
  const takeBack = await undoable(sheet, write, []);
  return success({
    rows: filled.size,
    sheets: [...new Set(patches.map((patch) => patch.sheet))],
    undo: sheet.group && sheet.undo ? takeBack : () => putBack(sheet, patches),
  });
}

/** One column of a block at a time: what is to be written from its first row to its last, and what stood there. */
const planPatches = async (
  sheet: Sheet,
  block: FoundBlock,
  fill: (row: TaughtSign) => TaughtFilling | undefined,
): Promise<readonly Patch[]> => {
  if (block.kind !== "taught") return [];
  const cells = gridCells(await sheet.read(block.sheet, block.area));
  const fillings = block.records.flatMap((record) => {
    const filling = fill(record);
    return filling === undefined ? [] : [{ row: record.source.row - 1, filling }];
  });
  if (fillings.length === 0) return [];
  const rows = fillings.map(({ row }) => row);
  const [top, bottom] = [Math.min(...rows), Math.max(...rows)];
  return FILLED.flatMap((kind) => {
    const column = columnOf(block.columns, kind);
    if (column === undefined || isCalculated(block, cells, column)) return [];
    const style = styleOf(block, cells, column);
    const written = new Array<CellInput>(bottom - top + 1).fill(undefined);
    const before = new Array<CellInput>(bottom - top + 1).fill(undefined);
    for (const { row, filling } of fillings) {
      if (cells.formula(row, column.column) !== null) continue;
      const value = filling[kind];
      written[row - top] = typeof value === "number" ? styleDay(style, value, undefined) : (value ?? null);
      before[row - top] = cells.value(row, column.column);
    }
    return [{ sheet: block.sheet, row: top, column: column.column, written, before }];
  });
};

const putBack = async (sheet: Sheet, patches: readonly Patch[]): Promise<void> => {
  for (const { sheet: name, row, column, written } of patches) {
    const area = { top: row, bottom: row + written.length - 1, left: column, right: column };
    const { values } = await sheet.read(name, area);
    if (written.some((input, down) => input !== undefined && (values[down]?.[0] ?? null) !== input))
      throw new HostError("The states that were written have changed since. Change them by hand.");
  }
  for (const { sheet: name, row, column, before } of patches)
    await sheet.writeBlock(
      name,
      { row, column },
      before.map((input) => [input]),
    );
};
