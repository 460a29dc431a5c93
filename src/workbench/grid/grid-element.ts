import type { Area } from "../../domain/area";
import { formatArea } from "../../spreadsheet/address";
import { columnOf, rowOf } from "../../spreadsheet/workbook";
import type { EditEnd } from "./cell-editor";
import type { CellFacts } from "./cell-speech";
import { GridClipboard } from "./grid-clipboard";
import { GridDisplay } from "./grid-display";
import { GridEditing } from "./grid-editing";
import type { EditReport } from "./grid-edits";
import { runEdit } from "./grid-edits";
import { gatherFacts } from "./grid-facts";
import type { GridModel, ModelChange } from "./grid-model";
import { GridScene } from "./grid-scene";
import type { GridCommand } from "./key-command";
import { commandOf } from "./key-command";
import { listenToPointer } from "./pointer";
import type { Place, Selection } from "./selection";
import { isSame, leadingPlace, selectArea, selectPlace, selectedArea } from "./selection";
import type { MoveScene } from "./selection-moves";
import { moveSelection } from "./selection-moves";

/** Fired on the grid, each with the detail named. */
export interface GridEvents {
  /** Words for the live region. */
  readonly "grid-say": string;
  /** A refusal: words for the message line. */
  readonly "grid-refuse": string;
  /** Another cell or sheet is selected, or its contents changed. */
  readonly "grid-select": { readonly sheet: string; readonly area: Area };
  /** A command for the page around the grid. */
  readonly "grid-command": GridCommand;
  /** Text of the editor as it is typed; undefined when it closes. */
  readonly "grid-edit": string | undefined;
}

interface LeftSheet {
  readonly selection: Selection;
  readonly scroll: { readonly top: number; readonly left: number };
}

const HOME: Place = { row: 0, column: 0 };
/** This near to the edge of what is laid out, more of the sheet is. */
const EDGE_ROWS = 60;
const EDGE_COLUMNS = 4;

/** The sheet of a workbook as an accessible grid: see grid-model.ts for what it shows. */
export class GridElement extends HTMLElement {
  private parts: { readonly display: GridDisplay; readonly editing: GridEditing } | undefined;
  private scene: GridScene | undefined;
  private selection: Selection = selectPlace(HOME);
  private readonly left = new Map<string, LeftSheet>();
  private readonly clipboard = new GridClipboard();
  private stopListening: (() => void) | undefined;

  connectedCallback(): void {
    if (this.parts !== undefined) return;
    const display = new GridDisplay(this);
    const editing = new GridEditing({
      display,
      scene: () => this.scene,
      active: () => this.active,
      say: (text) => this.tell("grid-say", text),
      refuse: (text) => this.tell("grid-refuse", text),
      typed: (text) => this.tell("grid-edit", text),
      leave: (end) => {
        this.leaveEdit(end);
      },
    });
    this.parts = { display, editing };
    this.listen(display);
  }

  /** Shows a workbook, beginning with this sheet. */
  open(model: GridModel, sheet: string): void {
    this.stopListening?.();
    this.left.clear();
    this.editing.pending.clear();
    this.stopListening = model.onChange((changes) => {
      this.follow(changes);
    });
    this.scene = undefined;
    this.display.forgetLooks();
    this.showOf(model, sheet);
  }

  /** Shows another sheet of the same workbook, where it was last left. */
  showSheet(name: string): void {
    if (this.scene !== undefined && name !== this.sheetName) this.showOf(this.scene.model, name);
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

  /** What there is to say about the active cell. @throws {RangeError} before a workbook is open */
  facts(): CellFacts {
    if (this.scene === undefined) throw new RangeError("no workbook is open");
    return gatherFacts(this.scene, this.active);
  }

  /** Where the active cell is in the window. */
  activeBox(): DOMRect {
    return (this.display.activeCell ?? this).getBoundingClientRect();
  }

  /** Selects an area of a sheet, brings it into view and takes the focus. */
  goTo(sheet: string, area: Area): void {
    if (this.scene === undefined) return;
    this.showSheet(sheet);
    this.select(selectArea(area));
    this.focusCell();
  }

  /** Gives the focus to the active cell. */
  focusCell(): void {
    this.display.focus();
  }

  /** Enters a text into the active cell as the formula bar gives it. @returns whether it was taken */
  enterActive(text: string): boolean {
    return this.editing.end({ kind: "commit", text });
  }

  /** Carries out a command as if its key had been pressed. */
  run(command: GridCommand): void {
    const { scene } = this;
    if (scene === undefined) return;
    const moved = moveSelection(this.selection, command, this.moveScene(scene));
    const report = moved === undefined ? runEdit(scene, command, this.area) : undefined;
    if (moved !== undefined) this.move(moved, command);
    else if (report !== undefined) this.report(report);
    else if (command.kind === "edit")
      this.editing.start(scene.model.editText(scene.sheet, this.active), "edit");
    else if (command.kind === "type") this.editing.start("", "type");
    else if (command.kind === "choose") this.editing.offerChoices();
    else this.tell("grid-command", command);
  }

  /** Puts a text where the selection is, as Ctrl+V does; without one what was last taken here. */
  paste(text?: string): void {
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

  private get display(): GridDisplay {
    return this.standing().display;
  }

  private get editing(): GridEditing {
    return this.standing().editing;
  }

  private standing(): { readonly display: GridDisplay; readonly editing: GridEditing } {
    if (this.parts === undefined) throw new TypeError("the grid is not in the page yet");
    return this.parts;
  }

  private listen(display: GridDisplay): void {
    const { grid } = display.frame;
    grid.addEventListener("keydown", (event) => {
      this.press(event);
    });
    for (const kind of ["copy", "cut", "paste"] as const) {
      grid.addEventListener(kind, (event) => {
        if (this.scene === undefined || event.clipboardData === null) return;
        event.preventDefault();
        if (kind === "paste") this.paste(event.clipboardData.getData("text/plain"));
        else event.clipboardData.setData("text/plain", this.take(kind === "cut"));
      });
    }
    listenToPointer(display.frame, display.rows, {
      select: (place, extend) => {
        this.select(extend ? { ...this.selection, extent: place } : selectPlace(place));
      },
      selectRows: (top, bottom) => {
        this.selectWhole({ top, bottom });
      },
      selectColumns: (left, right) => {
        this.selectWhole({ left, right });
      },
      edit: () => {
        this.run({ kind: "edit" });
      },
      menu: () => {
        this.run({ kind: "menu" });
      },
      hover: (place) => {
        display.showNote(place);
      },
    });
  }

  private press(event: KeyboardEvent): void {
    const command = commandOf(event);
    if (command === undefined || this.scene === undefined) return;
    if (command.kind === "one-cell") this.display.hideNote();
    if (command.kind === "advance" && command.along === "rows" && !this.canAdvance(command.step)) return;
    this.run(command);
    if (command.kind !== "type") event.preventDefault();
  }

  /** At the sheet's first and last cell, Tab leaves the grid instead of keeping the focus for ever. */
  private canAdvance(step: 1 | -1): boolean {
    if (this.scene === undefined) return false;
    const next = moveSelection(
      this.selection,
      { kind: "advance", along: "rows", step },
      this.moveScene(this.scene),
    );
    return next !== undefined && !isSame(next.active, this.active);
  }

  private move(moved: Selection, command: GridCommand): void {
    const before = formatArea(this.area);
    this.select(moved);
    this.focusCell();
    const after = formatArea(this.area);
    if (after === before) return;
    if (after.includes(":")) this.tell("grid-say", `${after.replace(":", " to ")} selected`);
    else if (command.kind === "one-cell") this.tell("grid-say", "One cell selected");
  }

  private selectWhole(sides: Partial<Area>): void {
    if (this.scene === undefined) return;
    const { rows, columns } = this.scene;
    const whole = selectArea({ top: 0, left: 0, bottom: rows.count - 1, right: columns.count - 1, ...sides });
    this.select(whole, false);
    this.focusCell();
  }

  private select(selection: Selection, show = true): void {
    const { scene } = this;
    if (scene === undefined) return;
    this.selection = { ...selection, active: leadingPlace(selection.active, scene.merges) };
    const target = isSame(selection.anchor, selection.active) ? selection.extent : selection.active;
    const nearEdge =
      target.row > scene.rows.count - EDGE_ROWS || target.column > scene.columns.count - EDGE_COLUMNS;
    if (nearEdge && show) this.layOut(target);
    if (show) this.display.bringIntoView(target);
    this.display.select(this.area, this.active);
    this.tell("grid-select", { sheet: scene.sheet.name, area: this.area });
  }

  private leaveEdit(end: EditEnd): void {
    if (end.kind === "cancel") this.focusCell();
    else if (end.advance !== undefined) this.run({ kind: "advance", ...end.advance });
    else if (end.step !== undefined) this.run({ kind: "step", direction: end.step, extend: false });
  }

  private report(report: EditReport): void {
    if (!report.ok) {
      this.tell("grid-refuse", report.said);
      return;
    }
    if (report.sheet !== undefined) this.showSheet(report.sheet);
    if (report.area !== undefined) this.select(selectArea(report.area));
    this.focusCell();
    if (report.said !== undefined) this.tell("grid-say", report.said);
  }

  private follow(changes: readonly ModelChange[]): void {
    const { scene } = this;
    if (scene === undefined) return;
    const here = changes.filter(({ sheet }) => sheet === scene.sheet.name);
    const said = this.editing.pending.settle(scene, changes);
    if (here.length > 0) {
      const keys = here.flatMap(({ keys: changed }) => changed ?? []);
      const beyond = keys.some(
        (key) => rowOf(key) > scene.lastUsed.row || columnOf(key) > scene.lastUsed.column,
      );
      if (beyond || here.some(({ keys: changed }) => changed === undefined)) this.layOut();
      else this.display.repaint(new Set(keys.map(rowOf)));
      this.display.describe();
      this.tell("grid-select", { sheet: scene.sheet.name, area: this.area });
    }
    if (said !== undefined) this.tell("grid-say", said);
  }

  private showOf(model: GridModel, name: string): void {
    const sheet = model.sheets.find((candidate) => candidate.name === name);
    if (sheet === undefined) return;
    if (this.sheetName !== undefined)
      this.left.set(this.sheetName, { selection: this.selection, scroll: this.display.scroll });
    const last = this.left.get(name);
    this.selection = last?.selection ?? selectPlace(leadingPlace(HOME, sheet.merges));
    this.scene = new GridScene(model, name, this.active);
    this.layOut();
    this.display.scroll = last?.scroll ?? { top: 0, left: 0 };
    this.tell("grid-select", { sheet: name, area: this.area });
  }

  /** Lays the sheet out anew: its rows, tables or reach changed. */
  private layOut(reaching: Place = this.active): void {
    if (this.scene === undefined) return;
    this.scene = new GridScene(this.scene.model, this.scene.sheet.name, reaching);
    this.display.select(this.area, this.active);
    this.display.layOut(this.scene);
  }

  private moveScene(scene: GridScene): MoveScene {
    const { rows, columns, merges, lastUsed } = scene;
    const isFilled = (row: number, column: number): boolean => scene.isFilled(row, column);
    return { rows, columns, merges, lastUsed, isFilled, pageHeight: this.display.pageHeight };
  }

  private tell<K extends keyof GridEvents>(name: K, detail: GridEvents[K]): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true }));
  }
}
