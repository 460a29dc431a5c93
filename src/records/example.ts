import type { CellValue } from "../domain/cell-value";
import { success, type Result } from "../domain/result";
import type { Day } from "../domain/units";
import type { Sheet } from "../ports/sheet";
import { appendEntries, type Appended } from "./append-entries";
import type { WorkbookRecords } from "./read-records";
import { holdsStill } from "./undoable-writes";

/** The key under which is kept what the example wrote. */
const EXAMPLE_SETTING = "example";

/** Rows of the example as they were written; `null` where a formula stood or nothing. */
interface ExampleRows {
  readonly sheet: string;
  readonly rows: readonly (readonly (string | number | boolean | null)[])[];
}

const isPlain = (value: CellValue): value is string | number | boolean =>
  value !== null && typeof value !== "object";

async function readWritten(sheet: Sheet, { rows }: Appended): Promise<ExampleRows[]> {
  const written: ExampleRows[] = [];
  for (const place of rows) {
    const { values, formulas } = await sheet.read(place.sheet, place.area);
    written.push({
      sheet: place.sheet,
      rows: values.map((row, down) =>
        row.map((value, across) =>
          isPlain(value) && (formulas[down]?.[across] ?? null) === null ? value : null,
        ),
      ),
    });
  }
  return written;
}

/** Reads what was kept; damaged text is none. */
function parseKept(text: string | undefined): readonly ExampleRows[] {
  if (text === undefined || text === "") return [];
  try {
    const kept: unknown = JSON.parse(text);
    return Array.isArray(kept) ? (kept as ExampleRows[]) : [];
  } catch {
    return [];
  }
}

/** Whether the workbook holds an example that can be removed. */
export const holdsExample = async (sheet: Sheet): Promise<boolean> =>
  parseKept(await sheet.readSetting(EXAMPLE_SETTING)).length > 0;

/**
 * Writes the example of one invented pupil into the workbook's tables and keeps in the document what was written.
 *
 * @param asOf - the day that it ends on
 */
export async function addExample(
  sheet: Sheet,
  records: WorkbookRecords,
  asOf: Day,
): Promise<Result<Appended>> {
  // Its texts come when they are first wanted: few workbooks take an example.
  const { exampleEntries } = await import(/* webpackChunkName: "example" */ "./example-entries");
  const added = await appendEntries(sheet, records, exampleEntries(asOf));
  if (!added.ok) return added;
  await sheet.keepSetting(EXAMPLE_SETTING, JSON.stringify(await readWritten(sheet, added.value)));
  return success(added.value);
}

/** What became of the example. */
export interface RemovedExample {
  readonly removed: number;
  /** rows that were changed since and are hers now: they stay */
  readonly kept: number;
}

/** Rows of a table that hold exactly these, each row of the table for one of them. */
function findRows(
  values: readonly (readonly CellValue[])[],
  formulas: readonly (readonly (string | null)[])[],
  rows: ExampleRows["rows"],
): number[] {
  const found: number[] = [];
  for (const row of rows) {
    const at = values.findIndex(
      (cells, place) =>
        !found.includes(place) &&
        holdsStill([cells], [row]) &&
        cells.every(
          (cell, column) => row[column] !== null || cell === null || formulas[place]?.[column] !== null,
        ),
    );
    if (at >= 0) found.push(at);
  }
  return found;
}

async function removeFrom(sheet: Sheet, { sheet: name, rows }: ExampleRows): Promise<number> {
  const outline = (await sheet.outline()).find((each) => each.name === name);
  const width = rows[0]?.length ?? 0;
  for (const table of outline?.tables ?? []) {
    if (table.area.right - table.area.left + 1 !== width) continue;
    const { values, formulas } = await sheet.read(name, table.area);
    const found = findRows(values, formulas, rows);
    if (found.length === 0) continue;
    await sheet.removeRows(
      table.name,
      found.map((row) => table.area.top + row),
    );
    return found.length;
  }
  return 0;
}

/**
 * Takes exactly those rows out that the example wrote, wherever they stand in their tables now. A row that was changed
 * since stays, and so do tables of her own that are no table of the spreadsheet's kind.
 */
export async function removeExample(sheet: Sheet): Promise<RemovedExample> {
  const kept = parseKept(await sheet.readSetting(EXAMPLE_SETTING));
  let removed = 0;
  const remove = async (): Promise<void> => {
    for (const rows of kept) removed += await removeFrom(sheet, rows);
  };
  if (sheet.group) await sheet.group(remove);
  else await remove();
  await sheet.keepSetting(EXAMPLE_SETTING, "");
  return { removed, kept: kept.reduce((sum, { rows }) => sum + rows.length, 0) - removed };
}
