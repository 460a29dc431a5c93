import { parseArgs } from "node:util";
import type { Probe } from "../../domain/probe/probe";
import { refusal, success } from "../../domain/result";
import type { Result } from "../../domain/result";
import { HostError } from "../../ports/sheet";
import type { Sheet, SheetOutline } from "../../ports/sheet";
import { formatArea } from "../../records/cell-address";
import { CHOICES_SETTING, parseChoices } from "../../records/column-choices";
import type { ColumnChoices } from "../../records/column-choices";
import { chooseTable } from "../../records/entry-table";
import { makeEntryRow } from "../../records/entry-row";
import type { ProbeBlock } from "../../records/found-block";
import { gridCells } from "../../records/grid-cells";
import type { GridCells } from "../../records/grid-cells";
import { parseProbeEntry } from "../../records/probe-entry";
import type { ProbeEntry } from "../../records/probe-entry";
import { readRecords } from "../../records/read-records";
import { chooseByOptions } from "./check";
import { openFile } from "./open-file";
import { EXIT } from "./opened-workbook";
import type { OpenedWorkbook, WorkbookHost } from "./opened-workbook";
import { placeRow } from "./row-placement";

export const LOG_USAGE =
  "cellwright log F.xlsx [--out G.xlsx] [--table NAME] [--day-order dmy|mdy] [--clock m:ss|h:mm] date=2026-11-20 pupil=… key=value …";

/** A host's message with sheets named by their place: a sheet may be called after its pupil. */
const withoutNames = (message: string, outlines: readonly SheetOutline[]): string =>
  outlines.reduce((text, { name }, place) => text.replaceAll(name, `sheet ${place + 1}`), message);

/** Where the new row stands. */
interface Logged {
  readonly range: string;
  readonly sheetPlace: number;
}

interface Options {
  readonly "day-order"?: string | undefined;
  readonly clock?: string | undefined;
  readonly table?: string | undefined;
  readonly out?: string | undefined;
}

/** The block's cells with the row beneath, where a table may be prepared for more rows. */
async function readBlock(sheet: Sheet, block: ProbeBlock): Promise<GridCells> {
  return gridCells(await sheet.read(block.sheet, { ...block.area, bottom: block.area.bottom + 1 }));
}

/** Whether a probe read back from its row has the day and the numbers that were given. */
function saysTheSame(probe: Probe, entry: ProbeEntry): boolean {
  const near = (a: number | undefined, b: number | undefined): boolean =>
    b === undefined || (a !== undefined && Math.abs(a - b) <= 1e-6 * Math.max(1, Math.abs(b)));
  const { numbers } = entry;
  const minutes = numbers.get("minutes");
  const seconds = numbers.get("seconds");
  const time = minutes === undefined ? seconds : (seconds ?? 0) + 60 * minutes;
  return (
    probe.day === entry.day &&
    (["words", "errors", "correct", "opportunities", "rate", "accuracy", "score"] as const).every((kind) =>
      near(probe[kind], numbers.get(kind)),
    ) &&
    near(probe.seconds, time)
  );
}

/** Appends a probe to the table that takes it, and reads it back: a row that would be a fault is refused. */
async function logProbe(
  opened: OpenedWorkbook,
  entry: ProbeEntry,
  choices: ColumnChoices,
  tableName: string | undefined,
): Promise<Result<Logged>> {
  const { sheet } = opened;
  const outlines = await sheet.outline();
  const { blocks } = await readRecords(sheet, choices);
  const chosen = chooseTable(blocks, outlines, entry, tableName);
  if (!chosen.ok) return chosen;
  const block = chosen.value;
  const unsettled = block.questions.find(({ kind }) => kind === "day order");
  if (unsettled)
    return refusal(
      "day-order",
      `${unsettled.cell}: the table does not tell whether day or month comes first. Give --day-order dmy or --day-order mdy.`,
    );
  const cells = await readBlock(sheet, block);
  const row = makeEntryRow(block, cells, entry);
  if (!row.ok) return row;
  const area = await placeRow(opened, blocks, block, row.value, cells);
  const after = (await readRecords(sheet, choices)).blocks.find(
    ({ sheet: name, headerRow, area: at }) =>
      name === block.sheet && headerRow === block.headerRow && at.left === block.area.left,
  );
  const written =
    after?.kind === "probes" ? after.records.find(({ source }) => source.row === area.top + 1) : undefined;
  if (!written || !saysTheSame(written, entry)) {
    const fault = after?.faults.find(({ row: at }) => at === area.top);
    return refusal(
      "not-readable",
      `The probe would not be read back from ${formatArea(area)}${fault ? `: ${fault.message}` : "."} Nothing was saved.`,
    );
  }
  return success({
    range: formatArea(area),
    sheetPlace: outlines.findIndex(({ name }) => name === block.sheet) + 1,
  });
}

/**
 * `log`: appends one probe to the teacher's own table and saves by patching, to `--out` or in place. The input file is
 * changed only when everything succeeded, by writing beside it and renaming.
 *
 * @returns the exit code
 */
export async function runLog(args: readonly string[], host: WorkbookHost): Promise<number> {
  const { err } = host.streams;
  let parsed: { values: Options; positionals: string[] };
  try {
    parsed = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        out: { type: "string" },
        table: { type: "string" },
        "day-order": { type: "string" },
        clock: { type: "string" },
      },
    });
  } catch {
    // parseArgs repeats the argument in its message; a value may be a pupil's name.
    err(`An option is unknown or has no value.\nUsage: ${LOG_USAGE}\n`);
    return EXIT.usage;
  }
  const [path, ...pairs] = parsed.positionals;
  if (path === undefined || pairs.length === 0) {
    err(`Give a workbook, and the probe as key=value pairs.\nUsage: ${LOG_USAGE}\n`);
    return EXIT.usage;
  }
  const asked = chooseByOptions({}, parsed.values);
  if (!asked) {
    err(`--day-order is dmy or mdy; --clock is m:ss or h:mm.\nUsage: ${LOG_USAGE}\n`);
    return EXIT.usage;
  }
  const entry = parseProbeEntry(pairs, asked.dayOrder);
  if (!entry.ok) {
    err(`${entry.fault.message}\n`);
    return EXIT.usage;
  }
  const opened = await openFile(path, host);
  if (!opened.ok) {
    err(`${opened.fault.message}\n`);
    return EXIT.refused;
  }
  const { sheet } = opened.value;
  try {
    const choices =
      chooseByOptions(parseChoices(await sheet.readSetting(CHOICES_SETTING)), parsed.values) ?? {};
    const logged = await logProbe(opened.value, entry.value, choices, parsed.values.table);
    if (!logged.ok) {
      err(`${logged.fault.message}\n`);
      return EXIT.refused;
    }
    const saved = await opened.value.save();
    if (!saved.ok) {
      err(`${saved.fault.message}\n`);
      return EXIT.refused;
    }
    await host.files.replace(parsed.values.out ?? path, saved.value);
    host.streams.out(`Added the probe as ${logged.value.range} of sheet ${logged.value.sheetPlace}.\n`);
    return EXIT.done;
  } catch (error) {
    if (error instanceof HostError) err(`${withoutNames(error.message, await sheet.outline())}\n`);
    else if (error instanceof Error && "syscall" in error)
      err(
        "The file could not be written. Check that the folder is there and that the workbook is not open elsewhere.\n",
      );
    else throw error;
    return EXIT.refused;
  }
}
