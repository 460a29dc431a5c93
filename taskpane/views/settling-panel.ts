import { prepareBraille } from "./handout-braille";
import { make } from "./markup";
import { codeOf } from "./next-search";
import type { PaneContext } from "./pane-context";
import { setText } from "./select-filling";
import { chooseSettlingWords } from "./settling-words";
import { signsOf } from "./sign-standings";

const NO_WORDS =
  "The braille engine or the common words could not be loaded. Check that all files of the build are on the server, then try once more.";

/** What the panel asks of its view. */
export interface SettlingAsked {
  context(): PaneContext;
  /** names of the signs in question; none for all that are open */
  chosen(): readonly string[];
  /** takes the words as a text to be read aloud */
  take(passage: { readonly title: string; readonly text: string }): void;
}

/** A way to a text of words that settle most of what is open, handed over to the view for reading aloud. */
export class SettlingPanel {
  #run = 0;
  readonly #start = make("button", { type: "button" }, "Find words that settle most");
  readonly #cancel = make("button", { type: "button" }, "Cancel");
  readonly #progressText = make("span", { role: "status" });
  readonly #problem = make("p", { role: "alert", class: "notice" });
  readonly element = make(
    "div",
    {},
    make("div", { class: "buttons" }, this.#start, this.#progressText, this.#cancel),
    this.#problem,
  );

  constructor(private readonly asked: SettlingAsked) {
    this.#cancel.hidden = true;
    this.#problem.hidden = true;
    this.#start.addEventListener("click", () => void this.#choose());
    this.#cancel.addEventListener("click", () => {
      this.#end();
      this.#start.focus();
      this.asked.context().say("Cancelled.");
    });
  }

  async #choose(): Promise<void> {
    if (this.#start.ariaDisabled === "true") return;
    const context = this.asked.context();
    const { pupil, records, translators, wordBank } = context;
    if (pupil === undefined) return;
    const run = ++this.#run;
    this.#start.ariaDisabled = "true";
    this.#cancel.hidden = false;
    this.#problem.hidden = true;
    setText(this.#progressText, "Going through the common words…");
    try {
      const [braille, bank] = await Promise.all([
        prepareBraille(translators, records, pupil, codeOf({ records, pupil })),
        wordBank.load(),
      ]);
      // The page draws its progress before the words are gone through.
      await new Promise((resolve) => setTimeout(resolve));
      if (run !== this.#run) return;
      const { standings, all } = signsOf(context, pupil);
      const chosen = this.asked.chosen();
      const made = chooseSettlingWords(chosen.length > 0 ? all : standings, chosen, braille, bank);
      this.#end();
      if (!made.ok) {
        this.#refuse(made.fault.message);
        return;
      }
      const { title, text, words } = made.value;
      this.asked.take({ title, text });
      context.say(words);
    } catch {
      if (run !== this.#run) return;
      this.#end();
      this.#refuse(NO_WORDS);
    }
  }

  #end(): void {
    this.#run += 1;
    this.#start.ariaDisabled = null;
    this.#cancel.hidden = true;
    setText(this.#progressText, "");
  }

  #refuse(problem: string): void {
    setText(this.#problem, problem);
    this.#problem.hidden = false;
  }
}
