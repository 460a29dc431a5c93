import { normaliseName } from "../../src/domain/progress/series";
import type { TranscribeIn } from "../../src/domain/progress/sign-evidence";
import type { TranslatorLibrary } from "../../src/ports/translator";
import { make } from "./markup";
import { defineMasteryView, MasteryView } from "./mastery-view";
import type { PaneContext, PaneView } from "./pane-context";
import { paneStyles } from "./pane-styles";
import type { PointChosen } from "./trajectory-view";
import { TrajectoryView, defineTrajectoryView } from "./trajectory-view";

const NAME = "cellwright-progress";

/** One pupil's progress over time: the trajectory of a series, and the mastery of signs. */
export class ProgressView extends HTMLElement implements PaneView {
  #context: PaneContext | undefined;
  readonly #trajectory = new TrajectoryView();
  readonly #mastery = new MasteryView();

  constructor() {
    super();
    const root = this.attachShadow({ mode: "open" });
    root.adoptedStyleSheets = paneStyles();
    root.append(this.#trajectory, make("h3", {}, "Mastery of signs over time"), this.#mastery);
    this.#trajectory.addEventListener("point-chosen", (event) => {
      const { sheet, row } = (event as CustomEvent<PointChosen>).detail;
      this.#context?.jumpTo({ sheet, row: row - 1, column: 0 });
    });
    this.#trajectory.addEventListener("choice-changed", () => {
      const { pupil } = this.#trajectory.choice;
      if (pupil !== undefined) this.#context?.choosePupil(pupil);
    });
  }

  get context(): PaneContext {
    if (this.#context === undefined) throw new TypeError("The progress view has no context yet.");
    return this.#context;
  }

  set context(context: PaneContext) {
    const last = this.#context;
    this.#context = context;
    if (last?.records !== context.records) {
      this.#trajectory.goals = context.records.goals;
      this.#trajectory.probes = context.records.probes;
      this.#mastery.taught = context.records.taught;
      this.#mastery.miscues = context.records.miscues;
      this.#mastery.probes = context.records.probes;
    }
    if (last?.cells !== context.cells) {
      this.#trajectory.cells = context.cells;
      this.#mastery.transcribeIn = transcribeWith(context.translators);
    }
    if (normaliseName(context.pupil) !== normaliseName(this.#trajectory.choice.pupil)) {
      const { series, measure } = this.#trajectory.choice;
      this.#trajectory.choice = {
        ...(context.pupil === undefined ? {} : { pupil: context.pupil }),
        ...(series === undefined ? {} : { series }),
        ...(measure === undefined ? {} : { measure }),
      };
    }
    this.#trajectory.state = context.state;
    this.#trajectory.services = context;
    this.#mastery.pupil = context.pupil;
    this.#mastery.services = context;
  }
}

/** How the engine's codes that are loaded transcribe texts; a blank code is contracted. */
const transcribeWith =
  (library: TranslatorLibrary): TranscribeIn =>
  (code) => {
    const name = normaliseName(code);
    const translator = library.loaded(name === "" ? "contracted" : name);
    return (
      translator &&
      ((text) => {
        try {
          return translator.transcribe(text);
        } catch {
          // A word with a character that has no braille tells nothing of signs.
          return { print: text, cells: "", spans: [] };
        }
      })
    );
  };

/** Makes the view, and defines its elements first where they are not. */
export const makeProgressView = (): PaneView => {
  defineTrajectoryView();
  defineMasteryView();
  if (customElements.get(NAME) === undefined) customElements.define(NAME, ProgressView);
  return new ProgressView();
};
