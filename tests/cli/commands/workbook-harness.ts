import { EmbeddedSheet } from "../../../src/adapters/embedded/embedded-sheet";
import { readWorkbook } from "../../../src/adapters/xlsx/read-workbook";
import { saveWorkbook } from "../../../src/adapters/xlsx/save-workbook";
import { createFsrsScheduler } from "../../../src/adapters/fsrs/fsrs-scheduler";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { runCaseload, type CaseloadHost } from "../../../src/cli/commands/caseload";
import { runCheck } from "../../../src/cli/commands/check";
import { runLog } from "../../../src/cli/commands/log";
import type { OpenedWorkbook, WorkbookHost } from "../../../src/cli/commands/opened-workbook";
import { refusal, success } from "../../../src/domain/result";
import { OpenWorkbook } from "../../../src/spreadsheet/open-workbook";

/** Opens a workbook file without calculation: formulas keep the values of the file. */
const open: WorkbookHost["open"] = async (bytes) => {
  const read = readWorkbook(bytes, { functions: [] });
  if (!read.ok) return read;
  const workbook = new OpenWorkbook(read.value.contents);
  const opened: OpenedWorkbook = {
    sheet: new EmbeddedSheet(workbook),
    insertRow: (sheet, row) => workbook.insertRows(sheet, row, 1),
    save: async () => saveWorkbook(bytes, workbook, workbook.difference(), { functions: [] }),
  };
  return success(opened);
};

/** What a command did: its exit code, what it printed, and the files as they are after it. */
export interface Run {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  readonly files: ReadonlyMap<string, Uint8Array>;
}

const COMMANDS = { check: runCheck, log: runLog, caseload: runCaseload } as const;

/** Runs a command over files in memory. */
export async function runOverFiles(
  command: keyof typeof COMMANDS,
  args: readonly string[],
  files: Readonly<Record<string, Uint8Array>>,
  opener: WorkbookHost["open"] = open,
): Promise<Run> {
  const disk = new Map(Object.entries(files));
  let out = "";
  let err = "";
  const host: CaseloadHost = {
    translators: nodeTranslatorLibrary(PACKAGE_LAYOUT),
    scheduler: createFsrsScheduler(),
    open: opener,
    files: {
      read: async (path) => {
        const bytes = disk.get(path);
        if (!bytes) throw Object.assign(new Error("no such file"), { code: "ENOENT" });
        return bytes;
      },
      replace: async (path, bytes) => {
        disk.set(path, bytes);
      },
    },
    streams: { out: (text) => void (out += text), err: (text) => void (err += text) },
  };
  const code = await COMMANDS[command](args, host);
  return { code, out, err, files: disk };
}

/** An opener that gives a sheet made for the test, whatever the bytes; saving marks them. */
export const openingSheet =
  (sheet: OpenedWorkbook["sheet"]): WorkbookHost["open"] =>
  async (bytes) =>
    bytes.length === 0
      ? refusal("not-a-workbook", "This is not a workbook.")
      : success({ sheet, save: async () => success(new Uint8Array([...bytes, 1])) });
