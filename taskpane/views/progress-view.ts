import { normaliseName } from "../../src/domain/progress/series";
import type { PaneContext, PaneView } from "./pane-context";
import { paneStyles } from "./pane-styles";
import type { PointChosen } from "./trajectory-view";
import { TrajectoryView, defineTrajectoryView } from "./trajectory-view";

const NAME = "cellwright-progress";

/** One pupil's progress over time. */
export class ProgressView extends HTMLElement implements PaneView {
  #context: PaneContext | undefined;
  readonly #trajectory = new TrajectoryView();

  constructor() {
    super();
    const root = this.attachShadow({ mode: "open" });
    root.adoptedStyleSheets = paneStyles();
    root.append(this.#trajectory);
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
    }
    if (last?.cells !== context.cells) this.#trajectory.cells = context.cells;
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
  }
}

/** Makes the view, and defines its elements first where they are not. */
export const makeProgressView = (): PaneView => {
  defineTrajectoryView();
  if (customElements.get(NAME) === undefined) customElements.define(NAME, ProgressView);
  return new ProgressView();
};
