import { normaliseName } from "../../src/domain/progress/series";
import { transcribeWith } from "../../src/ports/loaded-transcription";
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
  }

  get context(): PaneContext {
    if (this.#context === undefined) throw new TypeError("The progress view has no context yet.");
    return this.#context;
  }

  set context(context: PaneContext) {
    const last = this.#context;
    this.#context = context;
    if (last?.records !== context.records || last.pupil !== context.pupil) {
      const { records, pupil } = context;
      const isHers = (row: { readonly pupil: string }): boolean =>
        normaliseName(row.pupil) === normaliseName(pupil);
      // A pupil without probes must not be shown another's.
      this.#trajectory.goals = records.goals.filter(isHers);
      this.#trajectory.probes = records.probes.filter(isHers);
      this.#mastery.taught = records.taught;
      this.#mastery.miscues = records.miscues;
      this.#mastery.probes = records.probes;
    }
    if (last?.cells !== context.cells) {
      this.#trajectory.cells = context.cells;
      this.#mastery.transcribeIn = transcribeWith(context.translators);
    }
    this.#trajectory.state = context.state;
    this.#trajectory.services = context;
    this.#mastery.pupil = context.pupil;
    this.#mastery.services = context;
  }
}

/** Makes the view, and defines its elements first where they are not. */
export const makeProgressView = (): PaneView => {
  defineTrajectoryView();
  defineMasteryView();
  if (customElements.get(NAME) === undefined) customElements.define(NAME, ProgressView);
  return new ProgressView();
};
