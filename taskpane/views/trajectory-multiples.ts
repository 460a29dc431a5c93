import { drawTrajectory } from "../../src/charts/trajectory";
import { spanOfDays } from "../../src/charts/trajectory-frame";
import { MEASURE_LABELS } from "../../src/domain/progress/measure-words";
import { describeSeries } from "../../src/domain/progress/series";
import type { Trajectory } from "../../src/domain/progress/trajectory";
import { make } from "./markup";

/** Pixels of a small picture: two stand beside each other in a wide pane. */
const WIDTH = 300;
/** As many are drawn at once: a grid of signs has a series for each. */
const AT_ONCE = 12;

const nameOf = ({ series: { key } }: Trajectory): string =>
  `${describeSeries(key)}: ${MEASURE_LABELS[key.measure].toLowerCase()}`;

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
