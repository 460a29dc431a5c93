import { parseArgs } from "node:util";
import { isCellError, type CellValue } from "../../domain/cell-value";
import type { Result } from "../../domain/result";
import type { FunctionAnswer } from "../../spreadsheet/function-library";
import { openFile, type FileOpener } from "./open-file";
import { EXIT, type CommandFiles, type CommandStreams } from "./opened-workbook";

export const CALC_USAGE =
  "cellwright calc '=FORMULA' [--workbook F.xlsx]   or   cellwright calc --lines FILE|- [--workbook F.xlsx]";

/** Works formulas out, seen from the first sheet of a workbook. */
export interface FormulaDesk {
  /** @param formula - without its `=` */
  evaluate(formula: string): Promise<FunctionAnswer>;
}

/** What `calc` works with; handed in by the entry point. */
export interface CalcHost {
  readonly streams: CommandStreams;
  readonly files: CommandFiles;
  /** A desk over an empty workbook, or over the bytes of a file. */
  openDesk(bytes?: Uint8Array): Promise<Result<FormulaDesk>>;
  /** The lines of a file, or of standard input for `-`. */
  readLines(path: string): AsyncIterable<string>;
}

/**
 * `calc`: evaluates one formula, or one a line, and prints one JSON line each. A formula whose value is an error is
 * answered like any other.
 *
 * @returns 0; 1 where a file cannot be read; 2 for wrong usage
 */
export async function runCalc(args: readonly string[], host: CalcHost): Promise<number> {
  const { err } = host.streams;
  const parsed = parseCalcArguments(args);
  if (typeof parsed === "string") {
    err(`${parsed}\nUsage: ${CALC_USAGE}\n`);
    return EXIT.usage;
  }
  const desk = await openDesk(parsed.workbook, host);
  if (!desk.ok) {
    err(`${desk.fault.message}\n`);
    return EXIT.refused;
  }
  if (parsed.formula !== undefined) {
    host.streams.out(`${await answer(parsed.formula, desk.value)}\n`);
    return EXIT.done;
  }
  try {
    for await (const line of host.readLines(parsed.lines ?? "-"))
      host.streams.out(`${await answer(line, desk.value)}\n`);
  } catch (thrown) {
    if (!(thrown instanceof Error && "syscall" in thrown)) throw thrown;
    err("The file of formulas cannot be read: check its path.\n");
    return EXIT.refused;
  }
  return EXIT.done;
}

interface CalcArguments {
  readonly formula: string | undefined;
  readonly lines: string | undefined;
  readonly workbook: string | undefined;
}

/** The arguments, or what is wrong with them. */
function parseCalcArguments(args: readonly string[]): CalcArguments | string {
  let parsed;
  try {
    parsed = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { lines: { type: "string" }, workbook: { type: "string" } },
    });
  } catch (thrown) {
    return thrown instanceof Error ? thrown.message : "An option is unknown.";
  }
  const { lines, workbook } = parsed.values;
  const [formula, ...more] = parsed.positionals;
  if (more.length > 0) return "Give one formula, between quotation marks so that the shell leaves it whole.";
  if (formula === undefined && lines === undefined)
    return "Give a formula, or a file of formulas by --lines.";
  if (formula !== undefined && lines !== undefined) return "Give either a formula or --lines, not both.";
  return { formula, lines, workbook };
}

async function openDesk(path: string | undefined, host: CalcHost): Promise<Result<FormulaDesk>> {
  if (path === undefined) return host.openDesk();
  const opener: FileOpener<FormulaDesk> = { files: host.files, open: (bytes) => host.openDesk(bytes) };
  return openFile(path, opener);
}

async function answer(line: string, desk: FormulaDesk): Promise<string> {
  const formula = line.trim().replace(/^=/, "");
  if (formula === "")
    return JSON.stringify({ error: "#NAME?", message: "There is no formula on this line." });
  return formatAnswer(await desk.evaluate(formula));
}

/** The JSON line of a result: a value, rows of values, or an error with its message. */
export function formatAnswer(result: FunctionAnswer): string {
  if (isCellError(result)) {
    const { error, message } = result;
    return JSON.stringify(message === undefined ? { error } : { error, message });
  }
  return JSON.stringify({ value: isRows(result) ? result.map((row) => row.map(plainCell)) : result });
}

const isRows = (result: FunctionAnswer): result is readonly (readonly CellValue[])[] => Array.isArray(result);

const plainCell = (cell: CellValue): CellValue => (isCellError(cell) ? { error: cell.error } : cell);
