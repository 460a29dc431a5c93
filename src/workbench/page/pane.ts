import type { DocumentWriter } from "../../ports/document";
import type { Scheduler } from "../../ports/scheduler";
import type { Sheet } from "../../ports/sheet";
import type { TranslatorLibrary } from "../../ports/translator";
import type { WordBankLibrary } from "../../ports/word-bank";
import { PaneElement, definePane } from "../../../taskpane/views/pane-view";
import type { Day } from "../../domain/units";
import type { GridElement } from "../grid/grid-element";

/** Milliseconds of quiet before the sheets are read again: longer where reading takes its time. */
const QUIET = 250;
const QUIET_WHEN_LARGE = 1500;
const LARGE = 50_000;

/** What the pane needs of the page beside the open workbook. */
export interface PaneSources {
  readonly translators: TranslatorLibrary;
  readonly wordBank: WordBankLibrary;
  readonly documents: DocumentWriter;
  readonly scheduler: Scheduler;
  today(): Day;
}

/** The pane beside the sheet, fed from the open workbook. */
export class Pane {
  private readonly element: PaneElement;

  /** @param box - the element that holds the pane */
  constructor(
    box: HTMLElement,
    private readonly grid: GridElement,
    private readonly sources: PaneSources,
  ) {
    definePane();
    this.element = new PaneElement();
    box.append(this.element);
  }

  /** Shows what a new workbook begins with: the caseload, which offers to set up its tables. The focus stays. */
  async offerTables(): Promise<void> {
    await this.element.show("caseload");
  }

  /** Follows another workbook. @param size - how many cells it holds */
  follow(sheet: Sheet, size: number): void {
    this.element.follow({
      ...this.sources,
      sheet,
      quiet: size > LARGE ? QUIET_WHEN_LARGE : QUIET,
      jumpTo: ({ sheet: name, row, column }) => {
        this.grid.goTo(name, { top: row, bottom: row, left: column, right: column });
      },
    });
  }
}
