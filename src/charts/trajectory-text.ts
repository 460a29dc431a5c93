import { formatDay } from "../domain/calendar";
import { aimOn } from "../domain/progress/aim";
import { explainTrend } from "../domain/progress/explanation";
import { formatValue, formatWithUnit } from "../domain/progress/measure-words";
import { describeSeries } from "../domain/progress/series";
import type { Measure } from "../domain/progress/measure";
import type { RatioTrend } from "../domain/progress/ratio-trend";
import type { Line, PhaseStretch, Trajectory } from "../domain/progress/trajectory";
import { isMaintenanceCheck } from "../domain/probe/maintenance-check";
import type { Day } from "../domain/units";
import type { ScaleKind } from "./axis-scale";
import type { ChartPicture } from "./chart-picture";

const count = (number: number, one: string): string => `${number} ${number === 1 ? one : `${one}s`}`;

/** What the picture is of: pupil, measure and series. */
export const titleOf = ({ series, measureName }: Trajectory): string =>
  `${series.key.pupil}: ${measureName} (${describeSeries(series.key)})`;

/** The picture in sentences: how many probes and when, phases, values, verdict, aim line, trend, criterion. */
export const summarise = (
  trajectory: Trajectory,
  ratioTrend?: RatioTrend,
  scale: ScaleKind = "equal-interval",
): readonly string[] => [
  ...trajectory.explanation,
  ...(scale === "ratio" ? sayRatio(trajectory, ratioTrend) : sayTrend(trajectory)),
  ...sayAim(trajectory),
  ...sayCriterion(trajectory),
  ...sayProbes(trajectory),
  ...sayPhases(trajectory.phases),
];

const sayTrend = (trajectory: Trajectory): readonly string[] => [
  ...(trajectory.trend
    ? [
        explainTrend(trajectory.trend, trajectory.series.key),
        "The band around the trend line is the 90 % interval of its value on each day.",
      ]
    : []),
  ...sayProjection(trajectory.trend?.projection, trajectory.series.key.measure),
];

/** A factor as it is said of rates: `×1.05`. */
export const formatFactor = (factor: number): string => `×${factor.toFixed(2)}`;

const sayRatio = (
  { phases, series: { key } }: Trajectory,
  trend: RatioTrend | undefined,
): readonly string[] => {
  const zeros = phases.flatMap(({ daily }) => daily).filter(({ value }) => value <= 0).length;
  return [
    "Ratio scale: equal heights are equal factors, so twice as much is the same step everywhere. The verdict above is judged on equal steps, not on this scale.",
    ...(trend === undefined
      ? []
      : [
          `Trend: ${formatFactor(trend.factor)} each week over ${count(trend.points, "day")} above 0 (95 % interval ` +
            `${formatFactor(trend.low)} to ${formatFactor(trend.high)}${trend.low <= 1 && trend.high >= 1 ? ", so it may as well be level or going the other way" : ""}).`,
          "The band around the trend line is the 90 % interval of its value on each day.",
        ]),
    ...sayProjection(trend?.projection, key.measure),
    ...(zeros === 0
      ? []
      : [
          `${count(zeros, "day")} at 0 ${zeros === 1 ? "has" : "have"} no place on a ratio scale: marked by a triangle at the foot, left out of this trend; the path is broken there.`,
        ]),
  ];
};

const sayProbes = ({ series: { key, points }, phases }: Trajectory): readonly string[] => {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return [];
  const supported = points.filter((point) => point.supported).length;
  const support = supported === 0 ? "" : `, ${supported} of them with support (triangles)`;
  const daily = phases.flatMap((phase) => phase.daily);
  const [oldest, latest] = [daily[0], daily.at(-1)];
  const checks = points.filter(({ probe, supported }) => !supported && isMaintenanceCheck(probe)).length;
  const kept = checks === 0 ? "" : `, ${checks} of them maintenance checks (squares)`;
  const when =
    first.probe.day === last.probe.day
      ? `on ${formatDay(first.probe.day)}`
      : `from ${formatDay(first.probe.day)} to ${formatDay(last.probe.day)}`;
  const several = daily.length > 0 && points.length - supported > daily.length;
  const counted = `${count(points.length, "probe")}${support}${kept}, ${when}.`;
  if (oldest === undefined || latest === undefined) return [counted];
  const values = daily.map(({ value }) => value);
  const say = (value: number): string => formatValue(value, key.measure);
  return [
    counted,
    `First ${say(oldest.value)}, latest ${formatWithUnit(latest.value, key)} on ${formatDay(latest.day)}; lowest ` +
      `${say(Math.min(...values))}, highest ${say(Math.max(...values))}${several ? " (the middle value of each day)" : ""}.`,
  ];
};

const sayPhases = (phases: readonly PhaseStretch[]): readonly string[] => {
  if (phases.length < 2) return [];
  const parts = phases.map(({ name, points }, i) => {
    const day = points[0]?.probe.day;
    const from = i === 0 || day === undefined ? "" : ` from ${formatDay(day)}`;
    return `${name === "" ? "before" : name}${from} (${count(points.length, "probe")})`;
  });
  return [`${phases.length} phases: ${parts.join("; ")}. The path is broken where the phase changes.`];
};

const sayAim = ({ aimLine, series: { key } }: Trajectory): readonly string[] =>
  aimLine === undefined
    ? []
    : [
        `The aim line goes from ${formatValue(aimLine.fromValue, key.measure)} on ${formatDay(aimLine.fromDay)} to ` +
          `${formatValue(aimLine.toValue, key.measure)} on ${formatDay(aimLine.toDay)}.`,
      ];

const sayProjection = (projection: Line | undefined, measure: Measure): readonly string[] =>
  projection === undefined
    ? []
    : [
        `If the trend went on unchanged, it would stand at ${formatValue(plausible(projection.toValue, measure), measure)} on ` +
          `${formatDay(projection.toDay)} (dotted line).`,
      ];

/** No line carried on leads below 0 or, for accuracy, above 100 %. */
const plausible = (value: number, measure: Measure): number =>
  Math.max(0, measure === "accuracy" ? Math.min(1, value) : value);

const sayCriterion = ({ criterion, series: { key } }: Trajectory): readonly string[] =>
  criterion === undefined ? [] : [`The criterion line is at ${formatValue(criterion, key.measure)}.`];

/** Every probe as a row, in the order of the series' points; columns that would be empty are left out. */
export const tabulate = (trajectory: Trajectory): ChartPicture["table"] => {
  const { series, phases, goal, aimLine, measureName } = trajectory;
  const phaseNames = phases.flatMap(({ name, points }) => points.map(() => (name === "" ? "before" : name)));
  const sayAimOn = (day: Day): string => {
    const aim = goal === undefined || aimLine === undefined ? undefined : aimOn(goal, day);
    return aim === undefined ? "" : formatValue(aim, series.key.measure);
  };
  const columns = [
    { heading: "Date", cells: series.points.map(({ probe }) => formatDay(probe.day)) },
    {
      heading: measureName.charAt(0).toUpperCase() + measureName.slice(1),
      cells: series.points.map(({ value }) => formatValue(value, series.key.measure)),
    },
    { heading: "Aim that day", cells: series.points.map(({ probe }) => sayAimOn(probe.day)) },
    { heading: "Phase", cells: phases.length < 2 ? [] : phaseNames },
    {
      heading: "Support",
      cells: series.points.map(({ probe, supported }) => (supported ? (probe.support ?? "yes") : "")),
    },
    { heading: "Material", cells: series.points.map(({ probe }) => probe.material ?? "") },
    { heading: "Note", cells: series.points.map(({ probe }) => probe.note ?? "") },
  ].filter(({ cells }) => cells.some((cell) => cell !== ""));
  return {
    caption: titleOf(trajectory),
    headings: columns.map(({ heading }) => heading),
    rows: series.points.map((_, row) => columns.map(({ cells }) => cells[row] ?? "")),
  };
};
