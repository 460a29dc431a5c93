import { formatValue } from "../domain/progress/measure-words";
import type { Trajectory } from "../domain/progress/trajectory";
import {
  linearScale,
  ratioScale,
  ratioTicks,
  roundTicks,
  type AxisScale,
  type ScaleKind,
} from "./axis-scale";
import { calendarTicks } from "./calendar-ticks";
import { estimateWidth } from "./label-placement";
import { drawElement, escapeText } from "./svg-element";

/** The picture's size in pixels; without a height it follows from the fixed ratio of the axes. */
export interface PictureSize {
  readonly width: number;
  readonly height?: number;
}

/** What of the layout can be set beside the size. */
export interface FrameLook extends PictureSize {
  /** equal differences or equal factors in equal heights; equal-interval by default */
  readonly scale?: ScaleKind;
  /** first and last day of the axis, where several pictures share one */
  readonly days?: readonly [number, number];
}

/** Height of the plot for one of its width: the same for every graph, so that slopes can be compared. */
const RATIO = 0.6;

/** Where things are: the plot's edges in pixels, and the scales of days and values. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly fontSize: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly x: AxisScale;
  readonly y: AxisScale;
  readonly yTicks: readonly number[];
  /** heights of the baselines of phase labels, the lowest first */
  readonly phaseRows: readonly number[];
}

/** Lays out the picture of a trajectory. */
export const layOutFrame = (trajectory: Trajectory, size: FrameLook): Frame => {
  const { width } = size;
  const fontSize = width < 420 ? 12 : 13;
  const lineHeight = Math.round(1.35 * fontSize);
  const measure = trajectory.series.key.measure;
  const isRatio = size.scale === "ratio";
  const [low, high] = isRatio ? spanOfRatios(trajectory) : spanOfValues(trajectory);
  const yTicks = isRatio ? ratioTicks(low, high, 8) : roundTicks(low, high, 5);
  const tickWidth = Math.max(...yTicks.map((tick) => estimateWidth(formatValue(tick, measure), fontSize)));
  const left = Math.ceil(tickWidth) + 12;
  const phaseRowCount = countPhaseRows(trajectory, width - left, fontSize);
  const top = lineHeight + 8 + phaseRowCount * lineHeight;
  const foot = 2 * lineHeight + 8;
  const plot = fitPlot(width - left - 10, size.height === undefined ? undefined : size.height - top - foot);
  const [right, bottom] = [left + plot.width, top + plot.height];
  const [firstDay, lastDay] = size.days ?? spanOfDays([trajectory]);
  const inset = 8;
  return {
    width,
    height: size.height ?? Math.ceil(bottom + foot),
    fontSize,
    left,
    right,
    top,
    bottom,
    x: linearScale(firstDay, lastDay, left + inset, right - inset),
    y: (isRatio ? ratioScale : linearScale)(yTicks[0] ?? low, yTicks.at(-1) ?? high, bottom, top),
    yTicks,
    phaseRows: Array.from({ length: phaseRowCount }, (_, row) => top - 6 - row * lineHeight),
  };
};

/** Names above the phases stand in one row where each has room in its share of the width, else in two. */
const countPhaseRows = ({ phases, series }: Trajectory, width: number, fontSize: number): number => {
  if (phases.length < 2) return 0;
  const [first, last] = [series.points[0], series.points.at(-1)];
  const span = (last?.probe.day ?? 1) - (first?.probe.day ?? 0) || 1;
  const fits = phases.every(({ name, points }, i) => {
    const [from, to] = [
      points[0]?.probe.day ?? 0,
      phases[i + 1]?.points[0]?.probe.day ?? last?.probe.day ?? 0,
    ];
    return estimateWidth(name, fontSize) + 12 < (width * (to - from)) / span || i === phases.length - 1;
  });
  return fits ? 1 : 2;
};

/** The largest plot of the fixed ratio in the room there is. */
const fitPlot = (
  width: number,
  height: number | undefined,
): { readonly width: number; readonly height: number } => {
  const fitted = height === undefined ? width : Math.min(width, Math.max(40, height) / RATIO);
  return { width: fitted, height: fitted * RATIO };
};

/** The first and the last day that any of the pictures shows, never closer together than a week. */
export const spanOfDays = (trajectories: readonly Trajectory[]): readonly [number, number] => {
  let [low, high] = [Infinity, -Infinity];
  for (const { series, aimLine } of trajectories) {
    // Points are in order of day.
    const [first, last] = [series.points[0]?.probe.day, series.points.at(-1)?.probe.day];
    low = Math.min(low, Math.floor(first ?? Infinity), aimLine?.fromDay ?? Infinity);
    high = Math.max(high, Math.floor(last ?? -Infinity), aimLine?.toDay ?? -Infinity);
  }
  return high - low < 6 ? [low - 3, low + 10] : [low, high];
};

/** Values from 0 on, so that heights can be compared; accuracy always reaches 100 %. */
export const spanOfValues = (trajectory: Trajectory): readonly [number, number] => {
  const { series, aimLine, trend, criterion } = trajectory;
  const values = series.points.map(({ value }) => value);
  if (aimLine !== undefined) values.push(aimLine.fromValue, aimLine.toValue);
  if (criterion !== undefined) values.push(criterion);
  if (trend !== undefined) values.push(trend.line.fromValue, trend.line.toValue);
  if (series.key.measure === "accuracy") values.push(1);
  const high = Math.max(0, ...values);
  const low = series.points.some(({ value }) => value < 0) ? Math.min(...values) : 0;
  return [low, series.key.measure === "accuracy" ? Math.max(1, Math.min(high, 1)) : high || 1];
};

/** The lowest and the highest value above 0; never less than a factor of two apart. */
const spanOfRatios = ({ series, aimLine, criterion }: Trajectory): readonly [number, number] => {
  const values = series.points.map(({ value }) => value);
  if (aimLine !== undefined) values.push(aimLine.fromValue, aimLine.toValue);
  if (criterion !== undefined) values.push(criterion);
  const positive = values.filter((value) => value > 0);
  if (positive.length === 0) return [1, 10];
  const [low, high] = [Math.min(...positive), Math.max(...positive)];
  return [low, Math.max(high, 2 * low)];
};

/** The axes with their ticks, numbers and units, and faint lines across. */
export const drawAxes = (frame: Frame, trajectory: Trajectory): readonly string[] => {
  const { left, right, top, bottom, x, y, fontSize } = frame;
  const measure = trajectory.series.key.measure;
  const axis = { stroke: "currentColor", "stroke-width": 1 };
  const foot = y.kind === "ratio" ? y.low : 0;
  const across = frame.yTicks.map((tick) =>
    drawElement("line", {
      x1: left,
      x2: right,
      y1: y.place(tick),
      y2: y.place(tick),
      ...axis,
      "stroke-opacity": tick === foot ? 1 : 0.18,
    }),
  );
  const numbers = frame.yTicks.map((tick) =>
    drawElement(
      "text",
      { x: left - 6, y: y.place(tick) + 0.35 * fontSize, "text-anchor": "end" },
      escapeText(formatValue(tick, measure)),
    ),
  );
  const title = trajectory.measureName.charAt(0).toUpperCase() + trajectory.measureName.slice(1);
  return [
    drawElement("text", { x: 2, y: fontSize + 2, "font-weight": 600 }, escapeText(title)),
    ...across,
    drawElement("line", { x1: left, x2: left, y1: top, y2: bottom, ...axis }),
    ...numbers,
    ...drawDays(frame, x),
  ];
};

/** The horizontal axis of days: a tick, a month or day, and the year where it begins. */
export const drawDays = (
  { width, right, left, bottom, fontSize }: Pick<Frame, "width" | "right" | "left" | "bottom" | "fontSize">,
  x: AxisScale,
): readonly string[] => {
  const widest = estimateWidth(x.high - x.low < 62 ? "28 Sep" : "Sep", fontSize) + 14;
  const ticks = calendarTicks(x.low, x.high, Math.max(2, Math.floor((right - left) / widest)));
  return ticks.flatMap(({ day, label, year }) => {
    const at = x.place(day);
    const half = estimateWidth(label, fontSize) / 2;
    const text = { x: Math.min(at, width - half - 2), "text-anchor": "middle" };
    return [
      drawElement("line", {
        x1: at,
        x2: at,
        y1: bottom,
        y2: bottom + 4,
        stroke: "currentColor",
        "stroke-width": 1,
      }),
      drawElement("text", { ...text, y: bottom + 6 + fontSize }, escapeText(label)),
      ...(year === undefined ? [] : [drawElement("text", { ...text, y: bottom + 8 + 2 * fontSize }, year)]),
    ];
  });
};
