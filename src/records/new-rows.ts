import type { Probe } from "../domain/probe/probe";
import type { Result } from "../domain/result";
import { success } from "../domain/result";
import type { CellInput } from "../ports/sheet";
import type { AnyKind, ColumnKind } from "./column-kind";
import { styleDay, styleText } from "./column-style";
import { isCalculated, makeEntryRow, styleOf } from "./entry-row";
import { columnFor, missingKeys } from "./entry-table";
import { columnOf } from "./found-block";
import type { FoundBlock, ProbeBlock } from "./found-block";
import type { GridCells } from "./grid-cells";
import { entryOfProbe, listValues, withoutKeys } from "./new-entries";
import type { EntryValue, NewEntries } from "./new-entries";

/** Rows for a block, and what it has no column for. */
export interface NewRows {
  readonly rows: readonly (readonly CellInput[])[];
  /** meanings that were given and have no column, each once */
  readonly leftOut: readonly AnyKind[];
}

/** Texts that a column may already have in another spelling: the same word is written the same way. */
const REPEATED: readonly AnyKind[] = ["pupil", "task", "code", "unit", "support", "held", "list", "teacher"];

function makeListRow(
  block: FoundBlock,
  cells: GridCells,
  values: readonly EntryValue[],
  leftOut: Set<AnyKind>,
): CellInput[] {
  const row: CellInput[] = block.columns.map(() => undefined);
  for (const { kind, value, isDay } of values) {
    const column = columnOf(block.columns, kind);
    if (!column) {
      if (kind !== "pupil") leftOut.add(kind);
      continue;
    }
    if (isCalculated(block, cells, column)) continue;
    const style = styleOf(block, cells, column);
    const order = "dayOrder" in block ? block.dayOrder : undefined;
    row[block.columns.indexOf(column)] = isDay
      ? styleDay(style, value as Parameters<typeof styleDay>[1], order)
      : typeof value === "string" && REPEATED.includes(kind)
        ? styleText(style, value)
        : value;
  }
  return row;
}

function makeProbeRows(
  block: ProbeBlock,
  cells: GridCells,
  probes: NonNullable<NewEntries["probes"]>,
): Result<NewRows> {
  const rows: CellInput[][] = [];
  const leftOut = new Set<AnyKind>();
  const comprehension = columnOf(block.columns, "comprehension");
  for (const given of probes) {
    const probe = comprehension === undefined ? noteComprehension(given) : given;
    const entry = entryOfProbe(probe);
    const missing = missingKeys(block, entry);
    const gone = new Set<ColumnKind>(missing);
    for (const kind of missing) leftOut.add(kind);
    for (const kind of entry.keys) {
      const column = columnFor(block, kind);
      if (column && isCalculated(block, cells, column)) gone.add(kind);
    }
    // A total without its unit would not be understood in a table that counts whatever its Unit column says.
    const unit = columnOf(block.columns, "unit");
    if (unit && !entry.texts.has("unit") && !entry.numbers.has("words") && entry.numbers.has("opportunities"))
      return makeProbeRows(
        block,
        cells,
        probes.map((each) => ({ unit: "signs", ...each })),
      );
    const row = makeEntryRow(block, cells, withoutKeys(entry, gone));
    if (!row.ok) return row;
    if (comprehension && probe.comprehension !== undefined && !isCalculated(block, cells, comprehension))
      row.value[block.columns.indexOf(comprehension)] = probe.comprehension;
    rows.push(row.value);
  }
  return success({ rows, leftOut: [...leftOut] });
}

/** Where a table has no column for it, it stands in the note. */
const noteComprehension = <P extends Pick<Probe, "comprehension" | "note">>(probe: P): P => {
  const { comprehension, note = "" } = probe;
  if (comprehension === undefined || comprehension.trim() === "") return probe;
  const sentences = [note, `Comprehension: ${comprehension.trim()}`].filter((part) => part !== "");
  return { ...probe, note: sentences.map((part) => part.replace(/(?<![.!?…])$/u, ".")).join(" ") };
};

/** The rows of new entries for a block, in its own columns and manner. */
export function makeRows(block: FoundBlock, cells: GridCells, entries: NewEntries): Result<NewRows> {
  if (block.kind === "probes") return makeProbeRows(block, cells, entries.probes ?? []);
  const leftOut = new Set<AnyKind>();
  const rows = (entries[block.kind] ?? []).map((entry) =>
    makeListRow(block, cells, listValues(block.kind, entry), leftOut),
  );
  return success({ rows, leftOut: [...leftOut] });
}
