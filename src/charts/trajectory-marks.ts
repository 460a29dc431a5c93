import type { DailyValue, PhaseStretch } from "../domain/progress/phases";
import type { SeriesPoint } from "../domain/progress/series";
import type { Line, Trajectory, TrendBand } from "../domain/progress/trajectory";
import { boxesAlong, type Box } from "./label-placement";
import { drawElement, escapeText } from "./svg-element";
import type { Frame } from "./trajectory-frame";

/** Something drawn, and the room it takes from labels. */
export interface Mark {
  readonly markup: string;
  readonly boxes: readonly Box[];
}

/** Accent on white 4.5 : 1, on near-black 3.7 : 1; a page may override it through the class. */
export const ACCENT = "#2a78c8";
const ACCENT_LINE = { class: "accent-line", stroke: ACCENT, fill: "none" };

/** A straight line between two days, cut off where it leaves the plot. */
const drawLine = (frame: Frame, line: Line, look: Readonly<Record<string, string | number>>): Mark => {
  const cut = cutToPlot(frame, line);
  if (cut === undefined) return { markup: "", boxes: [] };
  const [x1, y1] = [frame.x.place(cut.fromDay), frame.y.place(cut.fromValue)];
  const [x2, y2] = [frame.x.place(cut.toDay), frame.y.place(cut.toValue)];
  return { markup: drawElement("line", { x1, y1, x2, y2, ...look }), boxes: boxesAlong(x1, y1, x2, y2) };
};

/** The part of a line between the lowest and the highest value of the axis. */
export const cutToPlot = ({ y }: Frame, line: Line): Line | undefined => {
  const rise = line.toValue - line.fromValue;
  const shareAt = (value: number): number => (value - line.fromValue) / rise;
  let [start, end] = [0, 1];
  if (rise === 0) {
    if (line.fromValue < y.low || line.fromValue > y.high) return undefined;
  } else {
    const [enter, leave] = rise > 0 ? [shareAt(y.low), shareAt(y.high)] : [shareAt(y.high), shareAt(y.low)];
    [start, end] = [Math.max(0, enter), Math.min(1, leave)];
    if (start >= end) return undefined;
  }
  const days = line.toDay - line.fromDay;
  return {
    fromDay: (line.fromDay + start * days) as Line["fromDay"],
    fromValue: line.fromValue + start * rise,
    toDay: (line.fromDay + end * days) as Line["toDay"],
    toValue: line.fromValue + end * rise,
  };
};

/** The aim line in long dashes, held at the goal after its date. */
export const drawAim = (frame: Frame, aim: Line): readonly Mark[] => {
  const look = { stroke: "currentColor", "stroke-width": 1.5, "stroke-dasharray": "9 5" };
  const held = {
    fromDay: aim.toDay,
    fromValue: aim.toValue,
    toDay: frame.x.high as Line["toDay"],
    toValue: aim.toValue,
  };
  return [drawLine(frame, aim, look), ...(frame.x.high > aim.toDay ? [drawLine(frame, held, look)] : [])];
};

/** The criterion as a thin level line of dashes and dots. */
export const drawCriterion = (frame: Frame, criterion: number): Mark => {
  const [from, to] = [frame.x.low, frame.x.high] as Line["fromDay"][];
  const line = { fromDay: from, fromValue: criterion, toDay: to, toValue: criterion } as Line;
  return drawLine(frame, line, {
    stroke: "currentColor",
    "stroke-width": 1,
    "stroke-dasharray": "7 3 1.5 3",
  });
};

/** The trend as a solid line in its band, and its projection in dots. */
export const drawTrend = (frame: Frame, trend: TrendBand): readonly Mark[] => {
  const clamp = (value: number): number =>
    frame.y.place(Math.min(frame.y.high, Math.max(frame.y.low, value)));
  const at = ({ day }: { readonly day: number }): string => frame.x.place(day).toFixed(1);
  const upper = trend.band.map((edge) => `${at(edge)},${clamp(edge.high).toFixed(1)}`);
  const lower = trend.band.map((edge) => `${at(edge)},${clamp(edge.low).toFixed(1)}`).reverse();
  const band = drawElement("polygon", {
    class: "accent-area",
    points: [...upper, ...lower].join(" "),
    fill: ACCENT,
    "fill-opacity": 0.2,
  });
  const line = drawLine(frame, trend.line, { ...ACCENT_LINE, "stroke-width": 3 });
  const dots = {
    ...ACCENT_LINE,
    "stroke-width": 3,
    "stroke-dasharray": "0.1 6.5",
    "stroke-linecap": "round",
  };
  const ahead = trend.projection && drawLine(frame, trend.projection, dots);
  return [{ markup: band, boxes: [] }, line, ...(ahead ? [ahead] : [])];
};

/** Radius of a point: smaller where many days share the width. */
export const pointRadius = ({ x, left, right, width }: Frame, days: number): number =>
  Math.max(
    2.2,
    Math.min(width < 420 ? 3.5 : 4.5, (0.32 * (right - left)) / Math.max(1, days, (x.high - x.low) / 14)),
  );

/** The data path of a phase: straight from day to day, leaving the points free so that open ones stay open. */
export const drawPath = (frame: Frame, { daily }: PhaseStretch, radius: number): Mark => {
  const pieces: string[] = [];
  const boxes: Box[] = [];
  daily.forEach((to, i) => {
    const from = daily[i - 1];
    if (from === undefined) return;
    const [x1, y1, x2, y2] = [
      frame.x.place(from.day),
      frame.y.place(from.value),
      frame.x.place(to.day),
      frame.y.place(to.value),
    ];
    const length = Math.hypot(x2 - x1, y2 - y1);
    boxes.push(...boxesAlong(x1, y1, x2, y2));
    if (length <= 2 * radius) return;
    const [dx, dy] = [((x2 - x1) * radius) / length, ((y2 - y1) * radius) / length];
    pieces.push(
      `M${(x1 + dx).toFixed(1)} ${(y1 + dy).toFixed(1)}L${(x2 - dx).toFixed(1)} ${(y2 - dy).toFixed(1)}`,
    );
  });
  const markup = drawElement("path", {
    d: pieces.join(""),
    fill: "none",
    stroke: "currentColor",
    "stroke-width": 1.5,
  });
  return { markup: pieces.length === 0 ? "" : markup, boxes };
};

/** Where one probe or one day's median is drawn. */
const boxAround = (x: number, y: number, radius: number): Box => ({
  left: x - radius,
  top: y - radius,
  right: x + radius,
  bottom: y + radius,
});

/** A day's value: a filled or open circle, by phase. */
export const drawDay = (frame: Frame, { day, value }: DailyValue, open: boolean, radius: number): Mark => {
  const [cx, cy] = [frame.x.place(day), frame.y.place(value)];
  const look = open
    ? { r: radius - 0.75, fill: "none", stroke: "currentColor", "stroke-width": 1.5 }
    : { r: radius, fill: "currentColor" };
  return {
    markup: drawElement("circle", { cx, cy, ...look, "data-day": day }),
    boxes: [boxAround(cx, cy, radius + 1)],
  };
};

/** One of several probes of a day: a small dot beside the day's median. */
export const drawSingle = (frame: Frame, { probe, value }: SeriesPoint, radius: number): Mark => {
  const [cx, cy] = [frame.x.place(Math.floor(probe.day)), frame.y.place(value)];
  const markup = drawElement("circle", { cx, cy, r: Math.max(1.2, radius * 0.42), fill: "currentColor" });
  return { markup, boxes: [boxAround(cx, cy, radius * 0.5)] };
};

/** A supported probe: an open triangle. */
export const drawSupported = (frame: Frame, { probe, value }: SeriesPoint, radius: number): Mark => {
  const [x, y] = [frame.x.place(Math.floor(probe.day)), frame.y.place(value)];
  const size = radius + 1;
  const corners = [
    [x, y - size],
    [x + 0.9 * size, y + 0.6 * size],
    [x - 0.9 * size, y + 0.6 * size],
  ];
  const points = corners.map((corner) => corner.map((n) => n.toFixed(1)).join(",")).join(" ");
  return {
    markup: drawElement("polygon", { points, fill: "none", stroke: "currentColor", "stroke-width": 1.5 }),
    boxes: [boxAround(x, y, size + 1)],
  };
};

/** The dashed line at each phase change, and each phase's name above. */
export const drawPhases = (frame: Frame, { phases }: Trajectory): Mark => {
  if (phases.length < 2) return { markup: "", boxes: [] };
  const edges = phases.map((phase, i) => phaseEdge(frame, phases[i - 1], phase));
  const boxes: Box[] = [];
  const lines = edges.slice(1).map((x, i) => {
    const label = frame.phaseRows[(i + 1) % frame.phaseRows.length] ?? frame.top;
    boxes.push(...boxesAlong(x, frame.top, x, frame.bottom));
    return drawElement("line", {
      x1: x,
      x2: x,
      y1: label - 0.8 * frame.fontSize,
      y2: frame.bottom,
      stroke: "currentColor",
      "stroke-width": 1.25,
      "stroke-dasharray": "4 4",
    });
  });
  return { markup: [...lines, ...namePhases(frame, phases, edges)].join("\n"), boxes };
};

/** Half-way between the last day before and the first day after. */
const phaseEdge = (frame: Frame, before: PhaseStretch | undefined, after: PhaseStretch): number => {
  const [last, first] = [before?.points.at(-1)?.probe.day, after.points[0]?.probe.day];
  return last === undefined || first === undefined ? frame.left : frame.x.place((last + first) / 2);
};

const namePhases = (
  frame: Frame,
  phases: readonly PhaseStretch[],
  edges: readonly number[],
): readonly string[] => {
  const { fontSize, phaseRows, right } = frame;
  return phases.map((phase, i) => {
    const row = i % phaseRows.length;
    const x = (edges[i] ?? frame.left) + (i === 0 ? 0 : 5);
    // The line of the next phase reaches up through the lowest row, past a name in it.
    const next = edges[i + (row === 0 ? 1 : phaseRows.length)] ?? right + 8;
    const room = next - x - 4;
    const name = shorten(phase.name === "" ? "before" : phase.name, Math.floor(room / (0.54 * fontSize)));
    return drawElement("text", { x, y: phaseRows[row] ?? frame.top }, escapeText(name));
  });
};

/** A text of at most so many characters, its end shown as cut off. */
const shorten = (text: string, most: number): string => {
  const characters = [...text];
  return characters.length <= most
    ? text
    : `${characters
        .slice(0, Math.max(1, most - 1))
        .join("")
        .trimEnd()}…`;
};
