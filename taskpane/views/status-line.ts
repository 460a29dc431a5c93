import { make } from "./markup";

/** Milliseconds that a message stands at least, however often the workbook is read meanwhile: our choice, no source. */
const STANDING = 10_000;

/**
 * The pane's polite live region. A message stands until another is said, or until the workbook is read or a view opened
 * later than ten seconds after it. What went wrong with reading stands until a reading goes well, and no longer.
 */
export class StatusLine {
  readonly element = make("p", { role: "status", class: "status" });
  #saidAt = 0;
  #isProblem = false;

  /** @param now - milliseconds of any clock that only goes forward */
  constructor(private readonly now: () => number = () => performance.now()) {}

  /** Says something that was done, or why it was not. */
  say(text: string): void {
    this.#isProblem = false;
    this.#show(text);
  }

  /** Says that the workbook could not be read, beside a reading that still holds. */
  sayProblem(text: string): void {
    this.#isProblem = true;
    this.#show(text);
  }

  /** The workbook was read well: what is said of an earlier reading no longer holds. */
  readWell(): void {
    if (this.#isProblem) this.#clear();
    else this.goOn();
  }

  /** She went on: what was said some time ago has been heard. */
  goOn(): void {
    if (!this.#isProblem && this.now() - this.#saidAt >= STANDING) this.#clear();
  }

  #show(text: string): void {
    this.#saidAt = this.now();
    // The same words again would be spoken again.
    if (this.element.textContent !== text) this.element.textContent = text;
  }

  #clear(): void {
    this.#isProblem = false;
    if (this.element.textContent !== "") this.element.textContent = "";
  }
}
