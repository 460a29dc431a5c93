/**
 * How the shape of a sheet function's arguments becomes the shape of its answer.
 *
 * - {@link mapCells}: cell by cell; a range gives the same shape, single cells are repeated (TRANSLATE, WCPM, AIM, …).
 * - {@link giveRows}: one answer from all cells together, a value or rows that spill (TRIALS, TREND, LINES, …).
 *
 * Both pass error cells on, turn faults into error cells, and refuse a cell that is too long for a sheet. An
 * answer of one cell that is an error is thrown, so that the host shows its message; inside a block it is returned.
 */
import type { Fault, Result } from "../src/domain/result";
import { isErrorCell, toCellError } from "./cell-error";

/** An argument declared `unknown[][]`: rows of cells as the host hands them over. */
export type Block = readonly (readonly unknown[])[];

/** The cells of an argument; a host that hands over null for an empty cell means one blank cell. */
export const asBlock = (block: Block | null | undefined): Block => block ?? [[null]];

/** What a function gives for one cell: its value, or the fault that the cell shows as an error. */
export type Answer = string | number | boolean | Fault;

/** The value of a result, or its fault, as an {@link Answer}. */
export const answerOf = <T extends string | number | boolean>(result: Result<T>): Answer =>
  result.ok ? result.value : result.fault;

/** Whether a cell is empty; hosts write that as null, as undefined (left out), or as an empty text. */
export const isBlank = (cell: unknown): boolean => cell === null || cell === undefined || cell === "";

/**
 * Computes one answer for every cell of arguments of the same shape.
 *
 * A block of one cell is repeated to the shape of the others; any other difference in size is #VALUE!. A cell
 * with a blank among its arguments is "", one with an error is that error (the first of them).
 *
 * @param given - the arguments that take part in the shape, one or more
 * @param compute - receives one cell of each block, in order, none blank or an error
 */
export const mapCells = (
  given: readonly (Block | null | undefined)[],
  compute: (...cells: unknown[]) => Answer,
): unknown[][] => {
  const blocks = given.map(asBlock);
  const shape = commonShape(blocks);
  if (shape === undefined) return finish([[UNEQUAL_SIZES]]);
  const rows: unknown[][] = [];
  for (let row = 0; row < shape.height; row++) {
    const answers: unknown[] = [];
    for (let column = 0; column < shape.width; column++) {
      const cells = blocks.map((block) => (isSingle(block) ? block[0]?.[0] : block[row]?.[column]));
      answers.push(answerForCell(cells, compute));
    }
    rows.push(answers);
  }
  return finish(rows);
};

const answerForCell = (cells: unknown[], compute: (...cells: unknown[]) => Answer): unknown => {
  for (const cell of cells) if (isErrorCell(cell)) return cell;
  for (const cell of cells) if (isBlank(cell)) return "";
  return compute(...cells);
};

/**
 * Gives one answer for all cells of the arguments together; an error cell among them becomes the answer.
 *
 * @param blocks - every argument whose cells are read, lists included
 * @param compute - one value, or rows of values (a fault may stand inside a row), or the fault of the whole
 */
export const giveRows = (
  blocks: readonly (Block | null | undefined)[],
  compute: () => Answer | readonly (readonly Answer[])[],
): unknown[][] => {
  const error = firstError(blocks);
  if (error !== undefined) return [[error]];
  const answer = compute();
  return finish(isRows(answer) ? answer.map((row) => [...row]) : [[answer]]);
};

/** The first error cell of several arguments in reading order. */
export const firstError = (blocks: readonly (Block | null | undefined)[]): unknown =>
  blocks
    .flatMap((block) => block ?? [])
    .flat()
    .find(isErrorCell);

const isRows = (answer: Answer | readonly (readonly Answer[])[]): answer is readonly (readonly Answer[])[] =>
  Array.isArray(answer);

const UNEQUAL_SIZES: Fault = {
  code: "unequal-sizes",
  message: "The ranges differ in size: give ranges of the same number of rows and columns, or single cells.",
};

/** More characters than this cannot stand in one cell. */
const LONGEST_TEXT = 32_767;

const TOO_LONG: Fault = {
  code: "too-long",
  message:
    "The result is longer than the 32,767 characters that one cell can hold: use LINES, which gives it line by line.",
};

const isFault = (value: unknown): value is Fault =>
  typeof value === "object" && value !== null && "code" in value && "message" in value && !isErrorCell(value);

const finish = (rows: unknown[][]): unknown[][] => {
  const finished = rows.map((row) => row.map(finishCell));
  const only = finished.length === 1 && finished[0]?.length === 1 ? finished[0][0] : undefined;
  if (only instanceof CustomFunctions.Error) throw only;
  return finished;
};

const finishCell = (value: unknown): unknown => {
  if (typeof value === "string" && value.length > LONGEST_TEXT) return toCellError(TOO_LONG);
  return isFault(value) ? toCellError(value) : value;
};

const isSingle = (block: Block): boolean => block.length === 1 && block[0]?.length === 1;

const commonShape = (blocks: readonly Block[]): { height: number; width: number } | undefined => {
  let shape = { height: 1, width: 1 };
  let decided = false;
  for (const block of blocks) {
    if (isSingle(block)) continue;
    const own = { height: block.length, width: block[0]?.length ?? 0 };
    if (decided && (own.height !== shape.height || own.width !== shape.width)) return undefined;
    shape = own;
    decided = true;
  }
  return shape;
};
