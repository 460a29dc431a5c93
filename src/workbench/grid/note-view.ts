import { element } from "../element";

/**
 * The note beside a cell with focus or under the pointer: error messages, comments, what can be chosen. A screen
 * reader hears the same as the cell's description, so the note itself is hidden from it. Escape puts it away.
 */
export class NoteView {
  private readonly note = element("div", "grid-note");

  constructor(private readonly layer: HTMLElement) {
    this.note.hidden = true;
    this.note.setAttribute("aria-hidden", "true");
    layer.append(this.note);
  }

  get isShown(): boolean {
    return !this.note.hidden;
  }

  /** Shows sentences under a cell; nothing where there are none. */
  show(cell: HTMLElement, sentences: readonly string[]): void {
    this.note.hidden = sentences.length === 0;
    if (sentences.length === 0) return;
    this.note.replaceChildren(
      ...sentences.map((sentence) => {
        const line = document.createElement("p");
        line.textContent = sentence;
        return line;
      }),
    );
    const at = cell.getBoundingClientRect();
    const origin = this.layer.getBoundingClientRect();
    this.note.style.left = `${String(at.left - origin.left)}px`;
    this.note.style.top = `${String(at.bottom - origin.top + 4)}px`;
  }

  hide(): void {
    this.note.hidden = true;
  }
}
