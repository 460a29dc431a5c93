import type { Area } from "../../domain/area";
import { formatArea, formatCell } from "../../spreadsheet/address";
import { columnOf, rowOf } from "../../spreadsheet/workbook";
import type { Paper } from "./cell-look";
import type { EditEnd } from "./cell-editor";
import { CellEditor } from "./cell-editor";
import { CellPainter } from "./cell-painter";
import type { CellFacts } from "./cell-speech";
import { explainCell, nameCell } from "./cell-speech";
import { ChoiceList } from "./choice-list";
import { GridClipboard } from "./grid-clipboard";
import type { EditReport } from "./grid-edits";
import { enterText, runEdit } from "./grid-edits";
import { gatherFacts } from "./grid-facts";
import type { GridFrame } from "./grid-frame";
import { buildFrame } from "./grid-frame";
import type { GridModel, ModelChange } from "./grid-model";
import { GridScene } from "./grid-scene";
import { bringIntoView, roomOf, sizeSurface, visibleWindow } from "./grid-viewport";
import { HeadingsView } from "./headings-view";
import type { GridCommand } from "./key-command";
import { commandOf } from "./key-command";
import { LookSheet } from "./look-sheet";
import { NoteView } from "./note-view";
import { markObjects } from "./objects-view";
import { PendingResults } from "./pending-results";
import { listenToPointer } from "./pointer";
import { RowsView } from "./rows-view";
import type { Place, Selection } from "./selection";
import { isSame, leadingPlace, selectArea, selectPlace, selectedArea } from "./selection";
import { moveSelection } from "./selection-moves";

/** Fired on the grid, each with the detail named. */
export interface GridEvents {
  /** Words for the live region. */
  readonly "grid-say": string;
  /** A refusal: words for the message line. */
  readonly "grid-refuse": string;
  /** Another cell or sheet is selected. */
  readonly "grid-select": { readonly sheet: string; readonly area: Area };
  /** A command for the page around the grid. */
  readonly "grid-command": GridCommand;
  /** Text of the editor as it is typed; undefined when it closes. */
  readonly "grid-edit": string | undefined;
}

const HOME: Place = { row: 0, column: 0 };

/** The sheet of a workbook as an accessible grid: see grid-model.ts for what it shows. */
export class GridElement extends HTMLElement {
  private frame!: GridFrame;
  private rows!: RowsView;
  private headings!: HeadingsView;
  private editor!: CellEditor;
  private choices!: ChoiceList;
  private note!: NoteView;
  private looks!: LookSheet;
  private scene: GridScene | undefined;
  private selection: Selection = selectPlace(HOME);
  private readonly remembered = new Map<
    string,
    { readonly selection: Selection; readonly top: number; readonly left: number }
  >();
  private readonly clipboard = new GridClipboard();
  private readonly pending = new PendingResults();
  private stopListening: (() => void) | undefined;
  private drawing = 0;

  connectedCallback(): void {
    if (this.firstElementChild !== null) return;
    this.frame = buildFrame(this);
    this.looks = new LookSheet(this.paper());
    this.rows = new RowsView(this.frame, new CellPainter(this.looks));
    this.headings = new HeadingsView(this.frame);
    this.note = new NoteView(this.frame.layer);
    this.choices = new ChoiceList(this.frame.layer);
    this.editor = new CellEditor(
      this.frame.layer,
      (end) => this.endEdit(end),
      (text) => this.tell("grid-edit", text),
    );
    this.frame.scroller.addEventListener("scroll", () => {
      this.drawSoon();
    });
    new ResizeObserver(() => {
      this.drawSoon();
    }).observe(this.frame.scroller);
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => {
      this.looks.reset(this.paper());
      this.layOut();
    });
    this.frame.grid.addEventListener("keydown", (event) => {
      this.press(event);
    });
    this.frame.grid.addEventListener("focusin", () => {
      this.describeActive();
    });
    this.frame.grid.addEventListener("focusout", () => {
      this.note.hide();
    });
    for (const kind of ["copy", "cut", "paste"] as const) {
      this.frame.grid.addEventListener(kind, (event) => {
        this.useClipboard(kind, event);
      });
    }
    listenToPointer(this.frame, this.rows, {
      select: (place, extend) => {
        this.select(extend ? { ...this.selection, extent: place } : selectPlace(place), true);
      },
      selectRows: (from, to) => {
        this.selectWhole({ top: from, bottom: to });
      },
      selectColumns: (from, to) => {
        this.selectWhole({ left: from, right: to });
      },
      edit: () => {
        this.run({ kind: "edit" });
      },
      menu: () => {
        this.run({ kind: "menu" });
      },
      hover: (place) => {
        this.showNote(place ?? this.selection.active);
      },
    });
  }

  /** Shows a workbook, beginning with this sheet. */
  open(model: GridModel, sheet: string): void {
    this.stopListening?.();
    this.remembered.clear();
    this.pending.clear();
    this.stopListening = model.onChange((changes) => {
      this.follow(changes);
    });
    this.scene = undefined;
    this.looks.reset(this.paper());
    this.showOf(model, sheet);
  }

  /** Shows another sheet of the same workbook, where it was last left. */
  showSheet(name: string): void {
    if (this.scene !== undefined && name !== this.scene.sheet.name) this.showOf(this.scene.model, name);
  }

  get sheetName(): string | undefined {
    return this.scene?.sheet.name;
  }

  /** The selected cells. */
  get area(): Area {
    return selectedArea(this.selection, this.scene?.merges ?? []);
  }

  get active(): Place {
    return this.selection.active;
  }

  get isEditing(): boolean {
    return this.editor.isOpen;
  }

  /** What there is to say about the active cell. @throws {RangeError} before a workbook is open */
  facts(): CellFacts {
    if (this.scene === undefined) throw new RangeError("no workbook is open");
    return gatherFacts(this.scene, this.active);
  }

  /** Where the active cell is in the window. */
  activeBox(): DOMRect {
    return (this.rows.cellAt(this.active) ?? this).getBoundingClientRect();
  }

  /** Selects an area of a sheet, brings it into view and takes the focus. */
  goTo(sheet: string, area: Area): void {
    if (this.scene === undefined) return;
    this.showSheet(sheet);
    this.select(selectArea(area), true);
    this.focusCell();
  }

  /** Gives the focus to the active cell. */
  focusCell(): void {
    this.describeActive();
    this.rows.cellAt(this.selection.active)?.focus({ preventScroll: true });
  }

  /** Enters a text into the active cell as the formula bar gives it. @returns whether it was taken */
  enterActive(text: string): boolean {
    return this.endEdit({ kind: "commit", text });
  }

  /** Carries out a command as if its key had been pressed. */
  run(command: GridCommand): void {
    const { scene } = this;
    if (scene === undefined) return;
    const moved = moveSelection(this.selection, command, {
      ...terrain(scene),
      pageHeight: roomOf(this.frame, scene).height,
    });
    if (moved !== undefined) {
      this.move(moved, command);
      return;
    }
    const report = runEdit(scene, command, this.area);
    if (report !== undefined) this.report(report);
    else if (command.kind === "edit") this.startEdit(scene.model.editText(scene.sheet, this.active), "edit");
    else if (command.kind === "type") this.startEdit("", "type");
    else if (command.kind === "choose") this.offerChoices();
    else this.tell("grid-command", command);
  }

  /** Puts a text where the selection is, as Ctrl+V does. */
  paste(text: string | undefined): void {
    if (this.scene === undefined) return;
    this.report(this.clipboard.put(this.scene, this.area, text ?? this.clipboard.lastText ?? ""));
  }

  /** Takes the selected cells for the clipboard. @returns their text */
  take(cut: boolean): string {
    if (this.scene === undefined) return "";
    const { text, said } = this.clipboard.take(this.scene, this.area, cut);
    this.tell("grid-say", said);
    return text;
  }

  private press(event: KeyboardEvent): void {
    const command = commandOf(event);
    if (command === undefined || this.scene === undefined) return;
    if (command.kind === "one-cell" && this.note.isShown) this.note.hide();
    if (command.kind === "advance" && command.along === "rows" && !this.canAdvance(command.step)) return;
    this.run(command);
    if (command.kind !== "type") event.preventDefault();
  }

  /** At the sheet's first and last cell, Tab leaves the grid instead of trapping the focus. */
  private canAdvance(step: 1 | -1): boolean {
    const area = this.area;
    const single = area.top === area.bottom && area.left === area.right;
    const { scene } = this;
    if (!single || scene === undefined) return true;
    const next = moveSelection(
      this.selection,
      { kind: "advance", along: "rows", step },
      { ...terrain(scene), pageHeight: 0 },
    );
    return next !== undefined && !isSame(next.active, this.active);
  }

  private move(moved: Selection, command: GridCommand): void {
    const before = this.area;
    this.select(moved, true);
    this.focusCell();
    const area = this.area;
    const several = area.top !== area.bottom || area.left !== area.right;
    if (several && formatArea(area) !== formatArea(before))
      this.tell("grid-say", `${formatArea(area).replace(":", " to ")} selected`);
    else if (command.kind === "one-cell" && formatArea(area) !== formatArea(before))
      this.tell("grid-say", "One cell selected");
  }

  private selectWhole(sides: Partial<Area>): void {
    if (this.scene === undefined) return;
    const whole = {
      top: 0,
      left: 0,
      bottom: this.scene.rows.count - 1,
      right: this.scene.columns.count - 1,
      ...sides,
    };
    this.select(
      {
        ...selectArea(whole),
        active: leadingPlace({ row: whole.top, column: whole.left }, this.scene.merges),
      },
      false,
    );
    this.focusCell();
  }

  private select(selection: Selection, show: boolean): void {
    const { scene } = this;
    if (scene === undefined) return;
    this.selection = { ...selection, active: leadingPlace(selection.active, scene.merges) };
    const target = isSame(selection.anchor, selection.active) ? selection.extent : selection.active;
    const outside = target.row > scene.rows.count - 60 || target.column > scene.columns.count - 4;
    if (outside) this.layOut(target);
    if (show) bringIntoView(this.frame, this.scene ?? scene, target);
    this.draw();
    this.tell("grid-select", { sheet: scene.sheet.name, area: this.area });
  }

  private startEdit(text: string, mode: "type" | "edit"): void {
    const { scene } = this;
    if (scene === undefined) return;
    bringIntoView(this.frame, scene, this.active);
    this.draw();
    this.note.hide();
    const box = this.boxOf(this.active);
    const cell = this.rows.cellAt(this.active);
    if (cell === undefined) return;
    const look = [...cell.classList].filter((name) => name.startsWith("look-")).join(" ");
    this.editor.start({
      text,
      mode,
      label: `Edit ${formatCell(this.active.row, this.active.column)}`,
      box,
      className: look,
    });
    this.tell("grid-edit", text);
  }

  private endEdit(end: EditEnd): boolean {
    const { scene } = this;
    if (scene === undefined) return true;
    if (end.kind === "cancel") {
      this.editor.close();
      this.tell("grid-edit", undefined);
      this.focusCell();
      return true;
    }
    if (end.text !== scene.model.editText(scene.sheet, this.active)) {
      const place = this.active;
      const report = enterText(scene, place, end.text);
      if (!report.ok) {
        this.tell("grid-refuse", report.said);
        this.editor.refuse();
        return false;
      }
      this.pending.expect(this.scene ?? scene, place, end.text);
      if (report.said !== undefined) this.tell("grid-say", report.said);
    }
    this.editor.close();
    this.tell("grid-edit", undefined);
    if (end.advance !== undefined) this.run({ kind: "advance", ...end.advance });
    else if (end.step !== undefined) this.run({ kind: "step", direction: end.step, extend: false });
    return true;
  }

  private report(report: EditReport): void {
    if (!report.ok) {
      this.tell("grid-refuse", report.said);
      return;
    }
    if (report.sheet !== undefined) this.showSheet(report.sheet);
    if (report.area !== undefined) this.select({ ...selectArea(report.area) }, true);
    this.focusCell();
    if (report.said !== undefined) this.tell("grid-say", report.said);
  }

  private useClipboard(kind: "copy" | "cut" | "paste", event: ClipboardEvent): void {
    if (this.scene === undefined || event.clipboardData === null) return;
    event.preventDefault();
    if (kind === "paste") this.paste(event.clipboardData.getData("text/plain"));
    else event.clipboardData.setData("text/plain", this.take(kind === "cut"));
  }

  private offerChoices(): void {
    const { scene } = this;
    const choices = scene?.model.choices(scene.sheet, this.active);
    if (scene === undefined || choices === undefined || choices.length === 0) {
      this.tell("grid-say", "This cell offers no list.");
      return;
    }
    const address = formatCell(this.active.row, this.active.column);
    const box = this.boxOf(this.active);
    this.note.hide();
    const below = { left: box.left, top: box.top + box.height, width: box.width };
    this.choices.open(
      choices,
      scene.model.shownText(scene.sheet, this.active),
      `Choices for ${address}`,
      below,
      (text) => {
        if (text !== undefined) this.endEdit({ kind: "commit", text });
        this.focusCell();
      },
    );
  }

  private boxOf(place: Place): { left: number; top: number; width: number; height: number } {
    const cell = this.rows.cellAt(place)?.getBoundingClientRect();
    const origin = this.frame.layer.getBoundingClientRect();
    if (cell === undefined) return { left: 0, top: 0, width: 80, height: 20 };
    return {
      left: cell.left - origin.left,
      top: cell.top - origin.top,
      width: cell.width,
      height: cell.height,
    };
  }

  private follow(changes: readonly ModelChange[]): void {
    const { scene } = this;
    if (scene === undefined) return;
    const here = changes.filter(({ sheet }) => sheet === scene.sheet.name);
    const said = this.pending.settle(scene, changes);
    if (here.length > 0) {
      const keys = here.flatMap(({ keys }) => keys ?? []);
      const beyond = keys.some(
        (key) => rowOf(key) > scene.lastUsed.row || columnOf(key) > scene.lastUsed.column,
      );
      if (beyond || here.some(({ keys }) => keys === undefined)) this.layOut();
      else {
        const changedRows = new Set(keys.map(rowOf));
        this.rows.repaint(scene, (row) => changedRows.has(row));
        this.draw();
      }
      this.describeActive();
      this.tell("grid-select", { sheet: scene.sheet.name, area: this.area });
    }
    if (said !== undefined) this.tell("grid-say", said);
  }

  private showOf(model: GridModel, name: string): void {
    const sheet = model.sheets.find((candidate) => candidate.name === name);
    if (sheet === undefined) return;
    if (this.scene !== undefined) {
      const { scrollTop: top, scrollLeft: left } = this.frame.scroller;
      this.remembered.set(this.scene.sheet.name, { selection: this.selection, top, left });
    }
    const last = this.remembered.get(name);
    this.selection = last?.selection ?? selectPlace(leadingPlace(HOME, sheet.merges));
    this.scene = new GridScene(model, name, this.selection.active);
    this.layOut();
    this.frame.scroller.scrollTop = last?.top ?? 0;
    this.frame.scroller.scrollLeft = last?.left ?? 0;
    this.draw();
    this.tell("grid-select", { sheet: name, area: this.area });
  }

  /** Builds the sheet's page anew, keeping scroll and focus. */
  private layOut(reaching: Place = this.selection.active): void {
    if (this.scene === undefined) return;
    const hadFocus = this.frame.grid.contains(document.activeElement);
    const name = this.scene.sheet.name;
    this.scene = new GridScene(this.scene.model, name, reaching);
    this.rows.clear();
    this.headings.clear();
    sizeSurface(this.frame, this.scene);
    markObjects(this.frame.layer, this.scene);
    this.draw();
    if (hadFocus) this.focusCell();
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
    this.rows.mark(this.area, this.active);
    this.headings.mark(scene, this.area, this.active);
  }

  private describeActive(): void {
    const { scene } = this;
    const cell = this.rows.cellAt(this.active);
    if (scene === undefined || cell === undefined) return;
    const facts = gatherFacts(scene, this.active);
    const sentences = explainCell(facts);
    cell.setAttribute("aria-label", nameCell(facts));
    if (sentences.length > 0) cell.setAttribute("aria-description", sentences.join(" "));
    else cell.removeAttribute("aria-description");
    if (this.frame.grid.contains(document.activeElement)) this.note.show(cell, sentences);
  }

  private showNote(place: Place): void {
    const cell = this.rows.cellAt(place);
    if (this.scene !== undefined && cell !== undefined)
      this.note.show(cell, explainCell(gatherFacts(this.scene, place)));
  }

  private paper(): Paper {
    const read = (name: string): string => getComputedStyle(this).getPropertyValue(name).trim();
    return { paper: read("--sheet-paper"), ink: read("--sheet-ink"), gridLine: read("--sheet-line") };
  }

  private tell<K extends keyof GridEvents>(name: K, detail: GridEvents[K]): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true }));
  }
}

/** The part of a scene that moves depend on. */
const terrain = (scene: GridScene): Omit<Parameters<typeof moveSelection>[2], "pageHeight"> => ({
  rows: scene.rows,
  columns: scene.columns,
  merges: scene.merges,
  lastUsed: scene.lastUsed,
  isFilled: (row, column) => scene.isFilled(row, column),
});
