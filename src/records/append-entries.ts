import type { Area } from "../domain/area";
import { normaliseName } from "../domain/progress/series";
import { success, type Result } from "../domain/result";
import { HostError } from "../ports/sheet";
import type { CellInput, Sheet, SheetOutline } from "../ports/sheet";
import { holds } from "./candidate-block";
import type { ColumnChoices } from "./column-choices";
import type { AnyKind } from "./column-kind";
import { missingKeys } from "./entry-table";
import type { FoundBlock } from "./found-block";
import { gridCells } from "./grid-cells";
import type { GridCells } from "./grid-cells";
import { entryOfProbe, listValues } from "./new-entries";
import type { NewEntries } from "./new-entries";
import { makeRows } from "./new-rows";
import { isPreparedRow } from "./prepared-rows";
import { readRecords } from "./read-records";
import type { WorkbookRecords } from "./read-records";
import { setUpTables } from "./set-up";
import { TABLE_ORDER } from "./table-plans";
import { takeBackWrites, undoable } from "./undoable-writes";
import type { Written } from "./undoable-writes";

/** Where the entries of one kind were written. */
export interface AppendedRows {
  readonly kind: FoundBlock["kind"];
  readonly sheet: string;
  readonly area: Area;
  /** the table was missing and was set up for them */
  readonly setUp: boolean;
  /** what was given and the table has no column for */
  readonly leftOut: readonly AnyKind[];
}

export interface Appended {
  readonly rows: readonly AppendedRows[];
  /** takes everything back that was written here, tables that were set up included */
  undo(): Promise<void>;
}

/** How entries are written. */
export interface AppendManner {
  /** where a plain range has no room beneath its rows, another table is taken or made: for what is not hers anyway */
  readonly elsewhere?: boolean;
}

/** Rows beneath the data that are looked at for prepared ones, at least. */
const LOOKED_BENEATH = 50;

const pupilOf = (entry: object): string | undefined =>
  "pupil" in entry && typeof entry.pupil === "string" ? entry.pupil : undefined;

/** Whether a block can take these entries: a column of pupils, or a sheet of this pupil's own. */
function takes(block: FoundBlock, entries: readonly object[]): boolean {
  if (block.leftOut || block.layout !== "rows" || block.hidden) return false;
  if (block.questions.some(({ kind }) => kind === "day order")) return false;
  if (holds(block, "pupil")) return true;
  return entries.every((entry) => {
    const pupil = pupilOf(entry);
    return pupil === undefined || normaliseName(pupil) === normaliseName(block.sheet);
  });
}

const missingIn = (block: FoundBlock, entries: readonly object[]): number =>
  entries.reduce<number>((sum, entry) => {
    if (block.kind === "probes") return sum + missingKeys(block, entryOfProbe(entry as never)).length;
    const values = listValues(block.kind, entry);
    return sum + values.filter(({ kind }) => kind !== "pupil" && !holds(block, kind)).length;
  }, 0);

/** How many of a block's records are about the pupils of the entries: her table for them is the likeliest. */
const familiarIn = (block: FoundBlock, entries: readonly object[]): number => {
  const pupils = new Set(entries.map((entry) => normaliseName(pupilOf(entry))));
  return block.records.filter((record) => pupils.has(normaliseName(pupilOf(record)))).length;
};

/** The tables that take the entries: most of what they say has a column, then most about the same pupils. */
function rankBlocks(
  blocks: readonly FoundBlock[],
  kind: FoundBlock["kind"],
  entries: readonly object[],
): readonly FoundBlock[] {
  return blocks
    .filter((block) => block.kind === kind && takes(block, entries))
    .map((block) => ({ block, missing: missingIn(block, entries), familiar: familiarIn(block, entries) }))
    .sort((a, b) => a.missing - b.missing || b.familiar - a.familiar)
    .map(({ block }) => block);
}

/** Whether rows can be added to a block: beneath a plain range nothing may stand but rows prepared for data. */
async function hasRoom(sheet: Sheet, block: FoundBlock, rows: number): Promise<boolean> {
  if (block.table !== undefined) return true;
  const cells = await readBlock(sheet, block, rows);
  const outlines = await sheet.outline();
  return Array.from({ length: rows }, (_, down) => block.area.bottom + 1 + down).every(
    (row) =>
      isPreparedRow(block, cells, outlines, row) ||
      block.columns.every(({ column }) => cells.isBlank(row, column) && cells.formula(row, column) === null),
  );
}

async function chooseBlock(
  sheet: Sheet,
  blocks: readonly FoundBlock[],
  kind: FoundBlock["kind"],
  entries: readonly object[],
  { elsewhere = false }: AppendManner,
): Promise<FoundBlock | undefined> {
  const ranked = rankBlocks(blocks, kind, entries);
  if (!elsewhere) return ranked[0];
  for (const block of ranked) if (await hasRoom(sheet, block, entries.length)) return block;
  return undefined;
}

async function readBlock(sheet: Sheet, block: FoundBlock, rows: number): Promise<GridCells> {
  const beneath = Math.max(LOOKED_BENEATH, rows);
  return gridCells(await sheet.read(block.sheet, { ...block.area, bottom: block.area.bottom + beneath }));
}

/** Puts rows behind a block's data: into rows prepared for them, and the rest behind these. */
async function placeRows(
  sheet: Sheet,
  block: FoundBlock,
  cells: GridCells,
  outlines: readonly SheetOutline[],
  rows: readonly (readonly CellInput[])[],
): Promise<Written[]> {
  const first = block.area.bottom + 1;
  let prepared = 0;
  while (prepared < rows.length && isPreparedRow(block, cells, outlines, first + prepared)) prepared += 1;
  const written: Written[] = [];
  const note = (area: Area, part: readonly (readonly CellInput[])[], appended: boolean): void => {
    written.push({
      kind: "rows",
      sheet: block.sheet,
      ...(appended && block.table !== undefined ? { table: block.table } : {}),
      area,
      rows: part,
    });
  };
  if (prepared > 0) {
    const part = rows.slice(0, prepared);
    note(await sheet.writeBlock(block.sheet, { row: first, column: block.area.left }, part), part, false);
  }
  const rest = rows.slice(prepared);
  if (rest.length > 0) {
    const target =
      block.table === undefined
        ? { sheet: block.sheet, area: { ...block.area, bottom: block.area.bottom + prepared } }
        : { table: block.table };
    note((await sheet.appendRows(target, rest)).area, rest, true);
  }
  return written;
}

/** A row that cannot be made ends the writes; its fault is the answer. */
class RefusedRow extends Error {
  constructor(readonly refusal: { readonly ok: false; readonly fault: { code: string; message: string } }) {
    super(refusal.fault.message);
  }
}

/**
 * Writes new records into the teacher's own tables, in her columns and her manner; a table that is missing is set up
 * first. All of it is one step: where a part is refused nothing stays, and one undo takes all back. Texts stay texts,
 * whatever they begin with.
 *
 * @param records - the workbook as last read
 * @param choices - as the records were read with
 * @returns where everything stands, or the fault of an entry that cannot be written
 * @throws {HostError} where the host refuses: a protected sheet, no room beneath a plain table
 */
export async function appendEntries(
  sheet: Sheet,
  records: WorkbookRecords,
  entries: NewEntries,
  choices: ColumnChoices = {},
  manner: AppendManner = {},
): Promise<Result<Appended>> {
  const places: AppendedRows[] = [];
  const written: Written[] = [];
  let { blocks } = records;
  const write = async (): Promise<void> => {
    for (const kind of TABLE_ORDER) {
      const given: readonly object[] = entries[kind] ?? [];
      if (given.length === 0) continue;
      let block = await chooseBlock(sheet, blocks, kind, given, manner);
      const isMissing = block === undefined;
      if (isMissing) {
        written.push(...(await setUpTables(sheet, [kind])));
        ({ blocks } = await readRecords(sheet, choices));
        block = await chooseBlock(sheet, blocks, kind, given, manner);
      }
      if (!block)
        throw new HostError(
          "The new table could not be found again. Check whether a table of yours was left out, or has an open question of its dates.",
        );
      const cells = await readBlock(sheet, block, given.length);
      const made = makeRows(block, cells, entries);
      if (!made.ok) throw new RefusedRow(made);
      const parts = await placeRows(sheet, block, cells, await sheet.outline(), made.value.rows);
      written.push(...parts);
      const area = {
        ...block.area,
        top: parts[0]?.area.top ?? block.area.bottom,
        bottom: parts.at(-1)?.area.bottom ?? block.area.bottom,
      };
      places.push({ kind, sheet: block.sheet, area, setUp: isMissing, leftOut: made.value.leftOut });
    }
  };
  try {
    const undo = await undoable(sheet, write, written);
    return success({ rows: places, undo });
  } catch (error) {
    if (!sheet.group) await takeBackWrites(sheet, written);
    if (error instanceof RefusedRow) return error.refusal;
    throw error;
  }
}
