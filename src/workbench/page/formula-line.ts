import type { Area } from "../../domain/area";
import { formatArea, formatCell, parseArea } from "../../spreadsheet/address";
import type { GridElement } from "../grid/grid-element";
import type { GridModel } from "../grid/grid-model";

/** The line above the grid: a field that says and takes where the selection is, and one for the cell's contents. */
export class FormulaLine {
  private isOwnEdit = false;

  constructor(
    private readonly place: HTMLInputElement,
    private readonly contents: HTMLTextAreaElement,
    private readonly grid: GridElement,
    private readonly model: () => GridModel | undefined,
    private readonly resolve: (name: string) => { readonly sheet: string; readonly area: Area } | undefined,
    private readonly refuse: (message: string) => void,
  ) {
    place.addEventListener("keydown", (event) => {
      if (event.key === "Escape") this.leave();
      else if (event.key === "Enter") this.go();
      else return;
      event.preventDefault();
    });
    place.addEventListener("focus", () => {
      place.select();
    });
    contents.addEventListener("input", () => {
      this.isOwnEdit = true;
    });
    contents.addEventListener("keydown", (event) => {
      this.press(event);
    });
    contents.addEventListener("blur", () => {
      if (this.isOwnEdit) this.commit();
    });
    grid.addEventListener("grid-select", () => {
      this.show();
    });
    grid.addEventListener("grid-edit", (event) => {
      const text: unknown = event instanceof CustomEvent ? event.detail : undefined;
      if (typeof text === "string") contents.value = text;
      else this.show();
    });
  }

  /** Gives the focus to the field that goes to a cell. */
  focusPlace(): void {
    this.place.focus();
  }

  /** Shows the selection and the active cell's contents. */
  show(): void {
    const model = this.model();
    const sheet = model?.sheets.find(({ name }) => name === this.grid.sheetName);
    if (model === undefined || sheet === undefined || this.isOwnEdit) return;
    const { row, column } = this.grid.active;
    this.place.value = formatArea(this.grid.area);
    this.contents.value = model.editText(sheet, this.grid.active);
    this.contents.setAttribute("aria-label", `Contents of ${formatCell(row, column)}`);
  }

  private press(event: KeyboardEvent): void {
    if (event.isComposing) return;
    if (event.key === "Escape") {
      this.isOwnEdit = false;
      this.leave();
    } else if (event.key === "Enter" && !event.altKey && !event.shiftKey) {
      if (this.commit()) this.grid.run({ kind: "advance", along: "columns", step: 1 });
    } else return;
    event.preventDefault();
  }

  private commit(): boolean {
    this.isOwnEdit = false;
    const taken = this.grid.enterActive(this.contents.value);
    this.isOwnEdit = !taken;
    return taken;
  }

  private go(): void {
    const text = this.place.value.trim();
    const sheet = this.grid.sheetName;
    const area = parseArea(text);
    if (area !== undefined && sheet !== undefined) {
      this.grid.goTo(sheet, area);
      return;
    }
    const target = this.resolve(text);
    if (target === undefined)
      this.refuse(`“${text}” is not a cell, a table or a name of this workbook. Type a cell such as B12.`);
    else this.grid.goTo(target.sheet, target.area);
  }

  private leave(): void {
    this.show();
    this.grid.focusCell();
  }
}
