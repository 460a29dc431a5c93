import type { Result } from "../../domain/result";
import type { OpenWorkbook } from "../../spreadsheet/open-workbook";
import type { WorkbookContents, WorkbookDifference } from "../../spreadsheet/workbook";
import { countOf } from "../grid/cell-speech";

/** Reading and writing of workbook files, passed in by the entry file. */
export interface WorkbookFormat {
  /** Resolves once files can be read: their formulas name functions that must be known. */
  readonly ready: Promise<void>;
  read(
    bytes: Uint8Array,
  ): Result<{ readonly contents: WorkbookContents; readonly cautions: readonly string[] }>;
  save(original: Uint8Array, workbook: OpenWorkbook, difference: WorkbookDifference): Result<Uint8Array>;
  /** The bytes of a new, empty workbook. */
  create(): Uint8Array;
}

/** The workbook that is open in this window: the file as it was, what is in it now, and what is saved of that. */
export class OpenDocument {
  private savedRevision: number;
  private editsSince = 0;

  constructor(
    public name: string,
    /** The bytes as first opened: every save patches them. */
    readonly original: Uint8Array,
    readonly workbook: OpenWorkbook,
    public handle: FileSystemFileHandle | undefined,
  ) {
    this.savedRevision = workbook.revision;
    workbook.onChange((_, source) => {
      if (source === "edit") this.editsSince += 1;
    });
  }

  get isUnsaved(): boolean {
    return this.workbook.revision !== this.savedRevision;
  }

  /** Counts what is there as not saved: recovered work. */
  markUnsaved(): void {
    this.savedRevision = -1;
    this.editsSince = 0;
  }

  /** @param revision - of the workbook when the save began */
  markSaved(revision: number): void {
    this.savedRevision = revision;
    this.editsSince = 0;
  }

  /** The state of saving in words. */
  describeState(): string {
    if (!this.isUnsaved) return "Everything is saved";
    return this.editsSince === 0 ? "Not saved yet" : `${countOf(this.editsSince, "edit")} not saved`;
  }
}
