import type { Area } from "../../domain/area";
import { formatColumn } from "../../spreadsheet/address";
import type { GridFrame } from "./grid-frame";
import { element } from "../element";
import { HEADING_WIDTH } from "./grid-frame";
import type { GridScene } from "./grid-scene";
import type { Place } from "./selection";
import type { Span } from "./virtual-window";

/** The letters above the columns. A screen reader also hears the name of the table's column there. */
export class HeadingsView {
  private readonly drawn = new Map<number, HTMLElement>();

  constructor(private readonly frame: GridFrame) {}

  /** Removes all letters: another sheet. */
  clear(): void {
    for (const heading of this.drawn.values()) heading.remove();
    this.drawn.clear();
  }

  /** Keeps the letters of the frozen columns, of those in view and of the active one. */
  show(scene: GridScene, columns: Span, active: Place): void {
    const wanted = new Set<number>([active.column]);
    for (let column = 0; column < scene.frozen.columns; column += 1) wanted.add(column);
    for (let column = columns.first; column <= columns.last; column += 1) wanted.add(column);
    for (const [column, heading] of this.drawn) {
      if (wanted.has(column)) continue;
      heading.remove();
      this.drawn.delete(column);
    }
    let next = this.frame.headings.firstElementChild;
    for (const column of [...wanted].sort((a, b) => a - b)) {
      if (scene.columns.sizeOf(column) === 0) continue;
      const known = this.drawn.get(column);
      if (known !== undefined) next = known.nextElementSibling;
      else this.frame.headings.insertBefore(this.add(scene, column), next);
    }
  }

  /** Marks the columns of the selection and names those of the table that the active cell is in. */
  mark(scene: GridScene, selected: Area, active: Place): void {
    const table = scene.tableAt(active);
    for (const [column, heading] of this.drawn) {
      heading.classList.toggle("is-selected", column >= selected.left && column <= selected.right);
      const name = table?.headerRow === true ? table.columns[column - table.area.left]?.name : undefined;
      nameHeading(heading, column < (table?.area.left ?? 0) ? undefined : name);
    }
  }

  private add(scene: GridScene, column: number): HTMLElement {
    const heading = element("div", "grid-heading grid-column-heading", "columnheader");
    heading.textContent = formatColumn(column);
    heading.dataset["column"] = String(column);
    heading.setAttribute("aria-colindex", String(column + 1));
    heading.style.left = `${String(HEADING_WIDTH + scene.columns.startOf(column) - 1)}px`;
    heading.style.width = `${String(scene.columns.sizeOf(column) + 1)}px`;
    if (column < scene.frozen.columns) heading.dataset["frozen"] = "";
    this.drawn.set(column, heading);
    return heading;
  }
}

/** Puts the name of a table's column before its letter, heard and not seen. */
function nameHeading(heading: HTMLElement, name: string | undefined): void {
  const known = heading.querySelector(".heard");
  const words = name === undefined ? "" : `${name}, `;
  if (words === "") known?.remove();
  else if (known !== null) known.textContent = words;
  else {
    const made = element("span", "heard");
    made.textContent = words;
    heading.prepend(made);
  }
}
