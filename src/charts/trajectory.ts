import { formatDay } from "../domain/calendar";
import { formatNumber, formatValue } from "../domain/progress/measure-words";
import type { Measure } from "../domain/progress/measure";
import type { Line, Trajectory, TrendBand } from "../domain/progress/trajectory";
import type { ChartPicture } from "./chart-picture";
import { placeLabels, type Label, type TextPlace } from "./label-placement";
import { drawElement, escapeText } from "./svg-element";
import { drawAxes, layOutFrame, type Frame, type PictureSize } from "./trajectory-frame";
import {
  ACCENT,
  cutToPlot,
  drawAim,
  drawCriterion,
  drawDay,
  drawPath,
  drawPhases,
  drawSingle,
  drawSupported,
  drawTrend,
  pointRadius,
  type Mark,
} from "./trajectory-marks";
import { summarise, tabulate, titleOf } from "./trajectory-text";

/** How a trajectory is drawn. */
export interface TrajectoryLook extends PictureSize {
  /** begins the ids of title and description: different for each picture of a page */
  readonly idPrefix?: string;
}

/**
 * A single-pupil progress graph: points filled or open by phase, the data path of daily medians broken at phase
 * changes, dashed lines there with names above, the aim line, the trend with the 90 % band of its fitted value and a
 * dotted projection, triangles for supported probes, the criterion line, units on both axes, values from 0.
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
  const summary = summarise(trajectory);
  const [titleId, descId] = ["title", "desc"].map((part) => `${look.idPrefix ?? "trajectory"}-${part}`);
  const marks = drawMarks(frame, trajectory);
  const labels = placeLabels(
    listLabels(frame, trajectory),
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
  return { svg, title, summary, table: tabulate(trajectory) };
};

const drawMarks = (frame: Frame, trajectory: Trajectory): readonly Mark[] => {
  const { phases, aimLine, trend, criterion } = trajectory;
  const daily = phases.reduce((days, phase) => days + phase.daily.length, 0);
  const radius = pointRadius(frame, daily);
  return [
    ...(trend ? drawTrend(frame, trend) : []),
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
    ...phase.daily.map((day) => drawDay(frame, day, open, radius)),
  ];
};

const drawSupports = (
  frame: Frame,
  points: Trajectory["series"]["points"],
  radius: number,
): readonly Mark[] =>
  points.filter((point) => point.supported).map((point) => drawSupported(frame, point, radius));

const listLabels = (frame: Frame, { series, aimLine, trend, criterion }: Trajectory): readonly Label[] => {
  const { measure } = series.key;
  const trendLines = trend ? [trend.projection, trend.line].filter((line) => line !== undefined) : [];
  const trendEnd = trendLines[0]?.toValue ?? 0;
  const aimIsUpper = aimLine === undefined || aimLine.toValue >= trendEnd;
  const labels: Label[] = [];
  if (aimLine !== undefined) {
    const text = `aim: ${formatValue(aimLine.toValue, measure)} by ${formatDay(aimLine.toDay)}`;
    labels.push({ text, places: placesAlong(frame, aimLine, aimIsUpper) });
  }
  if (trend !== undefined) {
    const places = trendLines.flatMap((line) =>
      placesAlong(frame, line, aimLine !== undefined && !aimIsUpper),
    );
    labels.push({ text: nameTrend(trend, measure), places, accent: true });
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
  return labels;
};

const nameTrend = ({ perWeek, points }: TrendBand, measure: Measure): string => {
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
