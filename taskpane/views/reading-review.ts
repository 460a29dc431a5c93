import type { Probe } from "../../src/domain/probe/probe";
import type { ReadingScore } from "../../src/domain/probe/reading";
import type { MarkKind, ReadingMark, ReadingNotes } from "../../src/domain/probe/reading-marks";
import type { PlacedWord } from "../../src/domain/probe/reading-words";
import type { CellSource } from "../../src/domain/progress/measure";
import type { Translator } from "../../src/ports/translator";
import { make } from "./markup";
import type { ReadingTask } from "./reading-draft";
import { describeReading, listEarlier, listMissedSigns } from "./reading-result";

/** All that the result of a probe is drawn from. */
export interface ReviewedReading {
  readonly task: ReadingTask;
  readonly words: readonly PlacedWord[];
  readonly notes: ReadingNotes;
  readonly score: ReadingScore;
  readonly seconds: number;
  readonly probes: readonly Probe[];
  readonly cells: CellSource | undefined;
  /** of the task's code, where it is loaded */
  readonly translator: Translator | undefined;
}

/** Marks whose heard word can be noted after the reading. */
const NOTABLE: ReadonlySet<MarkKind> = new Set(["misread", "self-corrected", "added", "told"]);

/** The result of a probe before it is written: sentences, signs in missed words, what was heard, earlier probes. */
export class ReadingReview {
  readonly element = make("div");
  readonly #sentences = make("ul");
  readonly #signs = make("p");
  readonly #earlier = make("ul");
  readonly #earlierTitle = make("h4", {}, "Before");
  readonly #heard = make("fieldset", {}, make("legend", {}, "What was heard, if you noted it"));
  #noted: readonly ReadingMark[] = [];

  /** @param note - called when she notes what was heard at a mark; blank text takes the note off */
  constructor(private readonly note: (mark: ReadingMark, heard: string) => void) {
    this.element.append(this.#sentences, this.#signs, this.#heard, this.#earlierTitle, this.#earlier);
  }

  show(reading: ReviewedReading): void {
    const { task, words, notes, score, seconds, probes, cells, translator } = reading;
    fill(this.#sentences, describeReading(task, score, seconds, cells));
    const missed = translator === undefined ? [] : listMissedSigns(score, words, translator);
    this.#signs.hidden = missed.length === 0;
    this.#signs.textContent = `Contractions in the words missed: ${missed
      .map(({ sign, missed: times, met }) => `${sign} (${String(times)} of ${String(met)})`)
      .join(", ")}. A missed word may be language, speech or vocabulary, not a sign.`;
    const earlier = listEarlier(probes, task);
    fill(this.#earlier, earlier);
    this.#earlierTitle.hidden = this.#earlier.hidden = earlier.length === 0;
    this.#showHeard(words, notes);
  }

  /** Fields stay as they are while she types: they are made anew only when the marks are others. */
  #showHeard(words: readonly PlacedWord[], notes: ReadingNotes): void {
    const marks = notes.marks.filter(
      ({ kind, word }) => NOTABLE.has(kind) && word <= (notes.last ?? words.length - 1),
    );
    this.#heard.hidden = marks.length === 0;
    const same =
      marks.length === this.#noted.length &&
      marks.every(({ word, kind }, at) => this.#noted[at]?.word === word && this.#noted[at].kind === kind);
    this.#noted = marks;
    if (same) return;
    const fields = marks.map(({ word, kind, heard }, at) => {
      const field = make("input", { type: "text", value: heard ?? "", autocomplete: "off" });
      field.addEventListener("change", () => {
        const mark = this.#noted[at];
        if (mark !== undefined) this.note(mark, field.value);
      });
      const shown = words[word]?.shown ?? "";
      return make(
        "label",
        { class: "field" },
        kind === "added" ? `Added after ${shown}` : `For ${shown}, ${kind}`,
        field,
      );
    });
    this.#heard.replaceChildren(
      ...[...this.#heard.children].slice(0, 1),
      make("div", { class: "fields" }, ...fields),
    );
  }
}

const fill = (list: HTMLUListElement, lines: readonly string[]): void => {
  list.replaceChildren(...lines.map((line) => make("li", {}, line)));
};
