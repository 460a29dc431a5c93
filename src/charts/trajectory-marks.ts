import type { DailyValue, PhaseStretch } from "../domain/progress/phases";
import type { SeriesPoint } from "../domain/progress/series";
import type { Trajectory } from "../domain/progress/trajectory";
import { boxesAlong, type Box } from "./label-placement";
import { drawElement, escapeText } from "./svg-element";
import type { Frame } from "./trajectory-frame";
import type { Mark } from "./trajectory-lines";

/** Radius of a point: smaller where many days share the width. */
export const pointRadius = ({ x, left, right, width }: Frame, days: number): number =>
  Math.max(
    2.2,
    Math.min(width < 420 ? 3.5 : 4.5, (0.32 * (right - left)) / Math.max(1, days, (x.high - x.low) / 14)),
  );

/** Whether a value can be placed: a ratio scale has no 0. */
export const hasPlace = ({ y }: Frame, value: number): boolean => y.kind === "equal-interval" || value > 0;

/** The data path of a phase: straight from day to day, leaving the points free so that open ones stay open. */
export const drawPath = (frame: Frame, { daily }: PhaseStretch, radius: number): Mark => {
  const pieces: string[] = [];
  const boxes: Box[] = [];
  daily.forEach((to, i) => {
    const from = daily[i - 1];
    if (from === undefined || !hasPlace(frame, from.value) || !hasPlace(frame, to.value)) return;
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

/** How a day stands out: as any other, as a check that something learned was kept, or with no place on the scale. */
export type DayMark = "day" | "maintenance" | "no place";

/** A day's value: a circle, a square for a maintenance check, a triangle on its tip at the foot for a 0 without place. */
export const drawDay = (
  frame: Frame,
  { day, value }: DailyValue,
  look: { readonly open: boolean; readonly radius: number; readonly mark: DayMark },
): Mark => {
  const { open, radius, mark } = look;
  const [x, y] = [frame.x.place(day), frame.y.place(value)];
  const ink = open ? { fill: "none", stroke: "currentColor", "stroke-width": 1.5 } : { fill: "currentColor" };
  const size = open ? radius - 0.75 : radius;
  const boxes = [boxAround(x, y, radius + 1)];
  if (mark === "maintenance") {
    const side = 2 * size;
    const place = { x: x - size, y: y - size, width: side, height: side };
    return { markup: drawElement("rect", { ...place, ...ink, "data-day": day }), boxes };
  }
  if (mark === "no place") {
    const corners = [
      [x, y - 1],
      [x - 0.9 * size, y - 1 - 1.6 * size],
      [x + 0.9 * size, y - 1 - 1.6 * size],
    ];
    return {
      markup: drawElement("polygon", { points: joinCorners(corners), ...ink, "data-day": day }),
      boxes,
    };
  }
  return { markup: drawElement("circle", { cx: x, cy: y, r: size, ...ink, "data-day": day }), boxes };
};

const joinCorners = (corners: readonly (readonly number[])[]): string =>
  corners.map((corner) => corner.map((n) => n.toFixed(1)).join(",")).join(" ");

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
  return {
    markup: drawElement("polygon", {
      points: joinCorners(corners),
      fill: "none",
      stroke: "currentColor",
      "stroke-width": 1.5,
    }),
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
