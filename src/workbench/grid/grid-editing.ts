import { formatCell } from "../../spreadsheet/address";
import type { EditEnd } from "./cell-editor";
import { CellEditor } from "./cell-editor";
import { ChoiceList } from "./choice-list";
import type { GridDisplay } from "./grid-display";
import { enterText } from "./grid-edits";
import type { GridScene } from "./grid-scene";
import { PendingResults } from "./pending-results";
import type { Place } from "./selection";

/** What editing needs of the grid around it. */
export interface EditingScene {
  readonly display: GridDisplay;
  readonly scene: () => GridScene | undefined;
  readonly active: () => Place;
  say(text: string): void;
  refuse(text: string): void;
  /** The text being typed; undefined when the editor closes. */
  typed(text: string | undefined): void;
  /** Where to go after an edit. */
  leave(end: EditEnd): void;
}

/** Editing of the active cell: in the cell, from the formula bar, or by choosing from its list. */
export class GridEditing {
  readonly pending = new PendingResults();
  private readonly editor: CellEditor;
  private readonly list: ChoiceList;

  constructor(private readonly around: EditingScene) {
    const { layer } = around.display.frame;
    this.list = new ChoiceList(layer);
    this.editor = new CellEditor(
      layer,
      (end) => this.end(end),
      (text) => {
        around.typed(text);
      },
    );
  }

  /** Opens the editor over the active cell. */
  start(text: string, mode: "type" | "edit"): void {
    const { display } = this.around;
    const { row, column } = this.around.active();
    display.bringIntoView({ row, column });
    display.hideNote();
    const look = [...(display.activeCell?.classList ?? [])]
      .filter((name) => name.startsWith("look-"))
      .join(" ");
    this.editor.start({
      text,
      mode,
      label: `Edit ${formatCell(row, column)}`,
      box: display.activeBox,
      className: look,
    });
    this.around.typed(text);
  }

  /** Ends an edit, wherever it was typed. @returns whether the text was taken */
  end(end: EditEnd): boolean {
    const scene = this.around.scene();
    if (scene === undefined) return true;
    if (end.kind === "commit" && !this.enter(scene, end.text)) return false;
    this.editor.close();
    this.around.typed(undefined);
    this.around.leave(end);
    return true;
  }

  /** Offers the list of what the active cell takes. */
  offerChoices(): void {
    const scene = this.around.scene();
    const { row, column } = this.around.active();
    const choices = scene?.model.choices(scene.sheet, { row, column });
    if (scene === undefined || choices === undefined || choices.length === 0) {
      this.around.say("This cell offers no list.");
      return;
    }
    const { display } = this.around;
    const { left, top, width, height } = display.activeBox;
    const current = scene.model.shownText(scene.sheet, { row, column });
    display.hideNote();
    this.list.open(
      choices,
      current,
      `Choices for ${formatCell(row, column)}`,
      { left, top: top + height, width },
      (text) => {
        if (text !== undefined) this.end({ kind: "commit", text });
        display.focus();
      },
    );
  }

  /** Enters a text that differs from what the cell holds; a refused one stays in the editor. */
  private enter(scene: GridScene, text: string): boolean {
    const place = this.around.active();
    if (text === scene.model.editText(scene.sheet, place)) return true;
    const report = enterText(scene, place, text);
    if (!report.ok) {
      this.around.refuse(report.said);
      this.editor.refuse();
      return false;
    }
    this.pending.expect(this.around.scene() ?? scene, place, text);
    if (report.said !== undefined) this.around.say(report.said);
    return true;
  }
}
