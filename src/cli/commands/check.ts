import { parseArgs } from "node:util";
import { CHOICES_SETTING, parseChoices } from "../../records/column-choices";
import type { ColumnChoices } from "../../records/column-choices";
import { KIND_NAMES } from "../../records/column-kind";
import type { ColumnKind } from "../../records/column-kind";
import { DAY_ORDERS } from "../../records/day-text";
import { CLOCK_MEANINGS } from "../../records/duration";
import { readRecords } from "../../records/read-records";
import type { WorkbookRecords } from "../../records/read-records";
import { reportTables } from "../../records/table-report";
import type { TableReport } from "../../records/table-report";
import { openFile } from "./open-file";
import { EXIT } from "./opened-workbook";
import type { WorkbookHost } from "./opened-workbook";

export const CHECK_USAGE = "cellwright check F.xlsx [--json] [--day-order dmy|mdy] [--clock m:ss|h:mm]";

/** The answers given by options, over those kept in the workbook. Undefined where an option has a value it cannot have. */
export function chooseByOptions(
  kept: ColumnChoices,
  options: { readonly "day-order"?: string | undefined; readonly clock?: string | undefined },
): ColumnChoices | undefined {
  const dayOrder = DAY_ORDERS.find((order) => order === options["day-order"]);
  const clock = CLOCK_MEANINGS.find((meaning) => meaning === options.clock);
  if ((options["day-order"] !== undefined && !dayOrder) || (options.clock !== undefined && !clock))
    return undefined;
  if (!dayOrder && !clock) return kept;
  // The option is the answer for every block: those kept in the workbook give way, her columns stay.
  const blocks = Object.fromEntries(
    Object.entries(kept.blocks ?? {}).map(([key, block]) => {
      const open: { -readonly [K in keyof typeof block]: (typeof block)[K] } = { ...block };
      if (dayOrder) delete open.dayOrder;
      if (clock) delete open.clock;
      return [key, open];
    }),
  );
  return { ...kept, blocks, ...(dayOrder ? { dayOrder } : {}), ...(clock ? { clock } : {}) };
}

const count = (number: number, one: string, many = `${one}s`): string =>
  `${number} ${number === 1 ? one : many}`;

function describeTable(table: TableReport): string {
  const columns = Object.entries(table.columns).map(
    ([kind, letters]) => `${letters} ${KIND_NAMES[kind as ColumnKind]}`,
  );
  const faults = table.faults.map(({ cell, message }) => `  ${cell}: ${message}`);
  return [
    `${table.sheet}, ${table.range}: ${count(table.records, "record")}, ${count(table.faults.length, "fault")}`,
    `  Columns: ${columns.join(", ")}`,
    ...faults,
  ].join("\n");
}

/** What was found, as lines for a reader. */
export function describeRecords(records: WorkbookRecords): string {
  const tables = reportTables(records);
  const others = records.blocks
    .filter((block) => block.kind !== "probes" && (block.records.length > 0 || block.faults.length > 0))
    .map((block) =>
      [
        `${block.sheet}, ${block.range}: ${block.kind === "goals" ? count(block.records.length, "goal") : count(block.records.length, "taught sign")}, ${count(block.faults.length, "fault")}`,
        ...block.questions.map(({ cell, message }) => `  ${cell}: ${message}`),
        ...block.faults.map(({ cell, message }) => `  ${cell}: ${message}`),
      ].join("\n"),
    );
  if (tables.length === 0) {
    const nothing =
      "No table of probes was found. One is found by a header row with a date and a score, such as Date, Pupil, Words, Errors, Seconds.";
    return [nothing, ...others].join("\n");
  }
  return [...tables.map(describeTable), ...others].join("\n");
}

/**
 * `check`: says which tables of probes a workbook holds, what their columns mean, how many records they give, and
 * which cells are at fault; JSON with `--json`.
 *
 * @returns the exit code
 */
export async function runCheck(args: readonly string[], host: WorkbookHost): Promise<number> {
  let parsed;
  try {
    parsed = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { json: { type: "boolean" }, "day-order": { type: "string" }, clock: { type: "string" } },
    });
  } catch (error) {
    host.streams.err(
      `${error instanceof Error ? error.message : "Unknown option."}\nUsage: ${CHECK_USAGE}\n`,
    );
    return EXIT.usage;
  }
  const [path, ...rest] = parsed.positionals;
  if (path === undefined || rest.length > 0) {
    host.streams.err(`Give one workbook.\nUsage: ${CHECK_USAGE}\n`);
    return EXIT.usage;
  }
  const opened = await openFile(path, host);
  if (!opened.ok) {
    host.streams.err(`${opened.fault.message}\n`);
    return EXIT.refused;
  }
  const choices = chooseByOptions(
    parseChoices(await opened.value.sheet.readSetting(CHOICES_SETTING)),
    parsed.values,
  );
  if (!choices) {
    host.streams.err(`--day-order is dmy or mdy; --clock is m:ss or h:mm.\nUsage: ${CHECK_USAGE}\n`);
    return EXIT.usage;
  }
  const records = await readRecords(opened.value.sheet, choices);
  host.streams.out(
    parsed.values.json
      ? `${JSON.stringify({ tables: reportTables(records) })}\n`
      : `${describeRecords(records)}\n`,
  );
  return EXIT.done;
}
