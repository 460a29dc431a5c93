import type { BrailledDraft } from "./brailled-draft";
import type { BrailledRemarks } from "./brailled-entries";
import { countInWords } from "./count-words";
import { make } from "./markup";
import { setText } from "./select-filling";

const LEAVE = "Leave this writing";
const LEAVE_SURELY = "Leave it: what was written and its time will be lost";

/** What is asked for from the panel. */
export interface BrailledPanelActions {
  compare(): void;
  leave(): void;
  write(): void;
  drill(): void;
  setSeconds(seconds: number): void;
}

/** Everything around the field: the text asked for, dictation, buttons, the result with its fields. */
export class BrailledPanel {
  readonly element = make("div");
  readonly #title = make("h3", { tabindex: "-1" });
  readonly #asked = make("p");
  readonly #askedBlock = make(
    "details",
    { open: true },
    make("summary", {}, "The text, for you"),
    this.#asked,
  );
  readonly #clock: HTMLElement;
  readonly #compare: HTMLButtonElement;
  readonly #leave: HTMLButtonElement;
  readonly #drill: HTMLButtonElement;
  readonly #seconds = make("input", { type: "number", min: "1", step: "0.1" });
  readonly #secondsField = make("label", { class: "field" }, "Seconds", this.#seconds);
  readonly #support = make("input", { type: "text", autocomplete: "off" });
  readonly #note = make("input", { type: "text", autocomplete: "off" });
  readonly #result = make("div");

  /** @param parts - the clock, the dictation, the field and the review, in their places */
  constructor(
    parts: {
      readonly clock: HTMLElement;
      readonly dictation: Node;
      readonly pad: Node;
      readonly review: Node;
    },
    actions: BrailledPanelActions,
  ) {
    const button = (label: string, act: () => void, kind?: "main"): HTMLButtonElement => {
      const made = make("button", { type: "button", ...(kind && { class: kind }) }, label);
      made.addEventListener("click", act);
      return made;
    };
    this.#clock = parts.clock;
    this.#compare = button("Compare", actions.compare, "main");
    this.#leave = button(LEAVE, actions.leave);
    this.#drill = button("Make a drill of the signs in error", actions.drill);
    this.#seconds.addEventListener("change", () => {
      const seconds = Number(this.#seconds.value);
      if (seconds > 0) actions.setSeconds(seconds);
    });
    this.#result.append(
      make("h4", { tabindex: "-1" }, "Result"),
      parts.review,
      make(
        "div",
        { class: "fields" },
        this.#secondsField,
        make("label", { class: "field" }, "Support given, if any", this.#support),
        make("label", { class: "field wide" }, "Note", this.#note),
      ),
      make(
        "div",
        { class: "buttons" },
        button("Write into the workbook", actions.write, "main"),
        this.#drill,
      ),
    );
    this.element.append(
      this.#title,
      this.#askedBlock,
      parts.dictation,
      this.#clock,
      parts.pad,
      make("div", { class: "buttons" }, this.#compare, this.#leave),
      this.#result,
    );
  }

  get remarks(): BrailledRemarks {
    return { support: this.#support.value.trim(), note: this.#note.value.trim() };
  }

  /** Whether she was asked if she means to lose the writing. */
  get isAsking(): boolean {
    return this.#leave.textContent !== LEAVE;
  }

  ask(): void {
    this.#leave.textContent = LEAVE_SURELY;
  }

  /** @param words - of the text, or its signs */
  show(draft: BrailledDraft | undefined, words: number): void {
    this.element.hidden = draft === undefined;
    if (draft === undefined) return;
    const { pupil, title, text, code, medium, isTimed } = draft.task;
    const what = countInWords(words, code === "signs" ? "sign" : "word");
    setText(this.#title, `${pupil}: ${title === "" ? what : `${title}, ${what}`}, ${medium}`);
    setText(this.#asked, text);
    this.#clock.hidden = !isTimed;
    this.#compare.textContent = draft.isCompared ? "Compare again" : "Compare";
    this.#result.hidden = !draft.isCompared;
    this.#secondsField.hidden = !isTimed;
    this.#seconds.value = String(draft.seconds ?? "");
  }

  /** @param can - whether there are signs in error to drill */
  set canDrill(can: boolean) {
    this.#drill.hidden = !can;
  }

  /** Whether a comparison is under way. */
  get isBusy(): boolean {
    return this.#compare.hasAttribute("aria-disabled");
  }

  set isBusy(busy: boolean) {
    if (busy) this.#compare.setAttribute("aria-disabled", "true");
    else this.#compare.removeAttribute("aria-disabled");
  }

  /** Empties what belongs to one writing. */
  clear(): void {
    for (const field of [this.#support, this.#note]) field.value = "";
    this.#leave.textContent = LEAVE;
  }

  focusResult(): void {
    this.#result.querySelector("h4")?.focus();
  }
}
