import { formatNumber, formatValue } from "../domain/progress/measure-words";
import { linearScale, roundTicks, type AxisScale } from "./axis-scale";
import { boxesAlong, type Box, type Label, type TextPlace } from "./label-placement";
import type { KnownOn, MasteredFrom, MasteryEvent, Way } from "./mastery-course";
import { drawElement, escapeText } from "./svg-element";
import type { Mark } from "./trajectory-lines";

/** One of the plots that stand above each other over the same days. */
export interface Panel {
  readonly title: string;
  /** height of the title's baseline */
  readonly titleAt: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly fontSize: number;
  readonly x: AxisScale;
  readonly y: AxisScale;
  readonly ticks: readonly number[];
  readonly formatTick: (value: number) => string;
}

/** A mark, with the labels that belong to it. */
export interface LabelledMark extends Mark {
  readonly labels: readonly Label[];
}

const INK = { stroke: "currentColor" };
/** Reading is a full line with filled circles, writing a dashed one with open squares. */
const LINES: Readonly<Record<Way, Readonly<Record<string, string | number>>>> = {
  reading: { ...INK, fill: "none", "stroke-width": 2 },
  writing: { ...INK, fill: "none", "stroke-width": 2, "stroke-dasharray": "7 4" },
};

/** A plot of shares from 0 to 100 %. */
export const sharePanel = (place: Omit<Panel, "y" | "ticks" | "formatTick">): Panel => ({
  ...place,
  y: linearScale(0, 1, place.bottom, place.top),
  ticks: place.bottom - place.top < 120 ? [0, 0.5, 1] : [0, 0.2, 0.4, 0.6, 0.8, 1],
  formatTick: (value) => formatValue(value, "accuracy"),
});

/** A plot of whole numbers from 0. */
export const countPanel = (place: Omit<Panel, "y" | "ticks" | "formatTick">, most: number): Panel => {
  const ticks = roundTicks(0, Math.max(1, most), 4).filter(Number.isInteger);
  return {
    ...place,
    y: linearScale(0, Math.max(ticks.at(-1) ?? 1, most), place.bottom, place.top),
    ticks,
    formatTick: (value) => formatNumber(value),
  };
};

/** Title, faint lines across, and the numbers of the vertical axis. */
export const drawPanel = (panel: Panel): readonly string[] => {
  const { title, titleAt, left, right, top, bottom, y, fontSize, ticks, formatTick } = panel;
  return [
    drawElement("text", { x: 2, y: titleAt, "font-weight": 600 }, escapeText(title)),
    ...ticks.map((tick) =>
      drawElement("line", {
        x1: left,
        x2: right,
        y1: y.place(tick),
        y2: y.place(tick),
        ...INK,
        "stroke-width": 1,
        "stroke-opacity": tick === 0 ? 1 : 0.18,
      }),
    ),
    drawElement("line", { x1: left, x2: left, y1: top, y2: bottom, ...INK, "stroke-width": 1 }),
    ...ticks.map((tick) =>
      drawElement(
        "text",
        { x: left - 6, y: y.place(tick) + 0.35 * fontSize, "text-anchor": "end" },
        escapeText(formatTick(tick)),
      ),
    ),
  ];
};

const drawPoint = (x: number, y: number, radius: number, way: Way): string =>
  way === "reading"
    ? drawElement("circle", { cx: x, cy: y, r: radius, fill: "currentColor" })
    : drawElement("rect", {
        x: x - radius,
        y: y - radius,
        width: 2 * radius,
        height: 2 * radius,
        class: "hollow",
        fill: "none",
        ...INK,
        "stroke-width": 1.5,
      });

/** The name of a way beside its line, from its end backwards: above the upper line, under the lower one. */
const nameLine = (
  places: readonly (readonly [number, number])[],
  way: Way,
  fontSize: number,
  isUpper: boolean,
): Label => ({
  text: way,
  places: [...places].reverse().flatMap(([x, y]): TextPlace[] =>
    [7, 15, 24].flatMap((away): TextPlace[] =>
      (["end", "middle"] as const).map((anchor) => ({
        x,
        y: isUpper ? y - away : y + away + 0.8 * fontSize,
        anchor,
      })),
    ),
  ),
});

/** The share expected right by day, with the band of its interval. */
export const drawKnown = (
  panel: Panel,
  known: readonly KnownOn[],
  way: Way,
  isUpper: boolean,
): LabelledMark => {
  const { x, y, fontSize } = panel;
  if (known.length === 0) return { markup: "", boxes: [], labels: [] };
  const clamp = (share: number): number => y.place(Math.min(1, Math.max(0, share)));
  const places = known.map(({ day, expected }) => [x.place(day), clamp(expected)] as const);
  const edge = (pick: (on: KnownOn) => number): readonly string[] =>
    known.map((on) => `${x.place(on.day).toFixed(1)},${clamp(pick(on)).toFixed(1)}`);
  const band = drawElement("polygon", {
    class: "accent-area",
    points: [...edge(({ high }) => high), ...[...edge(({ low }) => low)].reverse()].join(" "),
    fill: "#2a78c8",
    "fill-opacity": way === "reading" ? 0.2 : 0.1,
  });
  const line = drawElement("polyline", {
    points: places.map((place) => place.map((n) => n.toFixed(1)).join(",")).join(" "),
    ...LINES[way],
  });
  const radius = Math.max(1.5, Math.min(3.5, (0.3 * (panel.right - panel.left)) / known.length));
  const boxes = places.flatMap(([x2, y2], i): readonly Box[] => {
    const [x1, y1] = places[i - 1] ?? [x2, y2];
    return boxesAlong(x1, y1, x2, y2, radius);
  });
  return {
    markup: [band, line, ...places.map(([px, py]) => drawPoint(px, py, radius, way))].join("\n"),
    boxes,
    labels: [nameLine(places, way, fontSize, isUpper)],
  };
};

/** The number of signs mastered as a stepped line up to the last day of the axis, a point where it changes. */
export const drawMastered = (
  panel: Panel,
  steps: readonly MasteredFrom[],
  way: Way,
  isUpper: boolean,
): LabelledMark => {
  const { x, y, fontSize } = panel;
  const corners: [number, number][] = [[x.place(x.low), y.place(0)]];
  for (const { day, count } of steps) {
    const before = corners.at(-1)?.[1] ?? y.place(0);
    corners.push([x.place(day), before], [x.place(day), y.place(count)]);
  }
  corners.push([x.place(x.high), corners.at(-1)?.[1] ?? y.place(0)]);
  const line = drawElement("polyline", {
    points: corners.map((place) => place.map((n) => n.toFixed(1)).join(",")).join(" "),
    ...LINES[way],
  });
  const radius = Math.max(1.5, Math.min(3, (0.3 * (panel.right - panel.left)) / Math.max(1, steps.length)));
  const points = steps.map(({ day, count }) => drawPoint(x.place(day), y.place(count), radius, way));
  const boxes = corners.flatMap(([x2, y2], i): readonly Box[] => {
    const [x1, y1] = corners[i - 1] ?? [x2, y2];
    return boxesAlong(x1, y1, x2, y2, 2);
  });
  return { markup: [line, ...points].join("\n"), boxes, labels: [nameLine(corners, way, fontSize, isUpper)] };
};

/** Signs: a short upright stroke at the foot for each day on which signs were introduced. */
export const drawIntroductions = (panel: Panel, events: readonly MasteryEvent[]): string =>
  [...new Set(events.filter(({ what }) => what === "introduced").map(({ day }) => day))]
    .map((day) =>
      drawElement("line", {
        x1: panel.x.place(day),
        x2: panel.x.place(day),
        y1: panel.bottom,
        y2: panel.bottom - 7,
        ...INK,
        "stroke-width": 2,
      }),
    )
    .join("\n");
