import { element } from "../element";
import type { Direction } from "./selection";

/** How an edit ended: where to go next, or given up. */
export type EditEnd =
  | {
      readonly kind: "commit";
      readonly text: string;
      readonly advance?: { readonly along: "rows" | "columns"; readonly step: 1 | -1 };
      readonly step?: Direction;
    }
  | { readonly kind: "cancel" };

export interface EditStart {
  readonly text: string;
  /** `type`: begun by typing, arrow keys finish it; `edit`: begun by F2, arrow keys move in the text. */
  readonly mode: "type" | "edit";
  readonly label: string;
  readonly box: {
    readonly left: number;
    readonly top: number;
    readonly width: number;
    readonly height: number;
  };
  readonly className: string;
}

/**
 * The text field over a cell while it is edited. `finish` says whether the text was taken; where it was not, the
 * field stays open with what she typed.
 */
export class CellEditor {
  private readonly field = element("textarea", "grid-editor");
  private mode: "type" | "edit" = "edit";
  private open = false;

  constructor(
    layer: HTMLElement,
    private readonly finish: (end: EditEnd) => boolean,
    private readonly changed: (text: string) => void,
  ) {
    this.field.hidden = true;
    this.field.rows = 1;
    this.field.spellcheck = false;
    this.field.setAttribute("autocomplete", "off");
    layer.append(this.field);
    this.field.addEventListener("keydown", (event) => {
      this.press(event);
    });
    this.field.addEventListener("input", () => {
      this.grow();
      this.field.removeAttribute("aria-invalid");
      this.changed(this.field.value);
    });
    this.field.addEventListener("blur", () => {
      if (this.open) this.end({ kind: "commit", text: this.field.value });
    });
  }

  get isOpen(): boolean {
    return this.open;
  }

  get text(): string {
    return this.field.value;
  }

  /** Opens over a cell and takes the focus, so that a key being pressed writes into it. */
  start(edit: EditStart): void {
    this.mode = edit.mode;
    this.field.className = `grid-editor ${edit.className}`;
    this.field.value = edit.text;
    this.field.setAttribute("aria-label", edit.label);
    this.field.removeAttribute("aria-invalid");
    this.field.style.left = `${String(edit.box.left)}px`;
    this.field.style.top = `${String(edit.box.top)}px`;
    this.field.style.minWidth = `${String(edit.box.width)}px`;
    this.field.style.minHeight = `${String(edit.box.height)}px`;
    this.field.hidden = false;
    this.open = true;
    this.grow();
    this.field.focus({ preventScroll: true });
    this.field.setSelectionRange(edit.text.length, edit.text.length);
  }

  /** Takes over what is typed elsewhere, in the formula bar. */
  mirror(text: string): void {
    this.field.value = text;
    this.grow();
  }

  /** Marks the text as refused; it stays as typed. */
  refuse(): void {
    this.field.setAttribute("aria-invalid", "true");
    this.field.focus({ preventScroll: true });
  }

  /** Puts the field away without a word. */
  close(): void {
    this.open = false;
    this.field.hidden = true;
  }

  private press(event: KeyboardEvent): void {
    if (event.isComposing) return;
    const end = this.endOf(event);
    if (end === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    this.end(end);
  }

  private endOf(event: KeyboardEvent): EditEnd | undefined {
    const text = this.field.value;
    const step = event.shiftKey ? -1 : 1;
    if (event.key === "Escape") return { kind: "cancel" };
    if (event.key === "Tab") return { kind: "commit", text, advance: { along: "rows", step } };
    if (event.key === "Enter") {
      if (event.altKey) {
        this.field.setRangeText("\n", this.field.selectionStart, this.field.selectionEnd, "end");
        this.grow();
        event.preventDefault();
        return undefined;
      }
      return { kind: "commit", text, advance: { along: "columns", step } };
    }
    if (event.key === "F2") this.mode = this.mode === "edit" ? "type" : "edit";
    if (this.mode === "type" && !event.shiftKey && !event.ctrlKey && !event.altKey && !event.metaKey) {
      const direction = ARROWS[event.key];
      if (direction !== undefined) return { kind: "commit", text, step: direction };
    }
    return undefined;
  }

  private end(end: EditEnd): void {
    this.open = false;
    const done = this.finish(end);
    if (done) this.field.hidden = true;
    else this.open = true;
  }

  private grow(): void {
    this.field.style.width = "auto";
    this.field.style.height = "auto";
    const longest = Math.max(...this.field.value.split("\n").map((line) => line.length));
    this.field.cols = Math.min(60, Math.max(4, longest + 2));
    this.field.style.height = `${String(this.field.scrollHeight + 2)}px`;
  }
}

const ARROWS: Readonly<Record<string, Direction>> = {
  ArrowUp: "up",
  ArrowDown: "down",
  ArrowLeft: "left",
  ArrowRight: "right",
};
