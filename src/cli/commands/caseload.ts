import { parseArgs } from "node:util";
import { formatSummary, summariseCaseload } from "../../domain/caseload/summary";
import { CHOICES_SETTING, parseChoices } from "../../records/column-choices";
import { readRecords } from "../../records/read-records";
import { openFile } from "./open-file";
import { EXIT } from "./opened-workbook";
import type { WorkbookHost } from "./opened-workbook";

export const CASELOAD_USAGE = "cellwright caseload F.xlsx";

/**
 * `caseload`: one line a pupil: the latest value, the trend and the verdict of the series that the pupil's goal is about.
 *
 * @returns the exit code
 */
export async function runCaseload(args: readonly string[], host: WorkbookHost): Promise<number> {
  let positionals: string[];
  try {
    ({ positionals } = parseArgs({ args: [...args], allowPositionals: true, options: {} }));
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
  const opened = await openFile(path, host);
  if (!opened.ok) {
    host.streams.err(`${opened.fault.message}\n`);
    return EXIT.refused;
  }
  const { sheet } = opened.value;
  const records = await readRecords(sheet, parseChoices(await sheet.readSetting(CHOICES_SETTING)));
  const summaries = summariseCaseload(records.probes, records.goals);
  if (summaries.length === 0) {
    host.streams.err(
      "No probes were found: `cellwright check` says which tables and columns were looked at.\n",
    );
    return EXIT.refused;
  }
  host.streams.out(summaries.map((summary) => `${formatSummary(summary)}\n`).join(""));
  return EXIT.done;
}
