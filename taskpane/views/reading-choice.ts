import { splitReadingWords } from "../../src/domain/probe/reading-words";
import { beginSentence, countInWords } from "./count-words";
import { make } from "./markup";
import { LONGEST_TEXT } from "./reading-draft";
import type { ReadingTask } from "./reading-draft";

/** A text to choose, as it is offered. */
export interface OfferedText {
  readonly title: string;
  readonly text: string;
}

const PASTED = "";
const CODES = ["contracted", "uncontracted"] as const;
const MEDIA = ["braille", "display", "print"] as const;
/** Print convention; touch readers are often given longer. */
const USUAL_WAIT = 3;
const LONGEST_WAIT = 60;

/** The form before a probe: which text, in which code and medium, and how long a word is waited for. */
export class ReadingChoice {
  readonly element = make("form", { novalidate: true });
  #offered: readonly OfferedText[] = [];
  readonly #list = make("select");
  readonly #listField = make("label", { class: "field wide" }, "Text", this.#list);
  readonly #title = make("input", { type: "text", autocomplete: "off" });
  readonly #text = make("textarea", { rows: "5" });
  readonly #pasted = make(
    "div",
    { class: "fields" },
    make("label", { class: "field wide" }, "Title of the text", this.#title),
    make("label", { class: "field wide" }, "The text, as the pupil has it before her or him", this.#text),
  );
  readonly #code = choiceOf(CODES);
  readonly #medium = choiceOf(MEDIA);
  readonly #wait = make("input", {
    type: "number",
    min: "1",
    max: String(LONGEST_WAIT),
    step: "1",
    value: String(USUAL_WAIT),
  });
  readonly #problem = make("p", { role: "alert", class: "notice" });

  /**
   * @param begin - called with the task once it is complete, but for the pupil
   * @param extra - further ways to get a text, shown beneath the list
   */
  constructor(begin: (task: Omit<ReadingTask, "pupil">) => void, extra: readonly Node[] = []) {
    this.#problem.hidden = true;
    this.element.append(
      make("div", { class: "fields" }, this.#listField),
      ...extra,
      this.#pasted,
      make(
        "div",
        { class: "fields" },
        make("label", { class: "field" }, "Code", this.#code),
        make("label", { class: "field" }, "Medium", this.#medium),
        make("label", { class: "field" }, "Seconds until a word is told", this.#wait),
      ),
      this.#problem,
      make("div", { class: "buttons" }, make("button", { type: "submit", class: "main" }, "Show the words")),
    );
    this.#list.addEventListener("change", () => {
      this.#pasted.hidden = this.#list.value !== PASTED;
    });
    this.element.addEventListener("submit", (event) => {
      event.preventDefault();
      const task = this.#read();
      if (task !== undefined) begin(task);
    });
  }

  /** Offers texts by their titles; her choice stays where it is still offered. */
  offer(texts: readonly OfferedText[]): void {
    if (texts === this.#offered) return;
    // Before there was a choice nothing was chosen, unless she has begun to type a text.
    const isOpen = this.#offered.length === 0 && this.#text.value === "";
    const chosen = isOpen ? "0" : this.#list.value;
    this.#offered = texts;
    this.#list.replaceChildren(
      ...texts.map(({ title, text }, place) =>
        make(
          "option",
          { value: String(place) },
          `${title} (${countInWords(splitReadingWords(text).length, "word")})`,
        ),
      ),
      make("option", { value: PASTED }, "A text to paste or type"),
    );
    if ([...this.#list.options].some(({ value }) => value === chosen)) this.#list.value = chosen;
    this.#listField.hidden = texts.length === 0;
    this.#pasted.hidden = this.#list.value !== PASTED;
  }

  /** Puts a text into the fields, as if it had been pasted. */
  paste({ title, text }: OfferedText): void {
    this.#list.value = PASTED;
    this.#pasted.hidden = false;
    this.#title.value = title;
    this.#text.value = text;
  }

  /** Sets code and medium to what the pupil's last probe had; unknown names are left alone. */
  setUsual(code: string | undefined, medium: string | undefined): void {
    for (const [list, value] of [
      [this.#code, code],
      [this.#medium, medium],
    ] as const) {
      const known = [...list.options].find((option) => option.value === value?.trim().toLowerCase());
      if (known !== undefined) list.value = known.value;
    }
  }

  focus(): void {
    (this.#listField.hidden ? this.#title : this.#list).focus();
  }

  #read(): Omit<ReadingTask, "pupil"> | undefined {
    const offered = this.#list.value === PASTED ? undefined : this.#offered[Number(this.#list.value)];
    const text = (offered?.text ?? this.#text.value).trim();
    const title = (offered?.title ?? this.#title.value).trim();
    const words = splitReadingWords(text).length;
    const wait = Number(this.#wait.value);
    if (words === 0) {
      return this.#refuse("There is no word to read. Choose a text, or type or paste one.", this.#text);
    }
    if (words > LONGEST_TEXT) {
      return this.#refuse(
        `${beginSentence(countInWords(words, "word"))} are more than a probe takes (${String(LONGEST_TEXT)}). Paste the part that is read.`,
        this.#text,
      );
    }
    if (!(wait >= 1 && wait <= LONGEST_WAIT)) {
      return this.#refuse(`The wait is from 1 to ${String(LONGEST_WAIT)} seconds.`, this.#wait);
    }
    this.#problem.hidden = true;
    return { title, text, code: this.#code.value, medium: this.#medium.value, wait };
  }

  #refuse(problem: string, field: HTMLElement): undefined {
    this.#problem.textContent = problem;
    this.#problem.hidden = false;
    (field.checkVisibility() ? field : this.#list).focus();
    return undefined;
  }
}

const choiceOf = (values: readonly string[]): HTMLSelectElement =>
  make("select", {}, ...values.map((value) => make("option", { value }, value)));
