import type { AlignedCells } from "../../src/domain/probe/aligned-cells";
import type { PrintReading } from "../../src/domain/reading-back/print";
import { listErrors, sayCells, type ComparedWriting } from "./brailled-comparison";
import { make } from "./markup";
import { ReadingsShown } from "./readings-shown";

export const BRAILLED_REVIEW_STYLES = `
.pairs { display: flex; flex-wrap: wrap; gap: 0.5rem 0; margin-block: 0.5rem; font-size: 1.5em; line-height: 1.3; max-block-size: 50vh; overflow-y: auto; }
.pairs .keys { font-size: 0.6em; display: grid; align-content: space-around; padding-inline-end: 0.5rem; color: var(--quiet, inherit); }
.pair { display: grid; grid-template-rows: 1.4em 1.4em 1em; min-inline-size: 0.9em; text-align: center; padding: 2px 1px; }
/* No transparent border on the others: forced colours would draw it, and box the right cells as well. */
.pair.wrong { padding: 0; border: 2px solid currentColor; border-radius: 0.2rem; margin-inline: 1px; }
.pair .number { font-size: 0.55em; font-weight: 600; }
.pair .none::before { content: "–"; }
.table { overflow-x: auto; position: relative; }
.table table { inline-size: 100%; border-collapse: collapse; }
.table th, .table td { text-align: start; padding: 0.2rem 0.5rem 0.2rem 0; border-block-end: 1px solid var(--line, GrayText); vertical-align: top; overflow-wrap: normal; }
`;

/** Errors that the table lists at most; a text with more was hardly written from this dictation. */
const MOST_ERRORS = 200;

/** The comparison before it is written: sentences, cells one over the other, each error named, the print, earlier ones. */
export class BrailledReview {
  readonly element = make("div");
  readonly #sentences = make("ul");
  readonly #pairs = make("div", { class: "pairs braille", "aria-hidden": "true" });
  readonly #rows = make("tbody");
  readonly #table = make(
    "div",
    { class: "table", role: "region", "aria-label": "Errors", tabindex: "0" },
    make(
      "table",
      {},
      make("caption", { class: "spoken" }, "Errors"),
      make(
        "thead",
        {},
        make(
          "tr",
          {},
          ...["Cell", "Expected", "Written", "What happened", "Sign"].map((heading) =>
            make("th", { scope: "col" }, heading),
          ),
        ),
      ),
      this.#rows,
    ),
  );
  readonly #more = make("p", { class: "quiet" });
  readonly #readings = new ReadingsShown();
  readonly #earlierTitle = make("h4", {}, "Before");
  readonly #earlier = make("ul");

  constructor() {
    this.element.append(
      this.#sentences,
      this.#pairs,
      this.#table,
      this.#more,
      this.#readings.element,
      this.#earlierTitle,
      this.#earlier,
    );
  }

  show(compared: ComparedWriting, sentences: readonly string[], earlier: readonly string[]): void {
    fill(this.#sentences, sentences);
    fill(this.#earlier, earlier);
    this.#earlierTitle.hidden = this.#earlier.hidden = earlier.length === 0;
    const errors = listErrors(compared);
    const numbers = new Map(errors.map((error, place) => [error, place + 1] as const));
    this.#pairs.replaceChildren(
      make(
        "span",
        { class: "keys" },
        make("span", {}, "expected"),
        make("span", {}, "written"),
        make("span", {}, ""),
      ),
      ...compared.score.aligned.map((pair) => drawPair(pair, numbers.get(pair))),
    );
    this.#table.hidden = errors.length === 0;
    this.#rows.replaceChildren(
      ...errors.slice(0, MOST_ERRORS).map((error, place) => drawError(error, place + 1)),
    );
    const left = errors.length - MOST_ERRORS;
    this.#more.hidden = left <= 0;
    this.#more.textContent = left > 0 ? `${String(left)} more errors are written into the workbook.` : "";
  }

  /** @param reading - undefined until it is there, or where nothing can be read back */
  showReading(reading: PrintReading | undefined): void {
    this.#readings.show(reading);
  }
}

/** One cell over another, several where an error takes several; a wrong pair is boxed and numbered. */
const drawPair = ({ expected, written, kind }: AlignedCells, number: number | undefined): HTMLElement =>
  make(
    "span",
    { class: kind === undefined ? "pair" : "pair wrong" },
    make("span", { class: expected === "" ? "none" : "" }, expected),
    make("span", { class: written === "" ? "none" : "" }, written),
    make("span", { class: "number" }, number === undefined ? "" : String(number)),
  );

const drawError = (
  { position, expected, written, kind, sign }: AlignedCells,
  number: number,
): HTMLTableRowElement =>
  make(
    "tr",
    {},
    make("th", { scope: "row" }, `${String(number)}: cell ${String(position)}`),
    make("td", {}, sayCells(expected)),
    make("td", {}, sayCells(written)),
    make("td", {}, kind ?? ""),
    make("td", {}, sign?.name ?? ""),
  );

const fill = (list: HTMLUListElement, lines: readonly string[]): void => {
  list.replaceChildren(...lines.map((line) => make("li", {}, line)));
};
