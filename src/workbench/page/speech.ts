/** How long to wait for more to say, milliseconds: a move and its edit are told in one breath. */
const GATHERING = 120;

/** The page's polite live region: says the results of edits to a screen reader. */
export class Speech {
  private waiting: string[] = [];
  private timer: ReturnType<typeof setTimeout> | undefined;

  /** @param region - an element with role status */
  constructor(private readonly region: HTMLElement) {}

  /** Says a sentence after those that still wait; the same one twice is heard twice. */
  say(text: string): void {
    if (this.waiting.at(-1) !== text) this.waiting.push(text);
    if (this.timer !== undefined) return;
    this.region.textContent = "";
    this.timer = setTimeout(() => {
      this.timer = undefined;
      this.region.textContent = this.waiting.join(" ");
      this.waiting = [];
    }, GATHERING);
  }
}
