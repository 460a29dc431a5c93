import { MARK_KINDS } from "../../src/domain/probe/reading-marks";
import type { MarkKind } from "../../src/domain/probe/reading-marks";
import { make } from "./markup";
import { stageOf } from "./probe-time";
import type { ReadingDraft } from "./reading-draft";
import { MARK_KEYS } from "./reading-words";

export const READING_PANEL_STYLES = `
.touches { display: flex; flex-wrap: wrap; gap: 0.1rem 0.9rem; }
`;

const LEAVE = "Leave this probe";
const LEAVE_SURELY = "Leave it: its marks and time will be lost";

const KEYS = `Keys in the text: arrows or Space go from word to word; ${MARK_KINDS.map(
  (kind) => `${MARK_KEYS[kind]} ${kind}`,
).join(
  ", ",
)}; Backspace takes a mark off; l sets the last word; Enter starts, then stops at the word where you are.`;

/** What she may add to a result. */
export interface Remarks {
  readonly support: string;
  readonly comprehension: string;
  readonly note: string;
}

/** Everything around the text of a probe: buttons, what a touch marks, the result with its fields. */
export class ReadingPanel {
  readonly element = make("div");
  onStart = (): void => undefined;
  onStop = (): void => undefined;
  onLeave = (): void => undefined;
  onWrite = (): void => undefined;
  onSeconds: (seconds: number) => void = () => undefined;
  #touch: MarkKind | "last" = "misread";
  readonly #title = make("h3", { tabindex: "-1" });
  readonly #start = make("button", { type: "button", class: "main" }, "Start the clock at the first word");
  readonly #stop = make("button", { type: "button", class: "main" }, "Stop the clock");
  readonly #leave = make("button", { type: "button" }, LEAVE);
  readonly #write = make("button", { type: "button", class: "main" }, "Write into the workbook");
  readonly #seconds = make("input", { type: "number", min: "1", step: "0.1" });
  readonly #support = make("input", { type: "text", autocomplete: "off" });
  readonly #comprehension = make("input", { type: "text", autocomplete: "off" });
  readonly #note = make("input", { type: "text", autocomplete: "off" });
  readonly #stopped = make("div");

  /** @param clock - shown beside the buttons; `text` beneath them; `result` when the clock has stopped */
  constructor(clock: readonly Node[], text: Node, result: Node) {
    this.#stopped.append(
      make("h4", {}, "Result"),
      make("p", { class: "quiet" }, "Marks and the last word can still be changed in the text."),
      result,
      make(
        "div",
        { class: "fields" },
        make("label", { class: "field" }, "Seconds", this.#seconds),
        make("label", { class: "field" }, "Support given, if any", this.#support),
        make("label", { class: "field" }, "Comprehension, if asked", this.#comprehension),
        make("label", { class: "field wide" }, "Note", this.#note),
      ),
      make("div", { class: "buttons" }, this.#write),
    );
    this.element.append(
      this.#title,
      ...clock,
      make("div", { class: "buttons" }, this.#start, this.#stop, this.#leave),
      this.#makeTouches(),
      text,
      make("p", { class: "quiet" }, KEYS),
      this.#stopped,
    );
    this.#start.addEventListener("click", () => {
      this.onStart();
    });
    this.#stop.addEventListener("click", () => {
      this.onStop();
    });
    this.#leave.addEventListener("click", () => {
      this.onLeave();
    });
    this.#write.addEventListener("click", () => {
      this.onWrite();
    });
    this.#seconds.addEventListener("change", () => {
      const seconds = Number(this.#seconds.value);
      if (seconds > 0) this.onSeconds(seconds);
    });
  }

  /** What touching a word does. */
  get touch(): MarkKind | "last" {
    return this.#touch;
  }

  get remarks(): Remarks {
    return {
      support: this.#support.value.trim(),
      comprehension: this.#comprehension.value.trim(),
      note: this.#note.value.trim(),
    };
  }

  /** Whether she was asked if she means to lose the probe. */
  get isAsking(): boolean {
    return this.#leave.textContent !== LEAVE;
  }

  ask(): void {
    this.#leave.textContent = LEAVE_SURELY;
  }

  show(draft: ReadingDraft | undefined): void {
    this.element.hidden = draft === undefined;
    if (draft === undefined) return;
    const { pupil, title, code, medium } = draft.task;
    const stage = stageOf(draft);
    this.#title.textContent = `${pupil}: ${title === "" ? "a text" : title}, ${code}, ${medium}`;
    this.#start.hidden = stage !== "ready";
    this.#stop.hidden = stage !== "running";
    this.#stopped.hidden = stage !== "stopped";
    this.#seconds.value = String(draft.seconds ?? "");
  }

  /** Empties what belongs to one probe. */
  clear(): void {
    for (const field of [this.#support, this.#comprehension, this.#note]) field.value = "";
    this.#leave.textContent = LEAVE;
  }

  focusTitle(): void {
    this.#title.focus();
  }

  #makeTouches(): HTMLFieldSetElement {
    const group = make("div", { class: "touches" });
    for (const kind of [...MARK_KINDS, "last"] as const) {
      const radio = make("input", {
        type: "radio",
        name: "touch",
        value: kind,
        checked: kind === this.#touch,
      });
      radio.addEventListener("change", () => {
        this.#touch = kind;
      });
      group.append(make("label", { class: "choice" }, radio, kind === "last" ? "last word read" : kind));
    }
    return make("fieldset", {}, make("legend", {}, "Touching a word marks it"), group);
  }
}
