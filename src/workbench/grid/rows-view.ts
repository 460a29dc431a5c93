import type { Area } from "../../domain/area";
import type { CellPainter } from "./cell-painter";
import { hearCell } from "./cell-painter";
import type { GridFrame } from "./grid-frame";
import { element } from "../element";
import { HEADING_WIDTH } from "./grid-frame";
import type { GridScene } from "./grid-scene";
import type { Place } from "./selection";
import { holds, leadingPlace, mergeAt } from "./selection";
import type { Span } from "./virtual-window";

interface DrawnRow {
  readonly element: HTMLElement;
  readonly heading: HTMLElement;
  readonly cells: Map<number, HTMLElement>;
}

/** What should stand in the page now. */
export interface DrawnWindow {
  readonly rows: Span;
  readonly columns: Span;
  readonly active: Place;
}

/** Keeps just the rows and cells in view in the page, in reading order, and redraws those that changed. */
export class RowsView {
  private readonly drawn = new Map<number, DrawnRow>();
  private marks: { readonly selected: Area; readonly active: Place } = {
    selected: { top: 0, left: 0, bottom: 0, right: 0 },
    active: { row: 0, column: 0 },
  };

  constructor(
    private readonly frame: GridFrame,
    private readonly painter: CellPainter,
  ) {}

  /** Removes everything: another sheet, or rows that moved. */
  clear(): void {
    for (const { element: row } of this.drawn.values()) row.remove();
    this.drawn.clear();
  }

  /**
   * Brings the page to this window. Rows that stay are not touched, and
   * the cell with the focus stays until another has it: a screen reader would read on from where a cell vanished.
   */
  show(scene: GridScene, view: DrawnWindow): void {
    const focused = document.activeElement;
    const held = [...this.drawn].find(([, { element: row }]) => row.contains(focused))?.[0];
    const rows = wantedRows(scene, view, held);
    const keep = new Set(rows);
    for (const [row, { element: drawn }] of this.drawn) {
      if (keep.has(row)) continue;
      drawn.remove();
      this.drawn.delete(row);
    }
    const next = { head: this.frame.head.firstElementChild, body: this.frame.body.firstElementChild };
    for (const row of rows) {
      const place = row < scene.frozen.rows ? "head" : "body";
      const known = this.drawn.get(row);
      const drawn = known ?? this.addRow(scene, row, this.frame[place], next[place]);
      if (known !== undefined) next[place] = known.element.nextElementSibling;
      this.fillRow(scene, row, drawn, view);
    }
  }

  /**
   * Draws the same sheet anew after its rows or tables changed. Elements stay: a screen reader that is told of
   * hundreds of new ones passes over what the page has to say.
   */
  refresh(scene: GridScene): void {
    for (const [row, { element: drawn, cells }] of this.drawn) {
      const isFrozen = drawn.parentElement === this.frame.head;
      if (row >= scene.rows.count || isFrozen !== row < scene.frozen.rows) {
        drawn.remove();
        this.drawn.delete(row);
        continue;
      }
      placeRow(drawn, scene, row);
      for (const [column, cell] of cells) {
        this.paint(cell, scene, { row, column });
        placeCell(cell, scene, { row, column });
      }
    }
  }

  /** Redraws cells that stand in the page: those wanted. */
  repaint(scene: GridScene, isWanted: (row: number, column: number) => boolean): void {
    for (const [row, { cells }] of this.drawn) {
      for (const [column, cell] of cells) if (isWanted(row, column)) this.paint(cell, scene, { row, column });
    }
  }

  /** Marks the selected cells and makes the active one the only tab stop. */
  mark(selected: Area, active: Place): void {
    const isKnown = selected === this.marks.selected && active === this.marks.active;
    this.marks = { selected, active };
    for (const [row, { cells, heading }] of this.drawn) {
      heading.classList.toggle("is-selected", row >= selected.top && row <= selected.bottom);
      // While scrolling only new cells are to be marked, and they are when they are drawn.
      if (!isKnown) for (const [column, cell] of cells) this.markCell(cell, { row, column });
    }
  }

  private markCell(cell: HTMLElement, place: Place): void {
    const { selected, active } = this.marks;
    const several = selected.top < selected.bottom || selected.left < selected.right;
    const isActive = place.row === active.row && place.column === active.column;
    const isSelected = several && holds(selected, place);
    cell.classList.toggle("in-selection", isSelected && !isActive);
    cell.classList.toggle("is-active", isActive);
    // A single cell is selected by having the focus: saying so each time would only be chatter.
    if (isSelected) cell.setAttribute("aria-selected", "true");
    else if (cell.hasAttribute("aria-selected")) cell.removeAttribute("aria-selected");
    if (isActive) cell.tabIndex = 0;
    else if (cell.hasAttribute("tabindex")) {
      cell.removeAttribute("tabindex");
      cell.removeAttribute("aria-description");
      cell.removeAttribute("aria-haspopup");
      hearCell(cell, undefined);
    }
  }

  private paint(cell: HTMLElement, scene: GridScene, place: Place): void {
    this.painter.paint(cell, scene, place);
    this.markCell(cell, place);
  }

  cellAt({ row, column }: Place): HTMLElement | undefined {
    return this.drawn.get(row)?.cells.get(column);
  }

  /** The place of the cell that an element of the page belongs to. */
  placeOf(target: Element): Place | undefined {
    const cell = target.closest<HTMLElement>(".grid-cell");
    const row = cell?.parentElement?.dataset["row"];
    const column = cell?.dataset["column"];
    return row === undefined || column === undefined
      ? undefined
      : { row: Number(row), column: Number(column) };
  }

  private addRow(scene: GridScene, row: number, group: HTMLElement, before: Element | null): DrawnRow {
    const made = element("div", "grid-row", "row");
    const heading = element("div", "grid-heading grid-row-heading", "rowheader");
    made.dataset["row"] = String(row);
    made.setAttribute("aria-rowindex", String(row + 1));
    placeRow(made, scene, row);
    heading.textContent = String(row + 1);
    made.append(heading);
    group.insertBefore(made, before);
    const drawn = { element: made, heading, cells: new Map<number, HTMLElement>() };
    this.drawn.set(row, drawn);
    return drawn;
  }

  private fillRow(scene: GridScene, row: number, drawn: DrawnRow, view: DrawnWindow): void {
    const columns = wantedColumns(scene, row, view);
    const keep = new Set(columns);
    for (const [column, cell] of drawn.cells) {
      if (keep.has(column) || cell === document.activeElement) continue;
      cell.remove();
      drawn.cells.delete(column);
    }
    let next = drawn.element.firstElementChild;
    for (const column of columns) {
      const known = drawn.cells.get(column);
      if (known !== undefined) {
        next = known.nextElementSibling;
        continue;
      }
      const cell = this.makeCell(scene, { row, column });
      drawn.element.insertBefore(cell, next);
      drawn.cells.set(column, cell);
    }
  }

  private makeCell(scene: GridScene, place: Place): HTMLElement {
    const cell = element("div", "grid-cell", "gridcell");
    cell.dataset["column"] = String(place.column);
    cell.setAttribute("aria-colindex", String(place.column + 1));
    this.paint(cell, scene, place);
    placeCell(cell, scene, place);
    return cell;
  }
}

function placeRow(drawn: HTMLElement, scene: GridScene, row: number): void {
  const top = scene.rows.startOf(row) - scene.rows.startOf(scene.frozen.rows);
  drawn.style.height = `${String(scene.rows.sizeOf(row) + 1)}px`;
  drawn.style.top = row < scene.frozen.rows ? "" : `${String(top)}px`;
}

function placeCell(cell: HTMLElement, scene: GridScene, place: Place): void {
  const { width, height } = scene.sizeOf(place);
  const merge = mergeAt(place, scene.merges);
  cell.style.width = `${String(width + 1)}px`;
  cell.style.height = `${String(height + 1)}px`;
  cell.style.left = `${String(HEADING_WIDTH + scene.columns.startOf(place.column) - 1)}px`;
  if (place.column < scene.frozen.columns) cell.dataset["frozen"] = "";
  else delete cell.dataset["frozen"];
  if (merge === undefined) {
    cell.removeAttribute("aria-rowspan");
    cell.removeAttribute("aria-colspan");
  } else {
    cell.setAttribute("aria-rowspan", String(merge.bottom - merge.top + 1));
    cell.setAttribute("aria-colspan", String(merge.right - merge.left + 1));
  }
}

function wantedRows(scene: GridScene, { rows, active }: DrawnWindow, held: number | undefined): number[] {
  const wanted = new Set<number>([active.row]);
  if (held !== undefined) wanted.add(held);
  for (let row = 0; row < scene.frozen.rows; row += 1) wanted.add(row);
  for (let row = rows.first; row <= rows.last; row += 1) wanted.add(row);
  for (const merge of scene.merges)
    if (merge.top <= rows.last && merge.bottom >= rows.first) wanted.add(merge.top);
  return [...wanted]
    .filter((row) => scene.rows.sizeOf(row) > 0 || row === active.row || row === held)
    .sort((a, b) => a - b);
}

function wantedColumns(scene: GridScene, row: number, { columns, active }: DrawnWindow): number[] {
  const wanted = new Set<number>();
  for (let column = 0; column < scene.frozen.columns; column += 1) wanted.add(column);
  for (let column = columns.first; column <= columns.last; column += 1) wanted.add(column);
  if (row === active.row) wanted.add(active.column);
  for (const merge of scene.merges) {
    if (merge.top <= row && merge.bottom >= row && merge.left <= columns.last && merge.right >= columns.first)
      wanted.add(merge.left);
  }
  return [...wanted]
    .filter((column) => scene.columns.sizeOf(column) > 0 || (row === active.row && column === active.column))
    .filter((column) => {
      const lead = leadingPlace({ row, column }, scene.merges);
      return lead.row === row && lead.column === column;
    })
    .sort((a, b) => a - b);
}
