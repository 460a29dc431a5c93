import type { Line, TrendBand } from "../domain/progress/trajectory";
import { boxesAlong, type Box } from "./label-placement";
import { drawElement } from "./svg-element";
import type { Frame } from "./trajectory-frame";

/** Something drawn, and the room it takes from labels. */
export interface Mark {
  readonly markup: string;
  readonly boxes: readonly Box[];
}

/** Accent on white 4.5 : 1, on near-black 3.7 : 1; a page may override it through the class. */
export const ACCENT = "#2a78c8";
const ACCENT_LINE = { class: "accent-line", stroke: ACCENT, fill: "none" };

/** Pieces into which a line of equal steps is cut to follow its bend on a ratio scale. */
const BEND_PIECES = 24;

/** A line of equal steps a day in pieces that are straight on the picture: itself, or many on a ratio scale. */
export const bendLine = ({ y }: Frame, line: Line): readonly Line[] => {
  if (y.kind === "equal-interval") return [line];
  const at = (share: number): { readonly day: Line["toDay"]; readonly value: number } => ({
    day: (line.fromDay + share * (line.toDay - line.fromDay)) as Line["toDay"],
    value: line.fromValue + share * (line.toValue - line.fromValue),
  });
  return Array.from({ length: BEND_PIECES }, (_, i) => {
    const [from, to] = [at(i / BEND_PIECES), at((i + 1) / BEND_PIECES)];
    return { fromDay: from.day, fromValue: from.value, toDay: to.day, toValue: to.value };
  }).filter(({ fromValue, toValue }) => fromValue > 0 && toValue > 0);
};

/** Lines that follow on each other and are straight on the picture, cut off where they leave the plot. */
const drawLines = (
  frame: Frame,
  lines: readonly Line[],
  look: Readonly<Record<string, string | number>>,
): Mark => {
  const cut = lines.flatMap((line) => cutToPlot(frame, line) ?? []);
  const places = cut.map(({ fromDay, fromValue, toDay, toValue }) => ({
    x1: frame.x.place(fromDay),
    y1: frame.y.place(fromValue),
    x2: frame.x.place(toDay),
    y2: frame.y.place(toValue),
  }));
  const [first] = places;
  if (first === undefined) return { markup: "", boxes: [] };
  const boxes = places.flatMap(({ x1, y1, x2, y2 }) => boxesAlong(x1, y1, x2, y2));
  if (places.length === 1) return { markup: drawElement("line", { ...first, ...look }), boxes };
  // One path, so that its dashes run on.
  const d = `M${first.x1.toFixed(1)} ${first.y1.toFixed(1)}${places
    .map(({ x2, y2 }) => `L${x2.toFixed(1)} ${y2.toFixed(1)}`)
    .join("")}`;
  return { markup: drawElement("path", { d, fill: "none", ...look }), boxes };
};

/** The part of a line, straight on the picture, that lies between the lowest and the highest value of the axis. */
export const cutToPlot = ({ y }: Frame, line: Line): Line | undefined => {
  const [scale, back] =
    y.kind === "ratio" ? [Math.log, Math.exp] : [(value: number) => value, (value: number) => value];
  const [from, to, low, high] = [line.fromValue, line.toValue, y.low, y.high].map(scale) as [
    number,
    number,
    number,
    number,
  ];
  const rise = to - from;
  const shareAt = (value: number): number => (value - from) / rise;
  let [start, end] = [0, 1];
  if (rise === 0) {
    if (from < low || from > high) return undefined;
  } else {
    const [enter, leave] = rise > 0 ? [shareAt(low), shareAt(high)] : [shareAt(high), shareAt(low)];
    [start, end] = [Math.max(0, enter), Math.min(1, leave)];
    if (!(start < end)) return undefined;
  }
  const days = line.toDay - line.fromDay;
  return {
    fromDay: (line.fromDay + start * days) as Line["fromDay"],
    fromValue: start === 0 ? line.fromValue : back(from + start * rise),
    toDay: (line.fromDay + end * days) as Line["toDay"],
    toValue: end === 1 ? line.toValue : back(from + end * rise),
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
  return [
    drawLines(frame, bendLine(frame, aim), look),
    ...(frame.x.high > aim.toDay ? [drawLines(frame, [held], look)] : []),
  ];
};

/** The criterion as a thin level line of dashes and dots. */
export const drawCriterion = (frame: Frame, criterion: number): Mark => {
  const [from, to] = [frame.x.low, frame.x.high] as Line["fromDay"][];
  const line = { fromDay: from, fromValue: criterion, toDay: to, toValue: criterion } as Line;
  return drawLines(frame, [line], {
    stroke: "currentColor",
    "stroke-width": 1,
    "stroke-dasharray": "7 3 1.5 3",
  });
};

/** The trend as a solid line in its band, and its projection in dots. It is straight on the scale it was fitted on. */
export const drawTrend = (
  frame: Frame,
  trend: Pick<TrendBand, "line" | "band" | "projection">,
): readonly Mark[] => {
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
  const line = drawLines(frame, [trend.line], { ...ACCENT_LINE, "stroke-width": 3 });
  const dots = {
    ...ACCENT_LINE,
    "stroke-width": 3,
    "stroke-dasharray": "0.1 6.5",
    "stroke-linecap": "round",
  };
  const ahead = trend.projection && drawLines(frame, [trend.projection], dots);
  return [{ markup: band, boxes: [] }, line, ...(ahead ? [ahead] : [])];
};
