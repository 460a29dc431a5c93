/** How the cells of a sheet function's arguments are read as numbers, texts, pairs and lists. */
import { refusal, success, type Fault, type Result } from "../src/domain/result";
import { asBlock, isBlank, type Block } from "./shape";

/** The text that a cell shows: numbers and truth values as a sheet writes them. */
export const textOf = (cell: unknown): string => {
  if (isBlank(cell)) return "";
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  return String(cell);
};

/**
 * The number in a cell.
 *
 * @param name - what the argument is called to the teacher, such as `seconds`
 * @returns the number, or `not-a-number` (text, even text of digits; TRUE and FALSE)
 */
export const numberOf = (cell: unknown, name: string): Result<number> =>
  typeof cell === "number" && Number.isFinite(cell)
    ? success(cell)
    : refusal(
        "not-a-number",
        `${name} is to be a number, but the cell holds ${quoted(cell)}: type a number there.`,
      );

/**
 * The whole number in a cell, counted in things.
 *
 * @param name - what the argument is called to the teacher, such as `n`
 * @param otherwise - what a missing or blank argument stands for
 * @param most - the largest number that makes sense
 * @returns the number, or `not-a-number`, or `impossible-number` (below 1, above `most`, or a fraction)
 */
export const countOf = <T>(
  cell: unknown,
  name: string,
  otherwise: T,
  most = Infinity,
): Result<number | T> => {
  if (isBlank(cell)) return success(otherwise);
  const number = numberOf(cell, name);
  if (!number.ok || (Number.isInteger(number.value) && number.value >= 1 && number.value <= most))
    return number;
  const range = most === Infinity ? "from 1" : `from 1 to ${most.toLocaleString("en-US")}`;
  return refusal("impossible-number", `${name} is to be a whole number ${range}, not ${number.value}.`);
};

/**
 * All numbers of one cell of each argument, or the first fault.
 *
 * @param names - the arguments' names in the order of the cells
 */
export const numbersOf = (cells: readonly unknown[], names: readonly string[]): Result<number[]> => {
  const numbers: number[] = [];
  for (const [index, cell] of cells.entries()) {
    const number = numberOf(cell, names[index] ?? "the argument");
    if (!number.ok) return number;
    numbers.push(number.value);
  }
  return success(numbers);
};

/**
 * Two or more ranges read side by side as one series: reading order, one row of numbers for each place, places
 * with a blank in any of them left out. Error cells are for `giveRows` to pass on first.
 *
 * @param names - what each range is called to the teacher
 * @returns rows of numbers, or `unequal-lengths` / `not-a-number`
 */
export const readSeries = (
  blocks: readonly (Block | null | undefined)[],
  names: readonly string[],
): Result<number[][]> => {
  const columns = blocks.map((block) => asBlock(block).flat());
  const length = columns[0]?.length ?? 0;
  if (columns.some((column) => column.length !== length))
    return { ok: false, fault: unequalLengths(names, columns) };
  const rows: number[][] = [];
  for (let place = 0; place < length; place++) {
    const cells = columns.map((column) => column[place]);
    if (cells.some(isBlank)) continue;
    const numbers = numbersOf(cells, names);
    if (!numbers.ok) return numbers;
    rows.push(numbers.value);
  }
  return success(rows);
};

const unequalLengths = (names: readonly string[], columns: readonly unknown[][]): Fault => ({
  code: "unequal-lengths",
  message: `${names.map((name, index) => `${name} has ${columns[index]?.length ?? 0} cells`).join(", ")}: give ranges of the same length.`,
});

/** The texts of a range pooled into one, a line a cell, in reading order; blanks left out. */
export const pooledText = (block: Block | null | undefined): string =>
  asBlock(block)
    .flat()
    .filter((cell) => !isBlank(cell))
    .map(textOf)
    .join("\n");

const quoted = (cell: unknown): string => {
  const text = textOf(cell);
  return `“${text.length > 40 ? `${text.slice(0, 40)}…` : text}”`;
};
