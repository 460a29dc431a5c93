import type { Confusion } from "../../src/domain/probe/confusion";
import { pairConfusions, type SignConfusions } from "../../src/domain/probe/sign-confusions";
import { WAYS } from "../../src/domain/progress/way";
import { countInWords } from "./count-words";
import { make } from "./markup";
import { setText } from "./select-filling";

const NONE =
  "No sign is noted as taken for another. Note what was read in place of a word or a sign, in the table Miscues or by a probe; the pairs then stand here.";
const HEADINGS = ["Expected", "Given", "Way", "Times", "Share of its uses"];
/** Rows and pairs shown at most. */
const MOST_ROWS = 40;
const MOST_PAIRS = 8;

const percent = (share: number): string => String(Math.round(100 * share));

/** Signs taken for others: pairs with a drill each, and a table of all. */
export class ConfusionBlock {
  readonly #summary = make("summary");
  readonly #none = make("p", {}, NONE);
  readonly #pairs = make("ul", { "aria-label": "Pairs of confused signs" });
  readonly #scroll = make("div", {
    class: "scroll",
    tabindex: "0",
    role: "region",
    "aria-label": "Table of confusions",
  });
  readonly element = make("details", {}, this.#summary, this.#none, this.#pairs, this.#scroll);
  #drawn: SignConfusions | undefined;

  /** @param drill - makes a drill that sets two signs against each other */
  constructor(private readonly drill: (signs: readonly string[]) => void) {}

  show(confusions: SignConfusions): void {
    if (confusions === this.#drawn) return;
    this.#drawn = confusions;
    const pairs = pairConfusions(confusions);
    const isEmpty = pairs.length === 0;
    setText(this.#summary, `Confused signs (${countInWords(pairs.length, "pair")})`);
    this.#none.hidden = !isEmpty;
    this.#pairs.hidden = isEmpty;
    this.#scroll.hidden = isEmpty;
    this.#pairs.replaceChildren(
      ...pairs.slice(0, MOST_PAIRS).map(({ signs, times }) => {
        const named = signs.join(" and ");
        const button = make("button", { type: "button" }, `Drill ${named}`);
        button.addEventListener("click", () => {
          this.drill(signs);
        });
        return make("li", {}, `${named}, ${countInWords(times, "time")} `, button);
      }),
    );
    const rows = WAYS.flatMap((way) => confusions[way].map((each) => drawRow(each, way)));
    const table = make("table", {}, make("caption", {}, "What was given for what"));
    table
      .createTHead()
      .insertRow()
      .append(...HEADINGS.map((heading) => make("th", { scope: "col" }, heading)));
    table.createTBody().append(...rows.slice(0, MOST_ROWS));
    this.#scroll.replaceChildren(table);
  }
}

const drawRow = (
  { expected, given, times, chances, share, interval }: Confusion,
  way: string,
): HTMLTableRowElement =>
  make(
    "tr",
    {},
    make("th", { scope: "row" }, expected),
    make("td", {}, given),
    make("td", {}, way),
    make("td", {}, `${times} of ${chances}`),
    make("td", {}, `${percent(share)} % (${percent(interval.low)} to ${percent(interval.high)} %)`),
  );
