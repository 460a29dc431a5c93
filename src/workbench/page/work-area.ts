import { explainCell } from "../grid/cell-speech";
import { GridElement } from "../grid/grid-element";
import type { GridCommand } from "../grid/key-command";
import { requireElement } from "../element";
import type { WorkbookModel } from "../model/workbook-model";
import { CellMenu } from "./cell-menu";
import { FindBar } from "./find-bar";
import { FormulaLine } from "./formula-line";
import type { MessageLine } from "./message-line";
import { SheetTabs } from "./sheet-tabs";
import type { Speech } from "./speech";
import { makeSplit } from "./split";
import { makeToolbar } from "./toolbar";

/** Everything of the page that works on the open workbook: commands, formula line, find bar, grid, tabs. */
export class WorkArea {
  readonly grid = requireElement("grid", GridElement);
  readonly tabs: SheetTabs;
  readonly line: FormulaLine;
  private readonly find: FindBar;
  private readonly menu = new CellMenu(requireElement("work", HTMLElement));
  private model: WorkbookModel | undefined;
  private stopFollowing: (() => void) | undefined;

  constructor(
    private readonly speech: Speech,
    private readonly message: MessageLine,
  ) {
    const { grid } = this;
    this.tabs = new SheetTabs(requireElement("sheet-tabs", HTMLElement), "grid", (name) => {
      grid.showSheet(name);
    });
    this.line = new FormulaLine(
      requireElement("cell-place", HTMLInputElement),
      requireElement("cell-contents", HTMLTextAreaElement),
      grid,
      () => this.model,
      (name) => this.model?.findTarget(name, grid.sheetName ?? ""),
      (text) => {
        message.show(text);
      },
    );
    this.find = new FindBar(requireElement("find-bar", HTMLFormElement), {
      grid,
      model: () => this.model,
      say: (text) => {
        speech.say(text);
      },
    });
    makeToolbar(requireElement("edit-bar", HTMLElement));
    makeSplit(requireElement("split-line", HTMLElement), requireElement("split", HTMLElement));
    this.listen();
  }

  /** Shows a workbook on its first visible sheet with cells. */
  open(model: WorkbookModel): void {
    this.model = model;
    const first = model.sheets.find(({ visibility, kind }) => visibility === "visible" && kind === "cells");
    if (first === undefined) {
      this.message.show("This workbook has no sheet with cells that could be shown.");
      return;
    }
    this.stopFollowing?.();
    // Before the grid listens: it must have left a sheet that is gone.
    this.stopFollowing = model.onChange(() => {
      this.followSheets(model);
    });
    this.grid.open(model, first.name);
    this.tabs.show(model.sheets, first.name);
    this.line.show();
  }

  /** Sheets come and go when the pane sets tables up, and when that is undone. */
  private followSheets({ sheets }: WorkbookModel): void {
    const { grid } = this;
    const current = grid.sheetName ?? "";
    const first = sheets.find(({ visibility, kind }) => visibility === "visible" && kind === "cells");
    if (first !== undefined && !sheets.some(({ name }) => name === current)) grid.showSheet(first.name);
    this.tabs.show(sheets, grid.sheetName ?? "");
  }

  private listen(): void {
    const { grid, speech, message } = this;
    grid.addEventListener("grid-say", (event) => {
      speech.say(detailOf<string>(event));
    });
    let refusal: string | undefined;
    grid.addEventListener("grid-refuse", (event) => {
      refusal = detailOf<string>(event);
      message.show(refusal);
    });
    grid.addEventListener("grid-edit", (event) => {
      const isClosed = detailOf<string | undefined>(event) === undefined;
      if (isClosed && message.shown === refusal) message.clear();
    });
    grid.addEventListener("grid-select", () => {
      if (this.model !== undefined) this.tabs.show(this.model.sheets, grid.sheetName ?? "");
    });
    grid.addEventListener("grid-command", (event) => {
      this.obey(detailOf<GridCommand>(event));
    });
    const commands: Readonly<Record<string, GridCommand>> = {
      "command-undo": { kind: "undo" },
      "command-redo": { kind: "redo" },
      "command-fill": { kind: "fill-down" },
      "command-insert": { kind: "insert-rows" },
      "command-delete": { kind: "delete-rows" },
      "command-find": { kind: "find" },
    };
    for (const [id, command] of Object.entries(commands)) {
      requireElement(id, HTMLButtonElement).addEventListener("click", () => {
        grid.run(command);
      });
    }
    const paneButton = requireElement("command-pane", HTMLButtonElement);
    paneButton.addEventListener("click", () => {
      const shown = paneButton.getAttribute("aria-pressed") !== "true";
      paneButton.setAttribute("aria-pressed", String(shown));
      requireElement("pane", HTMLElement).hidden = !shown;
      requireElement("split-line", HTMLElement).hidden = !shown;
    });
  }

  private obey(command: GridCommand): void {
    const { grid, speech } = this;
    if (command.kind === "find") this.find.open();
    else if (command.kind === "find-next") this.find.find(1);
    else if (command.kind === "find-previous") this.find.find(-1);
    else if (command.kind === "go-to") this.line.focusPlace();
    else if (command.kind === "next-sheet" || command.kind === "previous-sheet")
      this.turnSheet(command.kind === "next-sheet" ? 1 : -1);
    else if (command.kind === "menu") this.openMenu();
    else if (command.kind === "read-note") speech.say(explainCell(grid.facts()).join(" ") || "No note here.");
  }

  private turnSheet(step: 1 | -1): void {
    const { grid, speech } = this;
    const name = this.tabs.beside(grid.sheetName ?? "", step);
    if (name === undefined) {
      speech.say(step > 0 ? "This is the last sheet." : "This is the first sheet.");
      return;
    }
    grid.showSheet(name);
    grid.focusCell();
    speech.say(`Sheet ${name}`);
  }

  private openMenu(): void {
    const { grid } = this;
    const box = grid.activeBox();
    const command = (
      label: string,
      keys: string,
      kind: "fill-down" | "insert-rows" | "delete-rows" | "clear" | "edit" | "choose" | "undo",
    ) => ({
      label,
      keys,
      run: () => {
        grid.run({ kind });
      },
    });
    this.menu.open(
      [
        { label: "Cut", keys: "Ctrl+X", run: () => void this.copy(true) },
        { label: "Copy", keys: "Ctrl+C", run: () => void this.copy(false) },
        { label: "Paste", keys: "Ctrl+V", run: () => void this.paste() },
        command("Edit", "F2", "edit"),
        command("Choose from list", "Alt+Down", "choose"),
        command("Empty", "Delete", "clear"),
        command("Fill down", "Ctrl+D", "fill-down"),
        command("Insert rows above", "Ctrl+I", "insert-rows"),
        command("Delete rows", "Ctrl+Delete", "delete-rows"),
        command("Undo", "Ctrl+Z", "undo"),
      ],
      box.left,
      box.bottom,
      () => {
        grid.focusCell();
      },
    );
  }

  private async copy(cut: boolean): Promise<void> {
    const text = this.grid.take(cut);
    await navigator.clipboard.writeText(text).catch(() => {
      this.message.show("The browser did not let this page write to the clipboard. Press Ctrl+C instead.");
    });
  }

  /** Where the browser refuses to let the page read the clipboard, what was copied here is pasted. */
  private async paste(): Promise<void> {
    const text = await navigator.clipboard.readText().catch(() => undefined);
    this.grid.paste(text);
  }
}

/** The detail of an event of the grid, whose kind its name tells (see GridEvents). */
const detailOf = <T>(event: Event): T => (event as CustomEvent<T>).detail;
