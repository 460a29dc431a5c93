import { boxesAlong, estimateWidth } from "./label-placement";
import { WAYS, type MasteryEvent } from "./mastery-course";
import type { LabelledMark, Panel } from "./mastery-panels";
import { drawElement, escapeText } from "./svg-element";

type Happening = MasteryEvent["what"];

const INK = { stroke: "currentColor" };

/** The sign of each happening: an upright dashed line, a diamond, a cross. */
const SHAPES: Readonly<Record<Happening, (x: number, y: number) => string>> = {
  introduced: (x, y) =>
    drawElement("line", {
      x1: x,
      x2: x,
      y1: y - 6,
      y2: y + 6,
      ...INK,
      "stroke-width": 1.5,
      "stroke-dasharray": "4 3",
    }),
  "criterion met": (x, y) =>
    drawElement("polygon", {
      points: [
        [x, y - 6],
        [x + 6, y],
        [x, y + 6],
        [x - 6, y],
      ]
        .map((corner) => corner.map((n) => n.toFixed(1)).join(","))
        .join(" "),
      fill: "currentColor",
    }),
  lapse: (x, y) => {
    const [left, right, up, down] = [x - 5, x + 5, y - 5, y + 5].map((n) => n.toFixed(1));
    const d = `M${left ?? ""} ${up ?? ""}L${right ?? ""} ${down ?? ""}M${left ?? ""} ${down ?? ""}L${right ?? ""} ${up ?? ""}`;
    return drawElement("path", { d, ...INK, fill: "none", "stroke-width": 2 });
  },
};

/**
 * What happened to one sign, in a lane for each way above the plot; from a day introduced a dashed line goes down.
 *
 * @param lanes - heights of the lanes, in the order of the ways that have courses
 */
export const drawEvents = (
  panel: Panel,
  events: readonly MasteryEvent[],
  lanes: ReadonlyMap<MasteryEvent["way"], number>,
): LabelledMark => {
  const { x, bottom, fontSize } = panel;
  const names =
    lanes.size < 2
      ? []
      : [...lanes].map(([way, y]) =>
          drawElement(
            "text",
            { x: panel.left - 6, y: y + 0.35 * fontSize, "text-anchor": "end", "font-size": fontSize - 2 },
            way,
          ),
        );
  const drawn = events.map(({ day, what, way }) => {
    const [at, lane] = [x.place(day), lanes.get(way) ?? panel.top];
    if (what !== "introduced") return { markup: SHAPES[what](at, lane), boxes: [] };
    const dashes = { ...INK, "stroke-width": 1.25, "stroke-dasharray": "4 4" };
    return {
      markup: drawElement("line", { x1: at, x2: at, y1: lane - 6, y2: bottom, ...dashes }),
      boxes: boxesAlong(at, panel.top, at, bottom),
    };
  });
  return {
    markup: [...names, ...drawn.map(({ markup }) => markup)].join("\n"),
    boxes: drawn.flatMap(({ boxes }) => boxes),
    labels: [],
  };
};

/** What each sign in the lanes means, in one line; only those that occur. */
export const drawEventKey = (panel: Panel, events: readonly MasteryEvent[], y: number): readonly string[] => {
  const { fontSize } = panel;
  let x = panel.left;
  return (Object.keys(SHAPES) as Happening[]).flatMap((what) => {
    if (!events.some((event) => event.what === what)) return [];
    const at = x + 6;
    x += 16 + estimateWidth(what, fontSize) + 12;
    return [SHAPES[what](at, y - 0.35 * fontSize), drawElement("text", { x: at + 10, y }, escapeText(what))];
  });
};

/** Heights of the lanes above a plot, one for each way that has something to show. */
export const layOutLanes = (
  events: readonly MasteryEvent[],
  top: number,
): ReadonlyMap<MasteryEvent["way"], number> =>
  new Map(
    WAYS.filter((way) => events.some((event) => event.way === way)).map((way, i) => [way, top + 9 + 18 * i]),
  );
