import type { FoundBlock } from "../../src/records/found-block";
import { beginSentence, countInWords } from "./count-words";
import { make } from "./markup";

/** Says where rows of probes wait for an answer, or cells could not be read, and leads to where it is settled. */
export class WaitingDates {
  readonly element = make("div", { class: "notice" });
  readonly #text = make("p");
  readonly #button = make("button", { type: "button" }, "Look at the workbook");

  constructor(open: () => void) {
    this.element.append(this.#text, this.#button);
    this.element.hidden = true;
    this.#button.addEventListener("click", open);
  }

  show(blocks: readonly FoundBlock[]): void {
    const used = blocks.filter(({ leftOut }) => !leftOut);
    const waiting = used.reduce((sum, block) => sum + (block.kind === "probes" ? block.waiting : 0), 0);
    const faults = used.reduce((sum, block) => sum + block.faults.length, 0);
    const parts = [
      ...(waiting > 0
        ? [
            `${countInWords(waiting, "row waits", "rows wait")} for your answer whether the day or the month stands first.`,
          ]
        : []),
      ...(faults > 0
        ? [
            `${countInWords(faults, "cell", "cells")} could not be read and ${faults === 1 ? "is" : "are"} left out here.`,
          ]
        : []),
    ];
    this.element.hidden = parts.length === 0;
    this.#text.textContent = parts.map(beginSentence).join(" ");
  }
}
