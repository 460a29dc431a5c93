import { parseSignItems } from "../../src/domain/contraction/taught";
import { splitReadingWords } from "../../src/domain/probe/reading-words";
import { beginSentence, countInWords } from "./count-words";
import { BRAILLED_CODES, LONGEST_DICTATION } from "./brailled-draft";
import type { BrailledCode, BrailledTask } from "./brailled-draft";
import { make } from "./markup";
import type { OfferedText } from "./reading-choice";
import { fillSelect } from "./select-filling";

const OWN = "";
const MEDIA = ["braillewriter", "slate", "display"] as const;
const CODE_LABELS: Readonly<Record<BrailledCode, string>> = {
  contracted: "contracted",
  uncontracted: "uncontracted",
  signs: "single signs",
};

/** The form before writing: which text or signs, in which code, with what, timed or not. */
export class BrailledChoice {
  readonly element = make("form", { novalidate: true });
  #offered: readonly OfferedText[] = [];
  readonly #list = make("select");
  readonly #listField = make("label", { class: "field wide" }, "Text", this.#list);
  readonly #title = make("input", { type: "text", autocomplete: "off" });
  readonly #text = make("textarea", { rows: "4" });
  readonly #own = make(
    "div",
    { class: "fields" },
    make("label", { class: "field wide" }, "Title, if any", this.#title),
    make(
      "label",
      { class: "field wide" },
      "Words, sentences, or signs such as ch, ea, in wordsign",
      this.#text,
    ),
  );
  readonly #code = make(
    "select",
    {},
    ...BRAILLED_CODES.map((code) => make("option", { value: code }, CODE_LABELS[code])),
  );
  readonly #medium = make("select", {}, ...MEDIA.map((medium) => make("option", { value: medium }, medium)));
  readonly #timed = make("input", { type: "checkbox" });
  readonly #problem = make("p", { role: "alert", class: "notice" });

  /** @param begin - called with the task once it is complete, but for the pupil */
  constructor(begin: (task: Omit<BrailledTask, "pupil">) => void) {
    this.#problem.hidden = true;
    this.element.append(
      make("div", { class: "fields" }, this.#listField),
      this.#own,
      make(
        "div",
        { class: "fields" },
        make("label", { class: "field" }, "Code", this.#code),
        make("label", { class: "field" }, "Written with", this.#medium),
        make("label", { class: "choice wide" }, this.#timed, "Timed: the clock starts with the first cell"),
      ),
      this.#problem,
      make("div", { class: "buttons" }, make("button", { type: "submit", class: "main" }, "Begin")),
    );
    this.#list.addEventListener("change", () => {
      this.#showOwn();
    });
    this.element.addEventListener("submit", (event) => {
      event.preventDefault();
      const task = this.#read();
      if (task !== undefined) begin(task);
    });
    this.offer([]);
  }

  /** Offers texts by their titles; her choice stays where it is still offered. */
  offer(texts: readonly OfferedText[]): void {
    this.#offered = texts;
    const values = [OWN, ...texts.map((_, place) => String(place))];
    fillSelect(
      this.#list,
      [
        { value: OWN, label: "Words that I type or paste" },
        ...texts.map(({ title, text }, place) => ({
          value: String(place),
          label: `${title} (${countInWords(splitReadingWords(text).length, "word")})`,
        })),
      ],
      values.includes(this.#list.value) ? this.#list.value : OWN,
    );
    this.#listField.hidden = texts.length === 0;
    this.#showOwn();
  }

  /** Puts a text into the fields, as if it had been typed. @param code - left as it is unless given */
  type({ title, text }: OfferedText, code?: BrailledCode): void {
    this.#list.value = OWN;
    this.#title.value = title;
    this.#text.value = text;
    if (code !== undefined) this.#code.value = code;
    this.#showOwn();
  }

  /** Sets code and medium to what the pupil's last writing had; unknown names are left alone. */
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
    (this.#listField.hidden ? this.#text : this.#list).focus();
  }

  #showOwn(): void {
    this.#own.hidden = this.#list.value !== OWN;
  }

  #read(): Omit<BrailledTask, "pupil"> | undefined {
    const offered = this.#list.value === OWN ? undefined : this.#offered[Number(this.#list.value)];
    const text = (offered?.text ?? this.#text.value).trim();
    const title = (offered?.title ?? this.#title.value).trim();
    const code = BRAILLED_CODES.find((each) => each === this.#code.value) ?? "contracted";
    if (text === "")
      return this.#refuse("There is nothing to write yet. Choose a text, or type or paste one.", this.#text);
    if (code === "signs") {
      const signs = parseSignItems([text]);
      if (!signs.ok) return this.#refuse(signs.fault.message, this.#text);
    }
    const words = splitReadingWords(text).length;
    if (words > LONGEST_DICTATION)
      return this.#refuse(
        `${beginSentence(countInWords(words, "word"))} are more than can be compared at once (${String(LONGEST_DICTATION)}). Take a part of the text.`,
        this.#text,
      );
    this.#problem.hidden = true;
    return { title, text, code, medium: this.#medium.value, isTimed: this.#timed.checked };
  }

  #refuse(problem: string, field: HTMLElement): undefined {
    this.#problem.textContent = problem;
    this.#problem.hidden = false;
    (field.checkVisibility() ? field : this.#list).focus();
    return undefined;
  }
}
