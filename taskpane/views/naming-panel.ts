import { SIGN_MARKS } from "../../src/domain/probe/marked-signs";
import { countInWords } from "./count-words";
import { make } from "./markup";
import type { NamingDraft } from "./naming-draft";
import type { NamingRemarks } from "./naming-entries";
import { MARK_WORDS, SIGN_KEYS } from "./naming-row";
import { stageOf } from "./probe-time";
import { setText } from "./select-filling";

const LEAVE = "Leave this row";
const LEAVE_SURELY = "Leave it: its marks and time will be lost";
const KEYS = `Keys in the row: ${SIGN_MARKS.map((mark) => `${SIGN_KEYS[mark]} ${MARK_WORDS[mark]}`).join(
  ", ",
)}; the next sign comes by itself. Arrows go back to change a mark, Backspace takes the last one off; Enter starts and stops the clock.`;
const NOTHING_WRITTEN = "Mark one sign at least, or leave this row.";

/** What is asked for from the panel. */
export interface NamingPanelActions {
  start(): void;
  stop(): void;
  leave(): void;
  write(): void;
  /** writes, and begins a row of the signs missed */
  again(): void;
  drill(): void;
  handOut(): void;
  setSeconds(seconds: number): void;
}

/** Everything around a row of signs: buttons, the result with its fields, earlier rows. */
export class NamingPanel {
  readonly element = make("div");
  readonly #title = make("h3", { tabindex: "-1" });
  readonly #start: HTMLButtonElement;
  readonly #stop: HTMLButtonElement;
  readonly #leave: HTMLButtonElement;
  readonly #drill: HTMLButtonElement;
  readonly #again: HTMLButtonElement;
  readonly #handOut: HTMLButtonElement;
  readonly #seconds = make("input", { type: "number", min: "1", step: "0.1" });
  readonly #support = make("input", { type: "text", autocomplete: "off" });
  readonly #note = make("input", { type: "text", autocomplete: "off" });
  readonly #sentences = make("ul");
  readonly #earlierTitle = make("h4", {}, "Before");
  readonly #earlier = make("ul");
  readonly #problem = make("p", { role: "alert", class: "notice" });
  readonly #result = make("div");

  /** @param clock - shown beside the buttons; `row` beneath them */
  constructor(clock: Node, row: Node, actions: NamingPanelActions) {
    const button = (label: string, act: () => void, kind?: "main"): HTMLButtonElement => {
      const made = make("button", { type: "button", ...(kind && { class: kind }) }, label);
      made.addEventListener("click", act);
      return made;
    };
    this.#start = button("Start the clock at the first sign", actions.start, "main");
    this.#stop = button("Stop the clock", actions.stop, "main");
    this.#leave = button(LEAVE, actions.leave);
    this.#handOut = button("Print or emboss this row", actions.handOut);
    this.#drill = button("Make a drill of the signs missed", actions.drill);
    this.#again = button("Write, and probe the missed again", actions.again);
    this.#problem.hidden = true;
    this.#seconds.addEventListener("change", () => {
      const seconds = Number(this.#seconds.value);
      if (seconds > 0) actions.setSeconds(seconds);
    });
    this.#result.append(
      make("h4", {}, "Result"),
      make("p", { class: "quiet" }, "Marks can still be changed in the row."),
      this.#sentences,
      this.#earlierTitle,
      this.#earlier,
      make(
        "div",
        { class: "fields" },
        make("label", { class: "field" }, "Seconds", this.#seconds),
        make("label", { class: "field" }, "Support given, if any", this.#support),
        make("label", { class: "field wide" }, "Note", this.#note),
      ),
      this.#problem,
      make(
        "div",
        { class: "buttons" },
        button("Write into the workbook", actions.write, "main"),
        this.#again,
        this.#drill,
      ),
    );
    this.element.append(
      this.#title,
      clock,
      make("div", { class: "buttons" }, this.#start, this.#stop, this.#leave, this.#handOut),
      row,
      make("p", { class: "quiet" }, KEYS),
      this.#result,
    );
  }

  get remarks(): NamingRemarks {
    return { support: this.#support.value.trim(), note: this.#note.value.trim() };
  }

  /** Whether she was asked if she means to lose the row. */
  get isAsking(): boolean {
    return this.#leave.textContent !== LEAVE;
  }

  ask(): void {
    this.#leave.textContent = LEAVE_SURELY;
  }

  show(draft: NamingDraft | undefined): void {
    this.element.hidden = draft === undefined;
    if (draft === undefined) return;
    const { pupil, task, medium, signs } = draft.task;
    const stage = stageOf(draft);
    const asked = task === "copied" ? "to copy" : "to name";
    setText(this.#title, `${pupil}: ${countInWords(signs.length, "sign")} ${asked}, ${medium}`);
    this.#start.hidden = stage !== "ready";
    this.#handOut.hidden = stage !== "ready";
    this.#stop.hidden = stage !== "running";
    this.#result.hidden = stage !== "stopped";
    this.#seconds.value = String(draft.seconds ?? "");
  }

  /** @param hasMissed - whether there are signs missed to drill, or to probe again */
  showResult(sentences: readonly string[], earlier: readonly string[], hasMissed: boolean): void {
    fill(this.#sentences, sentences);
    fill(this.#earlier, earlier);
    this.#earlierTitle.hidden = this.#earlier.hidden = earlier.length === 0;
    this.#drill.hidden = this.#again.hidden = !hasMissed;
    this.#problem.hidden = true;
  }

  /** Says that nothing is marked. */
  refuseEmpty(): void {
    setText(this.#problem, NOTHING_WRITTEN);
    this.#problem.hidden = false;
  }

  /** Empties what belongs to one row. */
  clear(): void {
    for (const field of [this.#support, this.#note]) field.value = "";
    this.#leave.textContent = LEAVE;
    this.#problem.hidden = true;
  }

  focusTitle(): void {
    this.#title.focus();
  }
}

const fill = (list: HTMLUListElement, lines: readonly string[]): void => {
  list.replaceChildren(...lines.map((line) => make("li", {}, line)));
};
