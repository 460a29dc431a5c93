import type { ColumnChoices } from "../../src/records/column-choices";
import type { WorkbookRecords } from "../../src/records/read-records";
import type { DocumentWriter } from "../../src/ports/document";
import type { Scheduler } from "../../src/ports/scheduler";
import type { Sheet } from "../../src/ports/sheet";
import type { TranslatorLibrary } from "../../src/ports/translator";
import type { WordBankLibrary } from "../../src/ports/word-bank";
import type { HandoutEntry } from "../../src/domain/drill/handout-draft";
import type { CellSource } from "../../src/domain/progress/measure";
import type { Day } from "../../src/domain/units";

/** A cell to show. Row and column count from zero. */
export interface CellPlace {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** The views of the pane, in the order of a teacher's week; `view-list.ts` has their titles. */
export type ViewName =
  | "caseload"
  | "progress"
  | "signs"
  | "next"
  | "handouts"
  | "reading"
  | "naming"
  | "brailled"
  | "report"
  | "workbook";

/** What one view hands to another with the focus: signs to practise, a passage to read. */
export interface ViewRequest {
  readonly signs?: readonly string[];
  /** the signs are confused with each other: set them against each other */
  readonly contrast?: boolean;
  readonly passage?: { readonly title: string; readonly text: string };
  /** items of a handout as they stand, such as the lines of a row of signs */
  readonly items?: readonly HandoutEntry[];
  /** the task of a probe, in the words of the Task column */
  readonly task?: string;
}

/** Where the reading of the workbook stands: a problem is a sentence that says what to do. */
export type ReadingState = "loading" | "ready" | { readonly problem: string };

/** What the workbook holds, as last read. */
export interface PaneReading {
  readonly state: ReadingState;
  /** the last good reading stays beside a problem; empty before the first */
  readonly records: WorkbookRecords;
  readonly choices: ColumnChoices;
}

/** What a page lends its views: spoken words, files, the clipboard, the printer, drafts that outlive a reload. */
export interface PageServices {
  /** Puts a file where she keeps downloads. @throws {HostError} where the host refuses, with what to do */
  saveFile(name: string, contents: Blob): Promise<void>;
  /** Copies text, and a table beside it for word processors. @throws {HostError} where the clipboard is refused */
  copy(content: { readonly plain: string; readonly html?: string }): Promise<void>;
  /**
   * Prints pages and nothing else.
   *
   * @param pages - one element a sheet of paper, in order; they are taken out again when the dialog closes
   * @param paper - a CSS page size such as `A4`, `letter`, `11in 11.5in`
   */
  printPages(pages: readonly Element[], paper: string): Promise<void>;
  readonly drafts: DraftStore;
}

/** Short texts kept on this computer until they are forgotten: a probe in progress. Never throws. */
export interface DraftStore {
  read(key: string): string | undefined;
  /** @returns false where this browser keeps nothing: say so once, and go on */
  keep(key: string, text: string): boolean;
  forget(key: string): void;
}

/** What the hosting page does for the pane. */
export interface PaneHost {
  readonly sheet: Sheet;
  readonly translators: TranslatorLibrary;
  readonly wordBank: WordBankLibrary;
  /** writes documents for word processors; its code comes when the first is written */
  readonly documents: DocumentWriter;
  /** says when a sign should be checked again */
  readonly scheduler: Scheduler;
  /** Shows a cell in the spreadsheet. */
  jumpTo(place: CellPlace): void;
  /** Today as a serial number. */
  today(): Day;
  /** Milliseconds of quiet after a change before the sheets are read again. */
  readonly quiet?: number;
}

/**
 * All that a view sees of the world. A new one is set on the view in sight whenever a reading, the pupil or the engine
 * changes; a view draws from it and keeps nothing of an older one. What she has typed or marked stays the view's own.
 */
export interface PaneContext extends Omit<PaneHost, "quiet" | "today">, PageServices, PaneReading {
  readonly today: Day;
  /** every pupil of the workbook, by name */
  readonly pupils: readonly string[];
  /** undefined only where the workbook has no pupil */
  readonly pupil: string | undefined;
  /** how cells are counted; undefined until the braille engine is there */
  readonly cells: CellSource | undefined;
  choosePupil(pupil: string): void;
  /** Shows another view with the focus on its heading. */
  openView(view: ViewName, request?: ViewRequest): void;
  /** Says something in the pane's polite live region, which also shows it. */
  say(text: string): void;
  /**
   * Writes to the workbook, then reads it anew. A refusal of the host is said, and nothing else happens.
   *
   * @returns what `work` answers, or undefined where the host refused
   */
  write<T>(work: (sheet: Sheet) => Promise<T>): Promise<T | undefined>;
  /** Keeps her correction of the columns found in the workbook, and reads it anew. */
  keepChoices(choices: ColumnChoices): Promise<void>;
}

/** A view of the pane: a custom element that draws from its context. The pane shows its heading (h2) above it. */
export interface PaneView extends HTMLElement {
  context: PaneContext;
  /** Takes up what another view handed over; called after the context is set. */
  begin?(request: ViewRequest): void;
}
