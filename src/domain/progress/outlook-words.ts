import { formatDay } from "../calendar";
import type { BeforeAfter, PhaseComparison, ScoreSummary } from "./before-after";
import type { Goal } from "./goal";
import { formatNumber, formatValue, formatWithUnit } from "./measure-words";
import type { Projection } from "./projection";
import type { SeriesKey } from "./series";

/** How many more probes would settle an unclear verdict. */
export const explainSettling = (probes: number): string =>
  `About ${probes} more weekly ${probes === 1 ? "probe" : "probes"} would settle the verdict, if they scatter as ` +
  "before; several probes a day settle it sooner.";

/** When a trend reaches the goal, as a sentence with its interval and how many days it rests on. */
export const explainProjection = (
  { day, earliest, latest, days }: Projection,
  { goalScore }: Goal,
  { measure }: SeriesKey,
): string =>
  `If the trend goes on, it reaches ${formatValue(goalScore, measure)} about ${formatDay(day)}: ` +
  `95 % interval ${formatDay(earliest)} to ${formatDay(latest)}, based on ${countDays(days)}.`;

/**
 * A phase beside the one before it, as sentences: medians, ranges, non-overlap and change. They say what came after,
 * never because of what.
 */
export const explainPhaseChange = (comparison: PhaseComparison, key: SeriesKey): string => {
  const { beforeName, afterName, before, after, nap } = comparison;
  const share = `${formatNumber(100 * nap.nap, 0)} % of the pairs of a day before and a day after are better`;
  return (
    `${named(afterName)} after ${named(beforeName)}: the median went from ${summary(before, key)} to ${summary(after, key)}. ` +
    `${share} (NAP ${nap.nap.toFixed(2)}, 95 % interval ${nap.low.toFixed(2)} to ${nap.high.toFixed(2)})` +
    `${changeOf(comparison)}. This is the change after, not because of, the new phase.`
  );
};

const changeOf = ({ change }: BeforeAfter): string => {
  if (!change.ok) return "";
  const { percent, interval } = change.value;
  const range =
    interval === undefined ? "" : `, 95 % interval ${signed(interval.low)} to ${signed(interval.high)} %`;
  return `; the mean changed by ${signed(percent)} %${range}`;
};

const signed = (value: number): string => {
  const text = formatNumber(value, 0);
  return value > 0 && text !== "0" ? `+${text}` : text;
};

const summary = (scores: ScoreSummary, key: SeriesKey): string =>
  `${formatWithUnit(scores.median, key)} (${formatValue(scores.lowest, key.measure)} to ` +
  `${formatValue(scores.highest, key.measure)}, ${countDays(scores.count)})`;

const countDays = (count: number): string => `${count} ${count === 1 ? "day" : "days"}`;

const named = (name: string): string => (name === "" ? "The first phase" : `“${name}”`);
