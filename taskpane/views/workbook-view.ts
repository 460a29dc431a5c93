import type { ColumnChoices } from "../../src/records/column-choices";
import { ColumnsView, defineColumnsView } from "./columns-view";
import type { CellPlace, PaneContext, PaneView } from "./pane-context";
import { paneStyles } from "./pane-styles";

const NAME = "cellwright-workbook";

/** What was found in the workbook, what needs a look, and her corrections. */
export class WorkbookView extends HTMLElement implements PaneView {
  #context: PaneContext | undefined;
  readonly #columns = new ColumnsView();

  constructor() {
    super();
    const root = this.attachShadow({ mode: "open" });
    root.adoptedStyleSheets = paneStyles();
    root.append(this.#columns);
    this.#columns.addEventListener("choices-changed", (event) => {
      void this.#context?.keepChoices((event as CustomEvent<ColumnChoices>).detail);
    });
    this.#columns.addEventListener("jump-to-cell", (event) => {
      this.#context?.jumpTo((event as CustomEvent<CellPlace>).detail);
    });
  }

  get context(): PaneContext {
    if (this.#context === undefined) throw new TypeError("The workbook view has no context yet.");
    return this.#context;
  }

  set context(context: PaneContext) {
    const last = this.#context;
    this.#context = context;
    if (context.state === "loading" || last?.records === context.records) return;
    this.#columns.choices = context.choices;
    this.#columns.blocks = context.records.blocks;
  }
}

/** Makes the view, and defines its elements first where they are not. */
export const makeWorkbookView = (): PaneView => {
  defineColumnsView();
  if (customElements.get(NAME) === undefined) customElements.define(NAME, WorkbookView);
  return new WorkbookView();
};
