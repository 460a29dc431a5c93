import { refusal, success } from "../domain/result";
import type { Result } from "../domain/result";
import type { SheetOutline } from "../ports/sheet";
import { tidyText } from "./cell-text";
import type { ColumnKind } from "./column-kind";
import { countsAnything } from "./column-roles";
import { columnOf } from "./found-block";
import type { FoundBlock, FoundColumn, ProbeBlock } from "./found-block";
import type { ProbeEntry } from "./probe-entry";

const sameName = (a: string, b: string): boolean => tidyText(a).toLowerCase() === tidyText(b).toLowerCase();

/** The column that takes a key: Attempted takes words and opportunities where a Unit column tells them apart. */
export function columnFor(block: FoundBlock, kind: ColumnKind): FoundColumn | undefined {
  const own = columnOf(block.columns, kind);
  if (own) return own;
  if (kind === "words" || kind === "opportunities") {
    const other = columnOf(block.columns, kind === "words" ? "opportunities" : "words");
    return other && columnOf(block.columns, "unit") && countsAnything(other.header) ? other : undefined;
  }
  if (kind === "seconds") return columnOf(block.columns, "minutes");
  return kind === "minutes" ? columnOf(block.columns, "seconds") : undefined;
}

/** Keys of an entry that a block has no column for; its sheet's name stands for the pupil where no column does. */
export function missingKeys(block: ProbeBlock, entry: ProbeEntry): ColumnKind[] {
  return entry.keys.filter((kind) => {
    if (columnFor(block, kind)) return false;
    if (kind === "pupil") return !sameName(block.sheet, entry.texts.get("pupil") ?? "");
    // 45/50 in one column takes both.
    return !(
      kind === "opportunities" &&
      entry.keys.includes("correct") &&
      columnOf(block.columns, "correct")
    );
  });
}

/**
 * A block named for a message on standard error: by its table's name, or by its sheet's place, because a sheet may be
 * called after its pupil.
 */
export function nameForMessage(block: FoundBlock, outlines: readonly SheetOutline[]): string {
  if (block.table !== undefined && columnOf(block.columns, "pupil"))
    return `table ${block.table} (${block.range})`;
  const place = outlines.findIndex(({ name }) => name === block.sheet) + 1;
  return `sheet ${place} (${block.range})`;
}

const isRows = (block: FoundBlock): block is ProbeBlock =>
  block.kind === "probes" && block.layout === "rows" && !block.leftOut;

/**
 * Chooses the table that takes an entry: the one named (a table, or a sheet), else the only one that holds the given
 * keys; refuses with a list otherwise. Of several tables on a sheet named, only one may hold the keys.
 */
export function chooseTable(
  blocks: readonly FoundBlock[],
  outlines: readonly SheetOutline[],
  entry: ProbeEntry,
  name: string | undefined,
): Result<ProbeBlock> {
  const tables = blocks.filter(isRows);
  const listed = (list: readonly ProbeBlock[]): string =>
    list.map((block) => nameForMessage(block, outlines)).join(", ");
  if (tables.length === 0)
    return refusal("no-table", "The workbook has no table of probes with one row a probe.");
  const named =
    name === undefined
      ? tables
      : tables.filter(
          (block) =>
            (block.table !== undefined && sameName(block.table, name)) || sameName(block.sheet, name),
        );
  if (named.length === 0) {
    return refusal(
      "no-such-table",
      `No table of probes has this name. There are: ${listed(tables)}. Give the name of the table or of its sheet.`,
    );
  }
  const holding = named.filter((block) => missingKeys(block, entry).length === 0);
  const [only, ...others] = holding;
  if (only && others.length === 0) return success(only);
  if (only)
    return refusal(
      "several-tables",
      `Several tables hold these columns: ${listed(holding)}. Choose one with --table NAME.`,
    );
  const lacking = named.map(
    (block) => `${nameForMessage(block, outlines)} has no column for ${missingKeys(block, entry).join(", ")}`,
  );
  return refusal("no-columns", `No table holds all the given columns: ${lacking.join("; ")}.`);
}
