import { PRINT_PLACES, type PrintPlace } from "../../src/domain/drill/handout";
import { PAPER_KEYS, PAPERS } from "../../src/domain/paper";
import { describePaper, USUAL_SETTINGS, type HandoutSettings } from "./handout-settings";
import { make } from "./markup";

const PLACES: Readonly<Record<PrintPlace, string>> = {
  beside: "beside the braille",
  beneath: "beneath each line",
  none: "none",
};

/** Title, date, lines, pages and look of a handout. */
export class HandoutForm {
  readonly element = make("div");
  readonly #title = make("input", { type: "text", autocomplete: "off" });
  readonly #date = make("input", { type: "text", autocomplete: "off" });
  readonly #cells = make("input", { type: "number", min: "8", max: "100", step: "1" });
  readonly #lines = make("input", { type: "number", min: "4", max: "100", step: "1" });
  readonly #print = make(
    "select",
    {},
    ...PRINT_PLACES.map((value) => make("option", { value }, PLACES[value])),
  );
  readonly #paper = make(
    "select",
    {},
    ...PAPER_KEYS.map((value) => make("option", { value }, PAPERS[value].name)),
  );
  readonly #double = make("input", { type: "checkbox" });
  readonly #guides = make("input", { type: "checkbox" });
  readonly #large = make("input", { type: "checkbox" });
  readonly #holds = make("p", { class: "quiet" });

  /** @param changed - called after every change of hers */
  constructor(changed: () => void) {
    const { cells, lines, print, paper } = USUAL_SETTINGS;
    this.#cells.value = String(cells);
    this.#lines.value = String(lines);
    this.#print.value = print;
    this.#paper.value = paper;
    const field = (name: string, control: HTMLElement): HTMLLabelElement =>
      make("label", { class: "field" }, name, control);
    const choice = (name: string, box: HTMLInputElement): HTMLLabelElement =>
      make("label", { class: "choice" }, box, name);
    this.element.append(
      make("div", { class: "fields" }, field("Title", this.#title), field("Date, if wanted", this.#date)),
      make(
        "div",
        { class: "fields" },
        field("Cells a line", this.#cells),
        field("Lines a page", this.#lines),
        field("Print", this.#print),
        field("Paper", this.#paper),
      ),
      choice("Double spacing", this.#double),
      choice("Large print", this.#large),
      choice("Faint guide dots on printed pages", this.#guides),
      this.#holds,
    );
    this.element.addEventListener("input", () => {
      this.#show();
      changed();
    });
    this.#show();
  }

  get title(): string {
    return this.#title.value;
  }
  set title(title: string) {
    this.#title.value = title;
  }

  get date(): string {
    return this.#date.value;
  }
  set date(date: string) {
    this.#date.value = date;
  }

  /** Sets the length of lines to that of the pupil's display or paper. */
  set cells(cells: number) {
    this.#cells.value = String(cells);
    this.#show();
  }

  /** @param code - as it is named to her */
  settings(code: string): HandoutSettings {
    return {
      cells: this.#cells.valueAsNumber,
      lines: this.#lines.valueAsNumber,
      double: this.#double.checked,
      print: PRINT_PLACES.find((place) => place === this.#print.value) ?? USUAL_SETTINGS.print,
      paper: PAPER_KEYS.find((key) => key === this.#paper.value) ?? USUAL_SETTINGS.paper,
      guideDots: this.#guides.checked,
      largePrint: this.#large.checked,
      code,
    };
  }

  #show(): void {
    this.#holds.textContent = describePaper(this.settings(""));
  }
}
