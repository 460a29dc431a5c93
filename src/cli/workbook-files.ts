import path from "node:path";
import { realpathSync } from "node:fs";
import { nodeFunctionLibrary } from "../adapters/custom-functions/node-bundle";
import { EmbeddedSheet } from "../adapters/embedded/embedded-sheet";
import { nodeTranslatorLibrary } from "../adapters/liblouis/node-engine";
import { nodeWordBank } from "../adapters/word-bank/node-word-bank";
import { newWorkbook } from "../adapters/xlsx/new-workbook";
import { readWorkbook } from "../adapters/xlsx/read-workbook";
import { saveWorkbook } from "../adapters/xlsx/save-workbook";
import { success, type Result } from "../domain/result";
import { Calculation, serialOfClock } from "../spreadsheet/calculation";
import type { FunctionLibrary } from "../spreadsheet/function-library";
import { OpenWorkbook } from "../spreadsheet/open-workbook";
import type { FormulaDesk } from "./commands/calc";
import type { OpenedWorkbook } from "./commands/opened-workbook";

/** Opens workbooks with the project's own engine and the sheet functions of the build. */
export class WorkbookFiles {
  readonly #directory: string;
  #library: Promise<FunctionLibrary> | undefined;

  /** @param directory - the build: `functions.js`, `functions.json`, `liblouis/` and `word-bank.bin` */
  constructor(directory: string) {
    this.#directory = directory;
  }

  /** A workbook behind the Sheet port, with the way to save it. */
  readonly open = async (bytes: Uint8Array): Promise<Result<OpenedWorkbook>> => {
    const opened = await this.#calculate(bytes);
    if (!opened.ok) return opened;
    const { workbook, calculation, library } = opened.value;
    return success({
      sheet: new EmbeddedSheet(workbook, calculation),
      insertRow: (sheet, row) => workbook.insertRows(sheet, row, 1),
      save: async () => {
        await calculation.idle();
        return saveWorkbook(bytes, workbook, workbook.difference(), { functions: library.names });
      },
    });
  };

  /** Evaluates formulas, seen from the first cell of a workbook's first sheet. */
  readonly openDesk = async (bytes: Uint8Array = newWorkbook()): Promise<Result<FormulaDesk>> => {
    const opened = await this.#calculate(bytes);
    if (!opened.ok) return opened;
    const { workbook, calculation } = opened.value;
    await calculation.idle();
    const sheet = workbook.sheets.find(({ kind }) => kind === "cells")?.name ?? "";
    return success({ evaluate: (formula) => calculation.evaluate(formula, { sheet, row: 0, column: 0 }) });
  };

  async #calculate(
    bytes: Uint8Array,
  ): Promise<Result<{ workbook: OpenWorkbook; calculation: Calculation; library: FunctionLibrary }>> {
    this.#library ??= nodeFunctionLibrary({
      directory: this.#directory,
      translators: nodeTranslatorLibrary({ directory: path.join(this.#directory, "liblouis") }),
      wordBank: nodeWordBank(this.#directory),
    });
    const library = await this.#library;
    const read = readWorkbook(bytes, { functions: library.names });
    if (!read.ok) return read;
    const workbook = new OpenWorkbook(read.value.contents);
    const calculation = new Calculation(workbook, { library, now: () => serialOfClock(new Date()) });
    return success({ workbook, calculation, library });
  }
}

/** The folder of the running program: a link to it, as npm makes one, is followed. */
export const programDirectory = (): string => path.dirname(realpathSync(process.argv[1] ?? "."));
