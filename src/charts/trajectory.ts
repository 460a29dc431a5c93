import { formatDay } from "../domain/calendar";
import { formatNumber, formatValue } from "../domain/progress/measure-words";
import type { Measure } from "../domain/progress/measure";
import type { DailyValue, PhaseStretch } from "../domain/progress/phases";
import { isMaintenanceCheck } from "../domain/probe/maintenance-check";
import { fitRatioTrend, type RatioTrend } from "../domain/progress/ratio-trend";
import type { Line, Trajectory, TrendBand } from "../domain/progress/trajectory";
import type { ChartPicture } from "./chart-picture";
import { placeLabels, type Label, type TextPlace } from "./label-placement";
import { drawElement, escapeText } from "./svg-element";
import { drawAxes, layOutFrame, type Frame, type FrameLook } from "./trajectory-frame";
import {
  ACCENT,
  bendLine,
  cutToPlot,
  drawAim,
  drawCriterion,
  drawTrend,
  type Mark,
} from "./trajectory-lines";
import {
  drawDay,
  drawPath,
  drawPhases,
  drawSingle,
  drawSupported,
  hasPlace,
  pointRadius,
  type DayMark,
} from "./trajectory-marks";
import { formatFactor, summarise, tabulate, titleOf } from "./trajectory-text";

/** How a trajectory is drawn. */
export interface TrajectoryLook extends FrameLook {
  /** begins the ids of title and description: different for each picture of a page */
  readonly idPrefix?: string;
  /** one of many small pictures: nothing is written into the plot */
  readonly small?: boolean;
}

/** The trend as it is drawn: by differences, or by factors on a ratio scale. */
type DrawnTrend =
  | { readonly kind: "equal-interval"; readonly trend: TrendBand }
  | { readonly kind: "ratio"; readonly trend: RatioTrend };

const chooseTrend = (trajectory: Trajectory, look: FrameLook): DrawnTrend | undefined => {
  if (look.scale !== "ratio") return trajectory.trend && { kind: "equal-interval", trend: trajectory.trend };
  const trend = fitRatioTrend(trajectory);
  return trend && { kind: "ratio", trend };
};

/**
 * A single-pupil progress graph: points filled or open by phase, the data path of daily medians broken at phase
 * changes, dashed lines there with names above, the aim line, the trend with the 90 % band of its fitted value and a
 * dotted projection, triangles for supported probes, squares for maintenance checks, the criterion line, units on both
 * axes. Values go from 0; or by factors on a ratio scale, where the trend is fitted to logarithms and a day at 0 stands
 * as a triangle at the foot.
 *
 * Ink is `currentColor`, with one accent for the trend; nothing is told by colour alone. A page may recolour the
 * classes `accent-line`, `accent-area` and `accent-text`.
 *
 * Source: graphing conventions of behaviour analysis (from lecture slides).
 *
 * @param look - size in pixels; 320 wide is enough
 */
export const drawTrajectory = (
  trajectory: Trajectory,
  look: TrajectoryLook = { width: 640 },
): ChartPicture => {
  const frame = layOutFrame(trajectory, look);
  const title = titleOf(trajectory);
  const trend = chooseTrend(trajectory, look);
  const summary = summarise(trajectory, trend?.kind === "ratio" ? trend.trend : undefined, look.scale);
  const [titleId, descId] = ["title", "desc"].map((part) => `${look.idPrefix ?? "trajectory"}-${part}`);
  const marks = drawMarks(frame, trajectory, trend);
  const labels = placeLabels(
    look.small === true ? [] : listLabels(frame, trajectory, trend),
    marks.flatMap(({ boxes }) => boxes),
    { left: frame.left + 2, top: frame.top, right: frame.right, bottom: frame.bottom - 2 },
    frame.fontSize,
  );
  const svg = drawElement(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      role: "img",
      "aria-labelledby": `${titleId} ${descId}`,
      viewBox: `0 0 ${frame.width} ${frame.height}`,
      width: frame.width,
      height: frame.height,
      "font-family": "system-ui, 'Segoe UI', 'DejaVu Sans', sans-serif",
      "font-size": frame.fontSize,
      fill: "currentColor",
    },
    [
      drawElement("title", { id: titleId }, escapeText(title)),
      drawElement("desc", { id: descId }, escapeText(summary.join(" "))),
      ...drawAxes(frame, trajectory),
      ...marks.map(({ markup }) => markup),
      ...labels.map(({ text, x, y, anchor, accent }) =>
        drawElement(
          "text",
          { x, y, "text-anchor": anchor, ...(accent && { class: "accent-text", fill: ACCENT }) },
          escapeText(text),
        ),
      ),
    ],
  );
  return { svg, title, summary: [...summary, ...trajectory.outlook], table: tabulate(trajectory) };
};

const drawMarks = (frame: Frame, trajectory: Trajectory, trend: DrawnTrend | undefined): readonly Mark[] => {
  const { phases, aimLine, criterion } = trajectory;
  const daily = phases.reduce((days, phase) => days + phase.daily.length, 0);
  const radius = pointRadius(frame, daily);
  return [
    ...(trend ? drawTrend(frame, trend.trend) : []),
    drawPhases(frame, trajectory),
    ...(criterion === undefined ? [] : [drawCriterion(frame, criterion)]),
    ...(aimLine ? drawAim(frame, aimLine) : []),
    ...phases.map((phase) => drawPath(frame, phase, radius + 1)),
    ...phases.flatMap((phase, i) =>
      drawPoints(frame, trajectory, i, radius).concat(drawSupports(frame, phase.points, radius)),
    ),
  ];
};

/** A day with several probes shows each as a small dot beside the median. */
const drawPoints = (frame: Frame, { phases }: Trajectory, index: number, radius: number): readonly Mark[] => {
  const phase = phases[index];
  if (phase === undefined) return [];
  const open = phases.length > 1 && index % 2 === 0;
  const probesOn = new Map<number, number>();
  const unaided = phase.points.filter((point) => !point.supported);
  for (const { probe } of unaided)
    probesOn.set(Math.floor(probe.day), (probesOn.get(Math.floor(probe.day)) ?? 0) + 1);
  return [
    ...unaided
      .filter(({ probe }) => (probesOn.get(Math.floor(probe.day)) ?? 0) > 1)
      .map((point) => drawSingle(frame, point, radius)),
    ...phase.daily.map((day) => drawDay(frame, day, { open, radius, mark: markOf(frame, phase, day) })),
  ];
};

/** A day is a maintenance check where every probe of it is. */
const markOf = (frame: Frame, { points }: PhaseStretch, { day, value }: DailyValue): DayMark => {
  if (!hasPlace(frame, value)) return "no place";
  const ofDay = points.filter(({ probe, supported }) => !supported && Math.floor(probe.day) === day);
  return ofDay.every(({ probe }) => isMaintenanceCheck(probe)) ? "maintenance" : "day";
};

const drawSupports = (
  frame: Frame,
  points: Trajectory["series"]["points"],
  radius: number,
): readonly Mark[] =>
  points.filter((point) => point.supported).map((point) => drawSupported(frame, point, radius));

const listLabels = (
  frame: Frame,
  { series, phases, aimLine, criterion }: Trajectory,
  drawn: DrawnTrend | undefined,
): readonly Label[] => {
  const { measure } = series.key;
  const trendLines = drawn
    ? [drawn.trend.projection, drawn.trend.line].filter((line) => line !== undefined)
    : [];
  const trendEnd = trendLines[0]?.toValue ?? 0;
  const aimIsUpper = aimLine === undefined || aimLine.toValue >= trendEnd;
  const labels: Label[] = [];
  if (aimLine !== undefined) {
    const text = `aim: ${formatValue(aimLine.toValue, measure)} by ${formatDay(aimLine.toDay)}`;
    const pieces = [...bendLine(frame, aimLine)].reverse();
    labels.push({ text, places: pieces.flatMap((piece) => placesAlong(frame, piece, aimIsUpper)) });
  }
  if (drawn !== undefined) {
    const places = trendLines.flatMap((line) =>
      placesAlong(frame, line, aimLine !== undefined && !aimIsUpper),
    );
    labels.push({ text: nameTrend(drawn, measure), places, accent: true });
  }
  if (criterion !== undefined) {
    const level = {
      fromDay: frame.x.low,
      toDay: frame.x.high,
      fromValue: criterion,
      toValue: criterion,
    } as Line;
    labels.push({
      text: `criterion: ${formatValue(criterion, measure)}`,
      places: placesAlong(frame, level, true),
    });
  }
  const supported = series.points.filter((point) => point.supported);
  if (supported.length > 0) {
    const places = supported.flatMap(({ probe, value }) => placesAround(frame, probe.day, value));
    labels.push({ text: "with support", places, optional: true });
  }
  const days = phases.flatMap((phase) =>
    phase.daily.map((day) => ({ ...day, mark: markOf(frame, phase, day) })),
  );
  for (const [mark, text] of [
    ["maintenance", "maintenance check"],
    ["no place", "0: no place on this scale"],
  ] as const) {
    const places = days
      .filter((day) => day.mark === mark)
      .flatMap(({ day, value }) => placesAround(frame, day, value));
    if (places.length > 0) labels.push({ text, places, optional: true });
  }
  return labels;
};

const nameTrend = (drawn: DrawnTrend, measure: Measure): string => {
  if (drawn.kind === "ratio")
    return `trend: ${formatFactor(drawn.trend.factor)} a week (${drawn.trend.points} days)`;
  const { perWeek, points } = drawn.trend;
  const change = formatNumber((measure === "accuracy" ? 100 : 1) * perWeek, measure === "score" ? 2 : 1);
  const signed = perWeek > 0 && change !== "0" ? `+${change}` : change;
  return `trend: ${signed}${measure === "accuracy" ? " points" : ""} a week (${points} days)`;
};

/** Beside a line, from its end backwards and further and further away: above or below it first. */
const placesAlong = (frame: Frame, line: Line, above: boolean): readonly TextPlace[] => {
  const cut = cutToPlot(frame, line) ?? line;
  const sides = above ? [-1, 1] : [1, -1];
  return sides.flatMap((side) =>
    [0, 1, 2, 3, 4, 5].flatMap((step) =>
      [1, 0.85, 0.7, 0.55, 0.4, 0.25, 0.1, 0].flatMap((share): TextPlace[] => {
        const x = frame.x.place(cut.fromDay + share * (cut.toDay - cut.fromDay));
        const y = frame.y.place(cut.fromValue + share * (cut.toValue - cut.fromValue));
        const away = side * (5 + 8 * step) + (side > 0 ? 0.8 * frame.fontSize : 0);
        const ends: readonly TextPlace["anchor"][] = share > 0.5 ? ["end", "middle"] : ["start", "middle"];
        return ends.map((anchor) => ({ x, y: y + away, anchor }));
      }),
    ),
  );
};

const placesAround = (frame: Frame, day: number, value: number): readonly TextPlace[] => {
  const [x, y] = [frame.x.place(Math.floor(day)), frame.y.place(value)];
  const middle = y + 0.3 * frame.fontSize;
  return [
    { x, y: y - 10, anchor: "middle" },
    { x: x + 9, y: middle, anchor: "start" },
    { x: x - 9, y: middle, anchor: "end" },
    { x, y: y + 10 + 0.8 * frame.fontSize, anchor: "middle" },
  ];
};
