import type { Area } from "../domain/area";
import type { CellValue } from "../domain/cell-value";
import { refusal, success, type Result } from "../domain/result";
import { normaliseName } from "../domain/progress/series";
import type { Day } from "../domain/units";
import type { CellInput, Sheet } from "../ports/sheet";
import { appendEntries, type Appended } from "./append-entries";
import { EXAMPLE_PUPIL, exampleEntries } from "./example-entries";
import { EXAMPLE_SETTING, parseKept, type ExampleRows } from "./kept-example";
import type { WorkbookRecords } from "./read-records";
import { holdsStill } from "./undoable-writes";

const isPlain = (value: CellValue): value is string | number | boolean =>
  value !== null && typeof value !== "object";

async function readWritten(sheet: Sheet, { rows }: Appended): Promise<ExampleRows[]> {
  const written: ExampleRows[] = [];
  for (const place of rows) {
    const { values, formulas } = await sheet.read(place.sheet, place.area);
    written.push({
      sheet: place.sheet,
      column: place.area.left,
      rows: values.map((row, down) =>
        row.map((value, across) =>
          isPlain(value) && (formulas[down]?.[across] ?? null) === null ? value : null,
        ),
      ),
    });
  }
  return written;
}

/**
 * Writes the example of one invented pupil into the workbook's tables and keeps in the document what was written. Where
 * a plain range of hers has no room beneath its rows, a table is made for what would stand there.
 *
 * @param asOf - the day that it ends on
 * @returns what was written, or `example-there` where the workbook has a pupil of this name
 */
export async function addExample(
  sheet: Sheet,
  records: WorkbookRecords,
  asOf: Day,
): Promise<Result<Appended>> {
  const { pupils, probes, goals, taught, lessons } = records;
  const isThere = [pupils, probes, goals, taught, lessons].some((rows) =>
    rows.some(({ pupil }) => normaliseName(pupil) === normaliseName(EXAMPLE_PUPIL)),
  );
  if (isThere)
    return refusal(
      "example-there",
      `The example pupil, ${EXAMPLE_PUPIL}, is in this workbook already. Nothing was added.`,
    );
  const added = await appendEntries(sheet, records, exampleEntries(asOf), {}, { elsewhere: true });
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

/** Empties the rows at the end of a plain range; where others stand behind them, or they are parted, they stay. */
async function blankRange(
  sheet: Sheet,
  { sheet: name, rows, column }: ExampleRows,
  used: Area,
): Promise<number> {
  const width = rows[0]?.length ?? 0;
  if (column === undefined || width === 0) return 0;
  const area = { ...used, left: column, right: column + width - 1 };
  const { values, formulas } = await sheet.read(name, area);
  const found = findRows(values, formulas, rows).sort((a, b) => a - b);
  const [first = 0, last = 0] = [found[0], found.at(-1)];
  const isBehindAll = values[last + 1]?.every((value) => value === null) ?? true;
  if (found.length < rows.length || last - first + 1 !== found.length || !isBehindAll) return 0;
  const blank = found.map(() => new Array<CellInput>(width).fill(null));
  await sheet.writeBlock(name, { row: area.top + first, column }, blank);
  return found.length;
}

async function removeFrom(sheet: Sheet, written: ExampleRows): Promise<number> {
  const { sheet: name, rows } = written;
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
  return outline?.used === undefined ? 0 : blankRange(sheet, written, outline.used);
}

/**
 * Takes exactly those rows out that the example wrote, wherever they stand in their tables now. A row that was changed
 * since stays. In a plain range they are emptied where they are its last rows, all of them and unchanged; else they stay.
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
