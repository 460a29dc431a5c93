import type { PrintReading } from "../../src/domain/reading-back/print";
import { make } from "./markup";

/** Braille read back as print, and wherever its cells stand for more than one print, all of them. */
export class ReadingsShown {
  readonly element = make("section", { "aria-label": "Read back as print" });
  readonly #print = make("p");
  readonly #doubtful = make("ul");
  readonly #why = make("p", { class: "quiet" }, "Cells that can be read in more than one way:");

  constructor() {
    this.element.append(make("h4", {}, "Read back as print"), this.#print, this.#why, this.#doubtful);
    this.element.hidden = true;
  }

  /** @param reading - undefined where nothing can be read back */
  show(reading: PrintReading | undefined): void {
    this.element.hidden = reading === undefined;
    if (reading === undefined) return;
    this.#print.textContent = reading.print;
    const seen = new Set<string>();
    const lines = reading.doubtful.filter(({ cells }) => {
      if (seen.has(cells)) return false;
      seen.add(cells);
      return true;
    });
    this.#why.hidden = this.#doubtful.hidden = lines.length === 0;
    this.#doubtful.replaceChildren(
      ...lines.map(({ cells, readings }) =>
        make("li", {}, make("span", { class: "braille" }, cells), ` ${readings.join(" or ")}`),
      ),
    );
  }
}
