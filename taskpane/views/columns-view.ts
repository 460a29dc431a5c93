import { chooseColumn, chooseInBlock, forgetColumns } from "../../src/records/column-choices";
import type { ColumnChoices } from "../../src/records/column-choices";
import type { FoundBlock } from "../../src/records/found-block";
import { makeBlock } from "./columns-block";
import type { BlockActions } from "./columns-block";
import { make } from "./markup";
import { makeQuestions } from "./columns-questions";
import { COLUMNS_STYLES } from "./columns-styles";
import { beginSentence, countInWords } from "./count-words";

/** A block that has anything to say: empty tables of probes are shown too, so that they can be filled or left out. */
const isShown = (block: FoundBlock): boolean =>
  block.kind === "probes" || block.records.length > 0 || block.faults.length > 0;

function summarise(blocks: readonly FoundBlock[]): string {
  const used = blocks.filter(({ leftOut }) => !leftOut);
  const probes = used.filter(({ kind }) => kind === "probes");
  if (probes.length === 0) return "No table of probes was found.";
  const records = probes.reduce((sum, block) => sum + block.records.length, 0);
  const faults = used.reduce((sum, block) => sum + block.faults.length, 0);
  const questions = new Set(used.flatMap((block) => block.questions.map(({ kind }) => kind))).size;
  return beginSentence(
    [
      countInWords(probes.length, "table of probes", "tables of probes"),
      countInWords(records, "probe"),
      countInWords(faults, "cell needs a look", "cells need a look"),
      ...(questions > 0 ? [countInWords(questions, "question")] : []),
    ].join(", "),
  ).concat(".");
}

/**
 * `<cellwright-columns>`: shows which tables were found, what each column is taken for, what could not be settled and
 * which cells are at fault. Set `choices` and `blocks`; without `blocks` it says that the workbook is being read.
 *
 * Events: `choices-changed` (detail: the new {@link ColumnChoices}, for the page to keep and read the records anew
 * with), `jump-to-cell` (detail: `{ sheet, row, column }`, counted from zero).
 */
export class ColumnsView extends HTMLElement {
  #blocks: readonly FoundBlock[] | undefined;
  #choices: ColumnChoices = {};
  #drawn = "";
  readonly #root = this.attachShadow({ mode: "open" });
  readonly #content = make("div");
  /** Apart from the content, so that it is never drawn anew: a live region speaks only when it changes. */
  readonly #live = make("p", { role: "status", class: "spoken" });

  constructor() {
    super();
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(COLUMNS_STYLES);
    this.#root.adoptedStyleSheets = [sheet];
    this.#root.append(this.#content, this.#live);
  }

  get blocks(): readonly FoundBlock[] {
    return this.#blocks ?? [];
  }

  set blocks(blocks: readonly FoundBlock[]) {
    this.#blocks = blocks;
    this.#draw();
  }

  get choices(): ColumnChoices {
    return this.#choices;
  }

  set choices(choices: ColumnChoices) {
    this.#choices = choices;
    this.#draw();
  }

  connectedCallback(): void {
    this.#draw();
  }

  readonly #actions: BlockActions = {
    jump: ({ sheet, row, column }) => this.#tell("jump-to-cell", { sheet, row, column }),
    chooseColumn: (block, column, kind) =>
      this.#change(chooseColumn(this.#choices, block.key, column.key, kind)),
    forgetColumns: (block) => this.#change(forgetColumns(this.#choices, block.key)),
    leaveOut: (block, leftOut) => this.#change(chooseInBlock(this.#choices, block.key, { leftOut })),
  };

  #change(choices: ColumnChoices): void {
    this.#choices = choices;
    this.#tell("choices-changed", choices);
  }

  #tell(type: string, detail: unknown): void {
    this.dispatchEvent(new CustomEvent(type, { detail, bubbles: true, composed: true }));
  }

  #draw(): void {
    const blocks = this.#blocks?.filter(isShown);
    // Records change at every typed score; what is drawn does not, and focus and reading place are kept.
    const now = JSON.stringify([
      blocks?.map(({ records, ...rest }) => ({ ...rest, count: records.length })),
      this.#choices,
    ]);
    if (now === this.#drawn) return;
    this.#drawn = now;
    const focused = this.#root.activeElement?.getAttribute("data-focus");
    const opened = new Set(
      [...this.#root.querySelectorAll<HTMLDetailsElement>("details[open]")].map(
        ({ dataset }) => dataset["open"] ?? "",
      ),
    );
    this.#content.replaceChildren(...this.#draft(blocks, (key) => opened.has(key)));
    if (focused !== null && focused !== undefined) this.#restoreFocus(focused);
    const summary = blocks ? summarise(blocks) : "";
    if (this.#live.textContent !== summary) this.#live.textContent = summary;
  }

  #draft(blocks: readonly FoundBlock[] | undefined, isOpen: (key: string) => boolean): HTMLElement[] {
    const heading = make("h2", { tabindex: "-1" }, "What was found in your sheets");
    if (!blocks) return [heading, make("p", {}, "The workbook is being read.")];
    const questions = makeQuestions(blocks, this.#choices, (answer) =>
      this.#change({ ...this.#choices, ...answer }),
    );
    if (blocks.length === 0) {
      return [
        heading,
        make(
          "p",
          {},
          "No table of probes was found yet. One is found by its header row: a date, and how it went, such as Date, Pupil, Words, Errors, Seconds. Title rows above it do no harm.",
        ),
        ...questions,
      ];
    }
    return [
      heading,
      make("p", {}, summarise(blocks)),
      ...questions,
      ...blocks.map((block, place) => makeBlock(block, place, isOpen, this.#actions)),
    ];
  }

  /** Focus goes back to the same control, or to the heading where a change has done away with it. */
  #restoreFocus(name: string): void {
    const same = [...this.#content.querySelectorAll<HTMLElement>("[data-focus]")].find(
      ({ dataset }) => dataset["focus"] === name,
    );
    (same ?? this.#content.querySelector("h2"))?.focus();
  }
}

/** Makes `<cellwright-columns>` known to the page; once is enough. */
export function defineColumnsView(): void {
  if (!customElements.get("cellwright-columns")) customElements.define("cellwright-columns", ColumnsView);
}
