import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { unzipSync } from "fflate";
import { readWorkbook } from "../../../src/adapters/xlsx/read-workbook";
import { saveWorkbook } from "../../../src/adapters/xlsx/save-workbook";
import type { Result } from "../../../src/domain/result";
import { parseCell } from "../../../src/spreadsheet/address";
import { OpenWorkbook } from "../../../src/spreadsheet/open-workbook";
import { cellKey, type Cell, type WorkbookContents, type Worksheet } from "../../../src/spreadsheet/workbook";

export const OPTIONS = { functions: ["BRAILLE.TRANSLATE", "BRAILLE.CELLS", "BRAILLE.WCPM"] };

/** The bytes of a file beside the tests. */
export const fixture = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(fileURLToPath(new URL(`../../fixtures/xlsx/${name}`, import.meta.url))));

/** The value of a result that must be one. */
export const valueOf = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(`${result.fault.code}: ${result.fault.message}`);
  return result.value;
};

export const contentsOf = (bytes: Uint8Array): WorkbookContents =>
  valueOf(readWorkbook(bytes, OPTIONS)).contents;

/** The unpacked parts of a file, by name and in order, read by another program's code than the adapter's. */
export const partsOf = (bytes: Uint8Array): Map<string, string> =>
  new Map(
    Object.entries(unzipSync(bytes)).map(([name, content]) => [
      name,
      new TextDecoder("utf-8", { ignoreBOM: true }).decode(content),
    ]),
  );

/** Opens, edits and saves a file. */
export const saveAfter = (bytes: Uint8Array, edit: (workbook: OpenWorkbook) => void): Uint8Array => {
  const workbook = new OpenWorkbook(contentsOf(bytes));
  edit(workbook);
  return valueOf(saveWorkbook(bytes, workbook, workbook.difference(), OPTIONS));
};

/** Names of parts that differ, are new, or are gone. */
export const changedParts = (before: Uint8Array, after: Uint8Array): string[] => {
  const old = partsOf(before);
  const now = partsOf(after);
  return [...new Set([...old.keys(), ...now.keys()])]
    .filter((name) => old.get(name) !== now.get(name))
    .sort();
};

export const sheetOf = (contents: WorkbookContents, name: string): Worksheet => {
  const sheet = contents.sheets.find((candidate) => candidate.name === name);
  if (!sheet) throw new Error(`no sheet ${name}`);
  return sheet;
};

/** The cell at an address such as `B7`. */
export const cellAt = (contents: WorkbookContents, sheet: string, address: string): Cell | undefined => {
  const place = parseCell(address);
  return place && sheetOf(contents, sheet).cells.get(cellKey(place.row, place.column));
};
