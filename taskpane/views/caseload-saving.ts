import { buildCaseload, periodUpTo } from "../../src/domain/caseload/caseload";
import { HostError } from "../../src/ports/sheet";
import type { Sheet } from "../../src/ports/sheet";
import { parseDayText } from "../../src/records/day-text";
import { linesOfTeacher } from "./caseload-lines";
import { formatIsoDay } from "../../src/records/day-style";
import { leaveOutSheets } from "./left-out-sheets";
import { make } from "./markup";
import type { PaneContext } from "./pane-context";
import { explainFailure } from "./pane-feed";

/** A spreadsheet takes a file of comma-separated values for UTF-8 only with this at its beginning. */
const UTF8_MARK = "\uFEFF";

/** It comes when it is first wanted: the caseload is there before anybody saves it. */
const loadTable = () => import(/* webpackChunkName: "caseload-table" */ "./caseload-table");

async function freeSheet(sheet: Sheet, name: string): Promise<string> {
  const taken = new Set((await sheet.outline()).map((outline) => outline.name.toLowerCase()));
  let number = 1;
  const named = (): string => (number === 1 ? name : `${name} (${String(number)})`);
  while (taken.has(named().toLowerCase())) number += 1;
  return named();
}

/** Saving the caseload as a table for a coordinator: as a file, or into a new sheet. */
export class CaseloadSaving {
  readonly element = make(
    "details",
    {},
    make("summary", {}, "Save the table for a coordinator"),
    make(
      "p",
      {},
      "A row a pupil: goal, start, now, target, verdict, probes and minutes of the period. Beneath, how many pupils have each verdict; groups under five are not counted. Nothing is averaged across pupils.",
    ),
  );
  readonly #from = make("input", { type: "date" });
  #context: PaneContext | undefined;
  #teacher = "";

  /** @param said - called with a sentence about what was saved */
  constructor(private readonly said: (words: string) => void) {
    this.element.append(
      make("div", { class: "fields" }, make("label", { class: "field" }, "Period from", this.#from)),
      make(
        "div",
        { class: "buttons" },
        this.#button("Save as .csv", () => this.#saveFile()),
        this.#button("Put into a new sheet", () => this.#intoSheet()),
      ),
    );
  }

  show(context: PaneContext, teacher: string): void {
    this.#context = context;
    this.#teacher = teacher;
    if (this.#from.value === "") this.#from.value = formatIsoDay(periodUpTo(context.today));
  }

  #button(label: string, act: () => Promise<void>): HTMLButtonElement {
    const button = make("button", { type: "button" }, label);
    button.addEventListener("click", () => {
      if (button.ariaDisabled === "true") return;
      button.ariaDisabled = "true";
      void act()
        .catch((error: unknown) => {
          this.said(explainFailure(error, "The table could not be saved. Try once more."));
        })
        .then(() => {
          button.ariaDisabled = null;
        });
    });
    return button;
  }

  async #table(context: PaneContext) {
    const read = parseDayText(this.#from.value);
    if (read?.kind !== "day" || read.day > context.today) {
      this.#from.focus();
      throw new HostError("The period begins on a day up to today. Choose its first day.");
    }
    const { caseloadTable } = await loadTable();
    const { records, today, cells } = context;
    const lines = buildCaseload(records, today, {
      periodFrom: read.day,
      ...(cells === undefined ? {} : { cells }),
    });
    return caseloadTable(linesOfTeacher(lines, this.#teacher), [read.day, today]);
  }

  async #saveFile(): Promise<void> {
    const context = this.#context;
    if (context === undefined) return;
    const { formatCsv } = await loadTable();
    const text = UTF8_MARK + formatCsv(await this.#table(context));
    await context.saveFile(
      `caseload ${formatIsoDay(context.today)}.csv`,
      new Blob([text], { type: "text/csv" }),
    );
    this.said(
      "The table was saved as a .csv file. It has your pupils' codes in it: keep it as you keep the workbook.",
    );
  }

  async #intoSheet(): Promise<void> {
    const context = this.#context;
    if (context === undefined) return;
    const table = await this.#table(context);
    const width = Math.max(...table.map((row) => row.length));
    const rows = table.map((row) => Array.from({ length: width }, (_, at) => row[at] ?? null));
    const name = await context.write(async (sheet) => {
      const free = await freeSheet(sheet, `Caseload ${formatIsoDay(context.today)}`);
      await sheet.writeBlock(free, { row: 0, column: 0 }, rows);
      return free;
    });
    if (name === undefined) return;
    // The context is a new one since.
    await leaveOutSheets(this.#context ?? context, [name]);
    this.said(`The table was put into the sheet ${name}.`);
  }
}
