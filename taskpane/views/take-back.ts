import { make } from "./markup";
import type { PaneContext } from "./pane-context";
import { setText } from "./select-filling";

/** What was written, in a sentence that stays in sight, and the button that takes it back. */
export class TakeBack {
  readonly element: HTMLElement;
  readonly #text = make("p", { role: "status" });
  readonly #button = make("button", { type: "button" }, "Take it back");
  #undo: (() => Promise<void>) | undefined;

  /**
   * @param context - what the writing goes through; a refusal is said there, and the button stays
   * @param takenBack - called when it is done, to put the focus somewhere: the button goes away
   */
  constructor(
    private readonly context: () => Pick<PaneContext, "write"> | undefined,
    private readonly takenBack: () => void,
  ) {
    this.element = make("div", { class: "kept" }, this.#text, this.#button);
    this.#button.hidden = true;
    this.#button.addEventListener("click", () => void this.#run());
  }

  /** Says what was done; with a way back the button is there. */
  tell(text: string, undo?: () => Promise<void>): void {
    setText(this.#text, text);
    this.#undo = undo;
    this.#button.hidden = undo === undefined;
  }

  focus(): void {
    this.#button.focus();
  }

  async #run(): Promise<void> {
    const undo = this.#undo;
    if (undo === undefined || this.#button.ariaDisabled === "true") return;
    this.#button.ariaDisabled = "true";
    const done = await this.context()?.write(async () => {
      await undo();
      return true;
    });
    this.#button.ariaDisabled = null;
    // Something else may have been written and told of in the meantime.
    if (done !== true || this.#undo !== undo) return;
    this.takenBack();
    this.tell("Taken back.");
  }
}
