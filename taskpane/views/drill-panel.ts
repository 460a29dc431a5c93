import { DRILL_FORMS, type DrillForm, type DrillRequest } from "./handout-drill";
import { HANDOUT_CODES, type HandoutCode } from "./handout-braille";
import { make } from "./markup";

const FORM_NAMES: Readonly<Record<DrillForm, string>> = {
  words: "words with these signs",
  pairs: "pairs of words that differ in one sign",
  lines: "lines of signs",
  sentences: "sentences from your passages, most readable first",
};

/** Most items of a drill: more are no help on a page. Our choice, no source. */
const MOST_ITEMS = 200;
const BUILT_IN = "built-in";
const OWN = "own";

/** What she can ask of the form. */
export interface DrillFormActions {
  /** makes the items; the form says what for */
  make(request: DrillRequest): void;
  /** takes up the signs missed last, then makes the items */
  takeErrors(): void;
  /** another code: its braille is to be shown */
  changeCode(): void;
  /** puts one of the passages on the handout */
  addPassage(place: number): void;
}

/** The form of a drill: signs, what to make, how many, from which words. */
export class DrillPanel {
  readonly element = make("form", { novalidate: true });
  readonly #signs = make("input", {
    type: "text",
    autocomplete: "off",
    autocapitalize: "none",
    spellcheck: "false",
  });
  readonly #form = make(
    "select",
    {},
    ...DRILL_FORMS.map((value) => make("option", { value }, FORM_NAMES[value])),
  );
  readonly #count = make("input", {
    type: "number",
    min: "1",
    max: String(MOST_ITEMS),
    step: "1",
    value: "10",
  });
  // No number field: blank, it would be spoken as nought.
  readonly #longest = make("input", { type: "text", inputmode: "numeric", autocomplete: "off" });
  readonly #source = make("select");
  readonly #code = make("select", {}, ...HANDOUT_CODES.map((value) => make("option", { value }, value)));
  readonly #selection = make("input", { type: "number", min: "1", step: "1", value: "1" });
  readonly #problem = make("p", { role: "alert", class: "notice" });
  readonly #submit = make("button", { type: "submit", class: "main" }, "Make the items");
  readonly #errors = make("button", { type: "button" }, "Practise what the last probe missed");
  readonly #passages = make("select");
  readonly #passageRow = make("div", { class: "fields" });
  #words: readonly string[] = [];

  constructor(private readonly actions: DrillFormActions) {
    this.#problem.hidden = true;
    const field = (name: string, control: HTMLElement, wide = false): HTMLLabelElement =>
      make("label", { class: wide ? "field wide" : "field" }, name, control);
    const addPassage = make("button", { type: "button" }, "Add this passage");
    addPassage.addEventListener("click", () => {
      actions.addPassage(Number(this.#passages.value));
    });
    this.#passageRow.append(field("A passage of yours", this.#passages), addPassage);
    this.element.append(
      make("div", { class: "buttons" }, this.#errors),
      make(
        "div",
        { class: "fields" },
        field("Signs to practise, such as ch, ea, in wordsign", this.#signs, true),
        field("What to make", this.#form, true),
        field("How many", this.#count),
        field("Longest, in cells (blank for any)", this.#longest),
        field("Words from", this.#source),
        field("Code", this.#code),
        field("Selection (another number, other items)", this.#selection),
      ),
      this.#problem,
      make("div", { class: "buttons" }, this.#submit),
      this.#passageRow,
    );
    this.#errors.addEventListener("click", () => {
      actions.takeErrors();
    });
    this.#code.addEventListener("change", () => {
      actions.changeCode();
    });
    this.element.addEventListener("submit", (event) => {
      event.preventDefault();
      this.submit();
    });
  }

  get code(): HandoutCode {
    return HANDOUT_CODES.find((code) => code === this.#code.value) ?? "contracted";
  }
  set code(code: HandoutCode) {
    this.#code.value = code;
  }

  set drillForm(form: DrillForm) {
    this.#form.value = form;
  }

  set signs(signs: readonly string[]) {
    this.#signs.value = signs.join(", ");
  }

  /** What there is to choose from: words of her own for this pupil, and her passages. */
  offer(words: readonly string[], passages: readonly string[]): void {
    this.#words = words;
    const chosen = this.#source.value;
    this.#source.replaceChildren(
      make("option", { value: BUILT_IN }, "the built-in list"),
      ...(words.length > 0 ? [make("option", { value: OWN }, `your table of words (${words.length})`)] : []),
    );
    this.#source.value = chosen === OWN && words.length > 0 ? OWN : BUILT_IN;
    const passage = this.#passages.value;
    this.#passages.replaceChildren(
      ...passages.map((title, place) => make("option", { value: String(place) }, title)),
    );
    if (Number(passage) < passages.length && passage !== "") this.#passages.value = passage;
    this.#passageRow.hidden = passages.length === 0;
  }

  /** Makes the items, as if she had pressed the button. */
  submit(): void {
    const count = this.#count.valueAsNumber;
    const longest = this.#longest.value.trim() === "" ? undefined : Number(this.#longest.value);
    const selection = this.#selection.valueAsNumber;
    if (!(Number.isInteger(count) && count >= 1 && count <= MOST_ITEMS))
      return this.refuse(`Write how many items as a whole number from 1 to ${MOST_ITEMS}.`, this.#count);
    if (longest !== undefined && !(Number.isInteger(longest) && longest >= 1))
      return this.refuse(
        "Write the longest word in cells as a whole number, or leave it blank.",
        this.#longest,
      );
    if (!Number.isInteger(selection))
      return this.refuse("Write the selection as a whole number, such as 2.", this.#selection);
    this.#problem.hidden = true;
    this.actions.make({
      form: DRILL_FORMS.find((form) => form === this.#form.value) ?? "words",
      signs: this.#signs.value,
      most: count,
      mostCells: longest,
      seed: selection,
      words: this.#source.value === OWN ? this.#words : undefined,
    });
  }

  /** Says at the form what stands in the way, with the focus where it can be mended. */
  refuse(problem: string, field: HTMLElement = this.#signs): void {
    this.#problem.textContent = problem;
    this.#problem.hidden = false;
    field.focus();
  }

  /** While items are being made the button says so. */
  set isBusy(isBusy: boolean) {
    for (const button of [this.#submit, this.#errors])
      if (isBusy) button.setAttribute("aria-disabled", "true");
      else button.removeAttribute("aria-disabled");
  }

  get isBusy(): boolean {
    return this.#submit.hasAttribute("aria-disabled");
  }
}
