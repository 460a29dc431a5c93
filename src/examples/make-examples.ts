// npm run examples: writes the example workbooks, calculated by the project's own engine and saved by patching.
import { writeFile } from "node:fs/promises";
import path from "node:path";
import { nodeFunctionLibrary } from "../adapters/custom-functions/node-bundle";
import { nodeTranslatorLibrary } from "../adapters/liblouis/node-engine";
import { readWorkbook } from "../adapters/xlsx/read-workbook";
import { saveWorkbook } from "../adapters/xlsx/save-workbook";
import { Calculation } from "../spreadsheet/calculation";
import type { FunctionLibrary } from "../spreadsheet/function-library";
import { OpenWorkbook } from "../spreadsheet/open-workbook";
import { dayOf } from "./calendar";
import { makeExampleWorkbook, SPILL } from "./example-workbook";
import { makePublishedCase } from "./published-case";

/** Fills in every formula's value. @throws where our own reader or writer refuses our own file */
async function calculate(
  bytes: Uint8Array,
  library: FunctionLibrary,
  spill?: typeof SPILL,
): Promise<Uint8Array> {
  const read = readWorkbook(bytes, { functions: library.names });
  if (!read.ok) throw new Error(read.fault.message);
  const workbook = new OpenWorkbook(read.value.contents);
  // No formula of the examples asks for today; the clock stands still so that the bytes do not depend on it.
  const calculation = new Calculation(workbook, { library, now: () => dayOf(2026, 11, 25) });
  if (spill !== undefined) workbook.setCell(spill.sheet, spill.row, spill.column, { formula: spill.formula });
  await calculation.idle();
  const saved = saveWorkbook(bytes, workbook, workbook.difference(), { functions: library.names });
  if (!saved.ok) throw new Error(saved.fault.message);
  return saved.value;
}

/**
 * Makes both example workbooks.
 *
 * @param build - the folder of the build: `functions.js`, `functions.json`, `liblouis/`
 * @returns the bytes of each file by its name
 */
export async function makeExamples(build: string): Promise<ReadonlyMap<string, Uint8Array>> {
  const translators = nodeTranslatorLibrary({ directory: path.join(build, "liblouis") });
  const library = await nodeFunctionLibrary({ directory: build, translators });
  return new Map([
    ["example.xlsx", await calculate(await makeExampleWorkbook(), library, SPILL)],
    ["published-case.xlsx", await calculate(await makePublishedCase(), library)],
  ]);
}

/** Writes them into a folder. */
export async function writeExamples(build: string, folder: string): Promise<void> {
  for (const [name, bytes] of await makeExamples(build)) await writeFile(path.join(folder, name), bytes);
}
