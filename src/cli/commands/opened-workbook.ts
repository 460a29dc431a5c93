import type { Result } from "../../domain/result";
import type { Sheet } from "../../ports/sheet";

/** A workbook file opened behind the Sheet port. */
export interface OpenedWorkbook {
  readonly sheet: Sheet;
  /** The file with the changes made through the port, by patching the bytes that were opened. */
  save(): Promise<Result<Uint8Array>>;
  /** Inserts an empty row above this one (from 0) over the whole sheet; absent where the opener cannot. */
  insertRow?(sheet: string, row: number): Result<unknown>;
}

/** Opens the bytes of a workbook; a file that is none is refused with what to do. Handed in by the entry point. */
export type OpenWorkbookFile = (bytes: Uint8Array) => Promise<Result<OpenedWorkbook>>;

/** What commands read and write beside their files. */
export interface CommandStreams {
  out(text: string): void;
  err(text: string): void;
}

/** Files by path; handed in so that commands can be tested without a disk. */
export interface CommandFiles {
  read(path: string): Promise<Uint8Array>;
  /** Writes beside the path and renames, so that a file is either as it was or complete. */
  replace(path: string, bytes: Uint8Array): Promise<void>;
}

/** Everything a command over a workbook file works with. */
export interface WorkbookHost {
  readonly open: OpenWorkbookFile;
  readonly files: CommandFiles;
  readonly streams: CommandStreams;
}

/** Exit codes: done, refused (message on standard error), wrong usage. */
export const EXIT = { done: 0, refused: 1, usage: 2 } as const;
