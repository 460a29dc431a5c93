import { plainTrajectory } from "../../src/charts/plain-chart";
import { drawTrajectory } from "../../src/charts/trajectory";
import { spanOfDays } from "../../src/charts/trajectory-frame";
import { MEASURE_LABELS } from "../../src/domain/progress/measure-words";
import type { Goal } from "../../src/domain/progress/goal";
import { describeSeries, type Series } from "../../src/domain/progress/series";
import { buildTrajectory, type Trajectory } from "../../src/domain/progress/trajectory";
import type { ChartInSheet } from "./chart-in-sheet";
import { make } from "./markup";

/** Pixels of a small picture: two stand beside each other in a wide pane. */
const WIDTH = 300;
/** As many are drawn at once: a grid of signs has a series for each. */
const AT_ONCE = 12;

const nameOf = ({ series: { key } }: Trajectory): string =>
  `${describeSeries(key)}: ${MEASURE_LABELS[key.measure].toLowerCase()}`;

/** Each series that goes into the sheet gets a sheet of its own: so many at most. */
const MOST_IN_SHEET = 12;
/** Pixels of the pictures whose text goes into the sheet. */
const TEXT_WIDTH = 640;

/** What the button does that puts a number of series into the sheet. */
export const sayPutAll = (count: number): string =>
  count <= MOST_IN_SHEET
    ? `Put ${count === 1 ? "it" : `all ${count}`} in the sheet`
    : `Put the ${MOST_IN_SHEET} probed most in the sheet`;

/** The series of a pupil as charts with their text; of many, those probed most. */
export const chartsForSheet = (series: readonly Series[], goals: readonly Goal[]): readonly ChartInSheet[] =>
  series
    .toSorted((one, other) => other.points.length - one.points.length)
    .slice(0, MOST_IN_SHEET)
    .map((each) => {
      const trajectory = buildTrajectory(each, goals);
      return {
        chart: plainTrajectory(trajectory),
        picture: drawTrajectory(trajectory, { width: TEXT_WIDTH }),
      };
    });

/**
 * All series of a pupil as small pictures over the same days, each with its own values, its verdict, and a button that
 * shows it large. A long list is drawn in parts.
 *
 * @param show - called with the one that was chosen
 */
export const buildMultiples = (
  trajectories: readonly Trajectory[],
  show: (trajectory: Trajectory) => void,
): DocumentFragment => {
  const days = spanOfDays(trajectories);
  const list = make("ul", { class: "multiples" });
  const add = (from: number): void => {
    trajectories.slice(from, from + AT_ONCE).forEach((trajectory, i) => {
      list.append(buildOne(trajectory, from + i, days, show));
    });
  };
  add(0);
  const fragment = document.createDocumentFragment();
  fragment.append(list);
  let shown = AT_ONCE;
  const more = make("button", { type: "button" });
  const label = (): void => {
    more.textContent = `Show ${Math.min(AT_ONCE, trajectories.length - shown)} more of ${trajectories.length}`;
  };
  more.addEventListener("click", () => {
    add(shown);
    // The button may go away: the focus goes on to the first of the new ones.
    list.children[shown]?.querySelector("button")?.focus();
    shown += AT_ONCE;
    if (shown >= trajectories.length) more.remove();
    else label();
  });
  if (shown < trajectories.length) {
    label();
    fragment.append(more);
  }
  return fragment;
};

const buildOne = (
  trajectory: Trajectory,
  index: number,
  days: readonly [number, number],
  show: (trajectory: Trajectory) => void,
): HTMLLIElement => {
  const { svg } = drawTrajectory(trajectory, { width: WIDTH, small: true, days, idPrefix: `small-${index}` });
  const picture = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
  const button = make("button", { type: "button" }, "Show large");
  button.setAttribute("aria-label", `Show large: ${nameOf(trajectory)}`);
  button.addEventListener("click", () => {
    show(trajectory);
  });
  return make(
    "li",
    {},
    make("p", { class: "name" }, nameOf(trajectory)),
    make("p", {}, make("strong", {}, trajectory.verdict ?? "no verdict")),
    document.importNode(picture, true),
    button,
  );
};
