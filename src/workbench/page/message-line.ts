import { element } from "../element";

/**
 * The line under the commands where refusals and failures stand until put away. Screen readers are told at once.
 */
export class MessageLine {
  private readonly text = element("p", "message-text");

  /** @param line - an element with role alert that is in the page from the start */
  constructor(private readonly line: HTMLElement) {
    const close = element("button", "button");
    close.type = "button";
    close.textContent = "Put away";
    close.addEventListener("click", () => {
      this.clear();
      this.onClose?.();
    });
    this.line.append(this.text, close);
    this.clear();
  }

  /** Called when she puts the message away, to give the focus back to where she worked. */
  onClose: (() => void) | undefined;

  /** The message that stands there now. */
  get shown(): string | undefined {
    return this.line.hidden ? undefined : (this.text.textContent ?? undefined);
  }

  /** Shows a message; it replaces the one before. */
  show(message: string): void {
    this.line.hidden = false;
    this.text.textContent = message;
  }

  clear(): void {
    this.line.hidden = true;
    this.text.textContent = "";
  }
}
