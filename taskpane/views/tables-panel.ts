import type { Sheet } from "../../src/ports/sheet";
import { HostError } from "../../src/ports/sheet";
import type { Appended } from "../../src/records/append-entries";
import { holdsExample } from "../../src/records/kept-example";
import { readRecords } from "../../src/records/read-records";
import { setUpWorkbook } from "../../src/records/set-up";
import { countInWords, beginSentence } from "./count-words";
import { make } from "./markup";
import { missingTables } from "./missing-tables";
import type { PaneContext } from "./pane-context";

/** What was written into the workbook, and the way back. */
export interface TablesWritten {
  readonly words: string;
  undo(): Promise<void>;
}

/** It comes when it is first wanted: few workbooks take an example. */
const loadExample = () => import(/* webpackChunkName: "example" */ "../../src/records/example");

const LOOKED_FOR =
  "Looked for was a row of headings with a date and how a probe went, such as Date, Pupil, Words, Errors, Seconds. Title rows above it do no harm. If your probes are in another workbook, open that one; if they are here under other words, name a column of dates Date.";

/** Which tables were made because a range of hers had no room for the example. */
const sayOwnTables = ({ rows }: Appended): string => {
  const sheets = rows.filter((part) => part.setUp).map((part) => part.sheet);
  return sheets.length === 0
    ? ""
    : ` Something stands beneath the rows of a list of yours, so a table was made on the new sheet ${sheets.join(" and ")}.`;
};

/** Sets up what is missing, with or without the example; everything of it is taken back by one call. */
async function setUp(sheet: Sheet, context: PaneContext, withExample: boolean): Promise<TablesWritten> {
  const made = await setUpWorkbook(sheet, context.records.blocks);
  const tables = countInWords(made.kinds.length, "table");
  if (!withExample)
    return { words: `Set up: ${tables}, each on a sheet of its own.`, undo: () => made.undo() };
  const { addExample, removeExample } = await loadExample();
  const added = await addExample(sheet, await readRecords(sheet, context.choices), context.today);
  if (!added.ok) {
    await made.undo();
    throw new HostError(added.fault.message);
  }
  return {
    words:
      made.kinds.length === 0
        ? `The example pupil was added.${sayOwnTables(added.value)}`
        : `Set up: ${tables}, each on a sheet of its own, with an example pupil.`,
    undo: async () => {
      await added.value.undo();
      if (made.kinds.length > 0) await made.undo();
      // Nothing of the example stands any more: this forgets that it was there.
      await removeExample(sheet);
    },
  };
}

/**
 * The tables of the workbook: what was found where there are no probes, setting up what is missing, and the example that
 * can be removed.
 */
export class TablesPanel {
  readonly element = make("section", { "aria-labelledby": "tables-title" });
  readonly #title = make("h3", { id: "tables-title" });
  readonly #why = make("div");
  readonly #sheets = make("ul");
  readonly #missing = make("p");
  readonly #example = make("input", { type: "checkbox" });
  readonly #exampleChoice = make(
    "label",
    { class: "choice" },
    this.#example,
    "with an example pupil, which can be removed again",
  );
  readonly #setUp = make("button", { type: "button", class: "main" });
  readonly #remove = make("button", { type: "button" }, "Remove the example");
  #context: PaneContext | undefined;
  #isBusy = false;

  /** @param done - called with what was written, after the workbook was read again */
  constructor(private readonly done: (written: TablesWritten | string) => void) {
    this.#why.append(make("p", {}, LOOKED_FOR), this.#sheets);
    this.element.append(
      this.#title,
      this.#why,
      this.#missing,
      this.#exampleChoice,
      make("div", { class: "buttons" }, this.#setUp, this.#remove),
    );
    this.#remove.hidden = true;
    this.#setUp.addEventListener("click", () => {
      void this.#work(async (sheet, context) => setUp(sheet, context, this.#example.checked));
    });
    this.#remove.addEventListener("click", () => {
      void this.#work(async (sheet) => {
        const { removeExample } = await loadExample();
        const { removed, kept } = await removeExample(sheet);
        return `${beginSentence(countInWords(removed, "row"))} of the example taken out.${
          kept === 0
            ? ""
            : ` ${beginSentence(countInWords(kept, "row"))} that you changed stay: delete them by hand.`
        }`;
      });
    });
  }

  focus(): void {
    this.#setUp.focus();
  }

  /** @param isFirst - no table of probes was found: the panel says what was looked for */
  async show(context: PaneContext, isFirst: boolean): Promise<void> {
    this.#context = context;
    const missing = missingTables(context.records.blocks);
    this.#title.textContent = isFirst
      ? "No table of probes was found in this workbook"
      : "Tables and example";
    this.#why.hidden = !isFirst;
    this.#missing.textContent =
      missing.length === 0
        ? "Every table that the pane uses is there."
        : `The workbook has no table for: ${missing.join(", ")}. Each can be made on a sheet of its own; nothing that stands in the workbook is changed.`;
    const holds = await holdsExample(context.sheet).catch(() => false);
    if (this.#context !== context) return;
    const canSetUp = missing.length > 0 || !holds;
    const hadFocus = isFocused(this.#setUp) || isFocused(this.#remove);
    this.#setUp.textContent = missing.length === 0 ? "Add the example pupil" : "Set up the tables";
    this.#setUp.hidden = !canSetUp;
    this.#exampleChoice.hidden = holds || missing.length === 0;
    if (missing.length === 0) this.#example.checked = true;
    this.#remove.hidden = !holds;
    if (hadFocus && !isFocused(this.#setUp) && !isFocused(this.#remove))
      (canSetUp ? this.#setUp : this.#remove).focus();
    if (!isFirst) return;
    const { describeSheets } = await import(/* webpackChunkName: "tables-found" */ "./tables-found");
    const lines = await describeSheets(context.sheet, context.records.blocks).catch(() => []);
    if (this.#context === context) this.#sheets.replaceChildren(...lines.map((line) => make("li", {}, line)));
  }

  async #work(act: (sheet: Sheet, context: PaneContext) => Promise<TablesWritten | string>): Promise<void> {
    const context = this.#context;
    if (context === undefined || this.#isBusy) return;
    this.#isBusy = true;
    for (const button of [this.#setUp, this.#remove]) button.ariaDisabled = "true";
    const written = await context.write((sheet) => act(sheet, context));
    this.#isBusy = false;
    for (const button of [this.#setUp, this.#remove]) button.ariaDisabled = null;
    if (written !== undefined) this.done(written);
  }
}

const isFocused = (element: HTMLElement): boolean =>
  !element.hidden && (element.getRootNode() as ShadowRoot).activeElement === element;
