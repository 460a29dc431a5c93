import type { AxisScale } from "./axis-scale";
import type { PlainChart, PlainPath, PlainPoint } from "./plain-chart";
import { drawAround } from "./tactile-line";
import { LEAST_COMPONENT, type TactileElement } from "./tactile-check";
import { findNearer, type Spot, type TactileShape } from "./tactile-shape";

/** Where the data go: scales in millimetres, the least gap, and what is on the paper already. */
export interface TactilePlot {
  readonly x: AxisScale;
  readonly y: AxisScale;
  readonly gap: number;
}

/** Half the width of a point's symbol. */
export const POINT_RADIUS = LEAST_COMPONENT / 2;
/** Widths of lines: the data path is the strongest, axes the finest. Millimetres; our choice. */
export const LINE_WIDTHS = { axis: 0.8, data: 2, second: 1.4, aim: 1.2, event: 1 } as const;
/** Dashes of the lines that are not full. */
export const DASHES = { second: 12.7, aim: 19, criterion: 7 } as const;

const spotOf = ({ x, y }: TactilePlot, { day, value }: PlainPoint): Spot => ({
  x: x.place(day),
  y: y.place(value),
});

/** A path's own line through its stretches: from point to point, or in steps. */
const traceStretch = (
  plot: TactilePlot,
  stretch: readonly PlainPoint[],
  isStepped: boolean,
): readonly Spot[] => {
  const spots = stretch.map((point) => spotOf(plot, point));
  if (!isStepped) return spots;
  const steps = spots.flatMap((spot, i) => {
    const before = spots[i - 1];
    return before === undefined ? [spot] : [{ x: spot.x, y: before.y }, spot];
  });
  const last = steps.at(-1);
  return last === undefined ? [] : [...steps, { x: Math.max(last.x, plot.x.place(plot.x.high)), y: last.y }];
};

/**
 * The points of a path for which there is room beside each other, from the latest one back: the latest says most.
 *
 * @param pitch - the least distance of two points along the axis of days, in millimetres
 */
export const thinPoints = (
  plot: TactilePlot,
  { stretches, ...path }: PlainPath,
  pitch: number,
): PlainPath => {
  let next = Infinity;
  const kept = [...stretches]
    .reverse()
    .map((stretch) =>
      [...stretch]
        .reverse()
        .filter(({ day }) => {
          const at = plot.x.place(day);
          if (at > next - pitch + 1e-9) return false;
          next = at;
          return true;
        })
        .reverse(),
    )
    .reverse();
  return { ...path, stretches: kept.filter((stretch) => stretch.length > 0) };
};

const drawSymbol = (at: Spot, isBlock: boolean): TactileShape =>
  isBlock
    ? {
        kind: "block",
        left: at.x - POINT_RADIUS,
        right: at.x + POINT_RADIUS,
        top: at.y - POINT_RADIUS,
        bottom: at.y + POINT_RADIUS,
      }
    : { kind: "disc", at, radius: POINT_RADIUS };

/** A path as it came onto the paper. */
export interface DrawnPath {
  readonly elements: readonly TactileElement[];
  readonly drawn: number;
}

/** The strongest path: a full thick line with a disc at each point, a block at a maintenance check. */
export const drawFirstPath = (plot: TactilePlot, path: PlainPath): DrawnPath => {
  const group = `path ${path.name}`;
  const lines = path.stretches
    .map((stretch) => traceStretch(plot, stretch, path.isStepped === true))
    .filter((spots) => spots.length > 1)
    .map((spots): TactileShape => ({ kind: "line", spots, width: LINE_WIDTHS.data }));
  const points = path.stretches.flat();
  const symbols = (isCheck: boolean): readonly TactileShape[] =>
    points
      .filter((point) => (point.isCheck === true) === isCheck)
      .map((point) => drawSymbol(spotOf(plot, point), isCheck));
  return {
    drawn: points.length,
    elements: [
      { name: path.name, group, style: { of: "line", name: "thick full line" }, shapes: lines },
      { name: path.name, group, style: { of: "symbol", name: "disc" }, shapes: symbols(false) },
      {
        name: `${path.name}, maintenance check`,
        group,
        style: { of: "symbol", name: "block" },
        shapes: symbols(true),
      },
    ],
  };
};

/** A second path: a dashed line with blocks, interrupted where the first one is near. */
export const drawSecondPath = (
  plot: TactilePlot,
  path: PlainPath,
  others: readonly TactileShape[],
): DrawnPath => {
  const group = `path ${path.name}`;
  const nearer = findNearer(others);
  const symbols = path.stretches
    .flat()
    .map((point) => drawSymbol(spotOf(plot, point), true))
    .filter((symbol) => nearer(symbol, plot.gap) === undefined);
  const lines = path.stretches.flatMap((stretch) => {
    const spots = traceStretch(plot, stretch, path.isStepped === true);
    const look = { width: LINE_WIDTHS.second, dash: DASHES.second };
    return spots.length < 2 ? [] : drawAround(spots, look, others, plot.gap);
  });
  return {
    drawn: symbols.length,
    elements: [
      { name: path.name, group, style: { of: "line", name: "dashed line" }, shapes: lines },
      { name: path.name, group, style: { of: "symbol", name: "block" }, shapes: symbols },
    ],
  };
};

/** Aim and criterion in dashes of their own lengths, interrupted where something stronger is near. */
export const drawLines = (
  plot: TactilePlot,
  lines: PlainChart["lines"],
  others: readonly TactileShape[],
): readonly TactileElement[] => {
  const taken = [...others];
  return lines.map(({ name, points }) => {
    const dash = name === "criterion" ? DASHES.criterion : DASHES.aim;
    const spots = cutToDays(plot, points).map((point) => spotOf(plot, point));
    const shapes =
      spots.length < 2 ? [] : drawAround(spots, { width: LINE_WIDTHS.aim, dash }, taken, plot.gap);
    taken.push(...shapes);
    const style = name === "criterion" ? "short dashes" : "long dashes";
    return { name, group: `line ${name}`, style: { of: "line", name: style }, shapes };
  });
};

/** The part of a line that lies on a page that shows only some of the days. */
const cutToDays = ({ x }: TactilePlot, points: readonly PlainPoint[]): readonly PlainPoint[] => {
  const between = (a: PlainPoint, b: PlainPoint, day: number): PlainPoint => ({
    day: day as PlainPoint["day"],
    value: a.value + ((day - a.day) / (b.day - a.day)) * (b.value - a.value),
  });
  return points.flatMap((point, i) => {
    const [before, after] = [points[i - 1], points[i + 1]];
    if (point.day >= x.low && point.day <= x.high) return [point];
    if (point.day < x.low)
      return after !== undefined && after.day > x.low ? [between(point, after, x.low)] : [];
    return before !== undefined && before.day < x.high ? [between(before, point, x.high)] : [];
  });
};

/** Upright lines on days when something changed, each under its letter; those too close to a later one are left out. */
export const drawEventLines = (
  plot: TactilePlot,
  events: readonly { readonly letter: string; readonly day: number }[],
  top: number,
  foot: number,
  others: readonly TactileShape[],
): readonly TactileElement[] =>
  events.map(({ letter, day }) => {
    const x = plot.x.place(day);
    const spots = [
      { x, y: top },
      { x, y: foot },
    ];
    return {
      name: `line ${letter}`,
      group: `event ${letter}`,
      style: { of: "line", name: "fine upright line" },
      shapes: drawAround(spots, { width: LINE_WIDTHS.event }, others, plot.gap),
    };
  });
