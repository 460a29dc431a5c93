import type { Area } from "../../domain/area";
import { CellPainter, hearCell } from "./cell-painter";
import type { Paper } from "./cell-look";
import { explainCell, nameCell } from "./cell-speech";
import { gatherFacts } from "./grid-facts";
import type { GridFrame } from "./grid-frame";
import { buildFrame } from "./grid-frame";
import type { GridScene } from "./grid-scene";
import { bringIntoView, roomOf, sizeSurface, visibleWindow } from "./grid-viewport";
import { HeadingsView } from "./headings-view";
import { LookSheet } from "./look-sheet";
import { NoteView } from "./note-view";
import { markObjects } from "./objects-view";
import { RowsView } from "./rows-view";
import type { Place } from "./selection";

/** A place over the cells, relative to the grid's layer, CSS pixels. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const HOME: Place = { row: 0, column: 0 };

/** Draws a scene with its selection: cells in view, headings, marks, the note, and what a screen reader hears. */
export class GridDisplay {
  readonly frame: GridFrame;
  readonly rows: RowsView;
  private readonly headings: HeadingsView;
  private readonly note: NoteView;
  private readonly looks: LookSheet;
  private scene: GridScene | undefined;
  private selected: Area = { top: 0, left: 0, bottom: 0, right: 0 };
  private active = HOME;
  private drawing = 0;
  private isStale = false;

  constructor(private readonly host: HTMLElement) {
    this.frame = buildFrame(host);
    this.looks = new LookSheet(this.paper());
    this.rows = new RowsView(this.frame, new CellPainter(this.looks));
    this.headings = new HeadingsView(this.frame);
    this.note = new NoteView(this.frame.layer);
    this.frame.scroller.addEventListener("scroll", () => {
      this.drawSoon();
    });
    new ResizeObserver(() => {
      this.drawSoon();
    }).observe(this.frame.scroller);
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => {
      this.forgetLooks();
      if (this.scene !== undefined) this.layOut(this.scene);
    });
    this.frame.grid.addEventListener("focusin", () => {
      this.describe();
    });
    this.frame.grid.addEventListener("focusout", () => {
      this.note.hide();
    });
  }

  /** Another workbook brings other styles. */
  forgetLooks(): void {
    this.isStale = true;
    this.looks.reset(this.paper());
  }

  /** Builds the page for a scene anew, reusing what stands there where it is the same sheet; scroll and focus stay. */
  layOut(scene: GridScene): void {
    const hadFocus = this.frame.grid.contains(document.activeElement);
    const isSame =
      this.scene?.model === scene.model && this.scene.sheet.name === scene.sheet.name && !this.isStale;
    this.scene = scene;
    this.isStale = false;
    if (isSame) this.rows.refresh(scene);
    else {
      this.rows.clear();
      this.headings.clear();
    }
    sizeSurface(this.frame, scene);
    markObjects(this.frame.layer, scene);
    this.draw();
    if (hadFocus) this.focus();
  }

  /** Shows a selection. */
  select(selected: Area, active: Place): void {
    this.selected = selected;
    this.active = active;
    this.draw();
  }

  /** Redraws the cells of some rows. */
  repaint(rows: ReadonlySet<number>): void {
    if (this.scene === undefined) return;
    this.rows.repaint(this.scene, (row) => rows.has(row));
    this.draw();
  }

  /** Scrolls just as far as needed to bring a cell into view. */
  bringIntoView(place: Place): void {
    if (this.scene !== undefined) bringIntoView(this.frame, this.scene, place);
  }

  /** How far the sheet is scrolled, CSS pixels. */
  get scroll(): { readonly top: number; readonly left: number } {
    return { top: this.frame.scroller.scrollTop, left: this.frame.scroller.scrollLeft };
  }

  set scroll({ top, left }: { readonly top: number; readonly left: number }) {
    this.frame.scroller.scrollTop = top;
    this.frame.scroller.scrollLeft = left;
    this.draw();
  }

  /** Height of the window for rows that scroll, CSS pixels. */
  get pageHeight(): number {
    return this.scene === undefined ? 0 : roomOf(this.frame, this.scene).height;
  }

  /** The active cell's element. */
  get activeCell(): HTMLElement | undefined {
    return this.rows.cellAt(this.active);
  }

  /** Where the active cell is over the layer. */
  get activeBox(): Box {
    const cell = this.activeCell?.getBoundingClientRect();
    const origin = this.frame.layer.getBoundingClientRect();
    if (cell === undefined) return { left: 0, top: 0, width: 80, height: 20 };
    return {
      left: cell.left - origin.left,
      top: cell.top - origin.top,
      width: cell.width,
      height: cell.height,
    };
  }

  /** Gives the focus to the active cell. */
  focus(): void {
    this.describe();
    this.activeCell?.focus({ preventScroll: true });
  }

  /** Names the active cell for a screen reader, and shows its note where the grid has the focus. */
  describe(): void {
    const { scene, activeCell } = this;
    if (scene === undefined || activeCell === undefined) return;
    const facts = gatherFacts(scene, this.active);
    const sentences = explainCell(facts);
    hearCell(activeCell, nameCell(facts));
    if (facts.choices) activeCell.setAttribute("aria-haspopup", "listbox");
    // That a list is offered is heard from the attribute; the sentence is for the note.
    const heard = explainCell({ ...facts, choices: false });
    if (heard.length > 0) activeCell.setAttribute("aria-description", heard.join(" "));
    else activeCell.removeAttribute("aria-description");
    if (this.frame.grid.contains(document.activeElement)) this.note.show(activeCell, sentences);
  }

  /** Shows the note of the cell under the pointer, or again that of the active one. */
  showNote(place: Place | undefined): void {
    const cell = this.rows.cellAt(place ?? this.active);
    if (this.scene === undefined || cell === undefined) return;
    const isFocused = this.frame.grid.contains(document.activeElement);
    if (place === undefined && !isFocused) this.note.hide();
    else this.note.show(cell, explainCell(gatherFacts(this.scene, place ?? this.active)));
  }

  hideNote(): void {
    this.note.hide();
  }

  private drawSoon(): void {
    if (this.drawing !== 0) return;
    this.drawing = requestAnimationFrame(() => {
      this.drawing = 0;
      this.draw();
    });
  }

  private draw(): void {
    const { scene } = this;
    if (scene === undefined) return;
    const view = visibleWindow(this.frame, scene, this.active);
    this.headings.show(scene, view.columns, this.active);
    this.rows.show(scene, view);
    this.rows.mark(this.selected, this.active);
    this.headings.mark(scene, this.selected, this.active);
  }

  private paper(): Paper {
    const read = (name: string): string => getComputedStyle(this.host).getPropertyValue(name).trim();
    return { paper: read("--sheet-paper"), ink: read("--sheet-ink"), gridLine: read("--sheet-line") };
  }
}
