import { formatCell } from "../../spreadsheet/address";
import type { GridElement } from "../grid/grid-element";
import type { GridModel } from "../grid/grid-model";
import { findCells, nextMatch } from "./cell-finder";

/** What the find bar works on. */
export interface FindScene {
  readonly grid: GridElement;
  readonly model: () => GridModel | undefined;
  readonly say: (text: string) => void;
}

/** The bar that finds text in the sheet shown: Enter finds the next match, Shift+Enter the one before. */
export class FindBar {
  private readonly field: HTMLInputElement;
  private readonly state: HTMLElement;

  /** @param bar - a form with an input, buttons named `previous` and `close`, and an output */
  constructor(
    private readonly bar: HTMLFormElement,
    private readonly scene: FindScene,
  ) {
    const field = bar.querySelector("input");
    const state = bar.querySelector("output");
    if (field === null || state === null) throw new TypeError("the find bar lacks its field or its output");
    this.field = field;
    this.state = state;
    bar.addEventListener("submit", (event) => {
      event.preventDefault();
      const backward = event.submitter instanceof HTMLButtonElement && event.submitter.name === "previous";
      this.find(backward ? -1 : 1);
    });
    bar.addEventListener("keydown", (event) => {
      if (event.key === "Escape") this.close();
      else if (event.key === "Enter" && event.shiftKey && event.target === field) this.find(-1);
      else return;
      event.preventDefault();
    });
    bar.querySelector("button[name=close]")?.addEventListener("click", () => {
      this.close();
    });
  }

  /** Opens the bar with its field focused. */
  open(): void {
    this.bar.hidden = false;
    this.state.textContent = "";
    this.field.focus();
    this.field.select();
  }

  /** Selects the next match (1) or the one before (-1) from the active cell; the focus stays where it is. */
  find(step: 1 | -1): void {
    const { grid, say } = this.scene;
    const model = this.scene.model();
    const sheet = model?.sheets.find(({ name }) => name === grid.sheetName);
    if (model === undefined || sheet === undefined) return;
    if (this.field.value === "") {
      this.open();
      return;
    }
    const found = findCells(model, sheet, this.field.value);
    const at = nextMatch(found, grid.active, step);
    const place = found[at];
    if (place === undefined) {
      this.state.textContent = "Not found on this sheet";
      say(`${this.field.value} is not on this sheet.`);
      return;
    }
    const inBar = this.bar.contains(document.activeElement);
    const holder = document.activeElement;
    grid.goTo(sheet.name, { top: place.row, bottom: place.row, left: place.column, right: place.column });
    this.state.textContent = `${String(at + 1)} of ${String(found.length)}`;
    if (!inBar || !(holder instanceof HTMLElement)) return;
    holder.focus();
    say(
      `${formatCell(place.row, place.column)}: ${model.shownText(sheet, place)}, match ${String(at + 1)} of ${String(found.length)}`,
    );
  }

  private close(): void {
    this.bar.hidden = true;
    this.scene.grid.focusCell();
  }
}
