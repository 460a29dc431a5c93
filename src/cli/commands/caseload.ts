import { parseArgs } from "node:util";
import { dayOf } from "../../domain/calendar";
import { buildCaseload, periodUpTo, type CaseloadLine } from "../../domain/caseload/caseload";
import { COORDINATOR_HEADINGS, countByVerdict, tabulateCaseload } from "../../domain/caseload/coordinator";
import { findChecksDue } from "../../domain/caseload/checks-due";
import { formatSummary } from "../../domain/caseload/summary";
import { judgeSigns } from "../../domain/progress/pupil-signs";
import { normaliseName } from "../../domain/progress/series";
import type { Day } from "../../domain/units";
import { transcribeWith } from "../../ports/loaded-transcription";
import type { Scheduler } from "../../ports/scheduler";
import type { TranslatorLibrary } from "../../ports/translator";
import { CHOICES_SETTING, parseChoices } from "../../records/column-choices";
import { parseDayText } from "../../records/day-text";
import { readRecords, type WorkbookRecords } from "../../records/read-records";
import { openFile } from "./open-file";
import { EXIT } from "./opened-workbook";
import type { WorkbookHost } from "./opened-workbook";

export const CASELOAD_USAGE = "cellwright caseload F.xlsx [--as-of 2026-11-20] [--coordinator]";

/** What the command works with: files, the braille engine, and what says when a sign should be checked again. */
export interface CaseloadHost extends WorkbookHost {
  readonly translators: TranslatorLibrary;
  readonly scheduler: Scheduler;
}

const today = (): Day | undefined => {
  const now = new Date();
  return dayOf({ year: now.getFullYear(), month: now.getMonth() + 1, date: now.getDate() });
};

/** A day without doubt about its order, or undefined. */
const parseAsOf = (text: string): Day | undefined => {
  const read = parseDayText(text);
  return read?.kind === "day" ? read.day : undefined;
};

/** A pupil's line: where the pupil stands, minutes, and what is needed, most pressing first. */
function formatLine({ pupil, summary, week, needs }: CaseloadLine): string {
  const stands = summary ? formatSummary(summary) : `${pupil}: no probe.`;
  const minutes =
    week.planned === undefined && week.given === 0
      ? ""
      : ` This week ${week.given}${week.planned === undefined ? "" : ` of ${week.planned} planned`} minutes.`;
  return `${[`${stands}${minutes}`, ...needs.map(({ sentence }) => sentence)].join(" ")}\n`;
}

/** Rows for a coordinator, parted by tabs, and pupils counted by verdict. */
const formatForCoordinator = (lines: readonly CaseloadLine[], asOf: Day): string =>
  [
    COORDINATOR_HEADINGS,
    ...tabulateCaseload(lines, periodUpTo(asOf)),
    ...countByVerdict(lines).map(({ name, pupils }) => [name, pupils]),
  ]
    .map((row) => `${row.map((cell) => String(cell).replace(/\s+/g, " ")).join("\t")}\n`)
    .join("");

/** The signs of each pupil due for a check, from texts read and written as well; these need the engine. */
async function findChecks(records: WorkbookRecords, asOf: Day, { translators, scheduler }: CaseloadHost) {
  await Promise.all(["contracted", "uncontracted"].map((code) => translators.translator(code)));
  return (pupil: string) => {
    const { standings } = judgeSigns(records, pupil, asOf, transcribeWith(translators), (occasions) =>
      scheduler.nextCheck(occasions),
    );
    const isOwn = (row: { readonly pupil: string }) => normaliseName(row.pupil) === normaliseName(pupil);
    return findChecksDue(standings, records.taught.filter(isOwn), asOf);
  };
}

/**
 * `caseload`: one line a pupil, the one who needs most first: the latest value, the trend and the verdict of the series
 * that the pupil's goal is about, minutes of the week, and what is needed. `--as-of` looks at another day than today;
 * `--coordinator` gives a table instead.
 *
 * @returns the exit code
 */
export async function runCaseload(args: readonly string[], host: CaseloadHost): Promise<number> {
  let positionals: string[];
  let values: { "as-of"?: string | undefined; coordinator?: boolean | undefined };
  try {
    ({ positionals, values } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { "as-of": { type: "string" }, coordinator: { type: "boolean" } },
    }));
  } catch (error) {
    host.streams.err(
      `${error instanceof Error ? error.message : "Unknown option."}\nUsage: ${CASELOAD_USAGE}\n`,
    );
    return EXIT.usage;
  }
  const [path, ...rest] = positionals;
  if (path === undefined || rest.length > 0) {
    host.streams.err(`Give one workbook.\nUsage: ${CASELOAD_USAGE}\n`);
    return EXIT.usage;
  }
  const asOf = values["as-of"] === undefined ? today() : parseAsOf(values["as-of"]);
  if (asOf === undefined) {
    host.streams.err(`--as-of is a day such as 2026-11-20.\nUsage: ${CASELOAD_USAGE}\n`);
    return EXIT.usage;
  }
  const opened = await openFile(path, host);
  if (!opened.ok) {
    host.streams.err(`${opened.fault.message}\n`);
    return EXIT.refused;
  }
  const { sheet } = opened.value;
  const records = await readRecords(sheet, parseChoices(await sheet.readSetting(CHOICES_SETTING)));
  const lines = buildCaseload(records, asOf, { checksOf: await findChecks(records, asOf, host) });
  if (records.probes.length === 0) {
    host.streams.err(
      "No probes were found: `cellwright check` says which tables and columns were looked at.\n",
    );
    return EXIT.refused;
  }
  host.streams.out(
    values.coordinator === true ? formatForCoordinator(lines, asOf) : lines.map(formatLine).join(""),
  );
  return EXIT.done;
}
