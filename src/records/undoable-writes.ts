import type { Area } from "../domain/area";
import { HostError } from "../ports/sheet";
import type { CellInput, Sheet } from "../ports/sheet";

/** Something that was written: rows, appended to a table where it is named, or a sheet that was made. */
export interface Written {
  readonly kind: "rows" | "sheet";
  readonly sheet: string;
  readonly area: Area;
  readonly table?: string;
  readonly rows: readonly (readonly CellInput[])[];
}

const isTyped = (input: CellInput): input is string | number | boolean =>
  (typeof input === "string" && input !== "") || typeof input === "number" || typeof input === "boolean";

/** Whether the cells still hold what was typed into them. */
export const holdsStill = (
  values: readonly (readonly unknown[])[],
  rows: readonly (readonly CellInput[])[],
): boolean =>
  rows.every((row, down) =>
    row.every((input, across) => !isTyped(input) || values[down]?.[across] === input),
  );

async function takeBack(sheet: Sheet, { kind, sheet: name, area, table, rows }: Written): Promise<void> {
  if (kind === "sheet") {
    await sheet.removeSheet?.(name);
    return;
  }
  const { values } = await sheet.read(name, area);
  if (!holdsStill(values, rows))
    throw new HostError("The rows that were written have changed since. Delete them by hand.");
  if (table !== undefined) {
    await sheet.removeRows(
      table,
      rows.map((_, down) => area.top + down),
    );
  } else {
    const blank = rows.map((row) => row.map((input) => (isTyped(input) ? null : undefined)));
    await sheet.writeBlock(name, { row: area.top, column: area.left }, blank);
  }
}

/** Takes writes back one by one, the last first: for a host that has no undo of its own. */
export async function takeBackWrites(sheet: Sheet, written: readonly Written[]): Promise<void> {
  const sheets = new Set(written.filter(({ kind }) => kind === "sheet").map((one) => one.sheet));
  for (const one of [...written].reverse()) {
    // Rows on a sheet that goes, go with it.
    if (one.kind === "sheet" || !sheets.has(one.sheet)) await takeBack(sheet, one);
  }
}

/**
 * Does several writes as one.
 *
 * @param written - filled by the writes, for a host without undo
 * @returns the way to take all of them back
 */
export async function undoable(
  sheet: Sheet,
  writes: () => Promise<void>,
  written: readonly Written[],
): Promise<() => Promise<void>> {
  if (!sheet.group || !sheet.undo) {
    await writes();
    return () => takeBackWrites(sheet, written);
  }
  await sheet.group(writes);
  return () => sheet.undo?.() ?? Promise.resolve();
}
