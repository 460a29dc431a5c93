import { formatDay } from "../calendar";
import { formatChange, formatNumber, formatValue, formatWithUnit } from "./measure-words";
import type { Goal } from "./goal";
import type { SeriesKey } from "./series";
import { DEFAULT_VERDICT_SETTINGS, GOAL_DAYS, LEAST_DAYS, type Comparison, type Judgement } from "./verdict";

const plural = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/**
 * A verdict as sentences for a teacher: what was compared, and what would settle it. The first begins with the verdict.
 *
 * @param from - first day that took part, and whether a phase change set it
 */
export const explainJudgement = (
  judgement: Judgement,
  goal: Goal,
  key: SeriesKey,
  from: { readonly day: number; readonly phaseChange: boolean },
): readonly string[] => [
  explainVerdict(judgement, goal, key, from),
  ...(judgement.run === undefined
    ? []
    : [
        `A prompt to look again: the last four days are all on the ${judgement.run} side of the aim line. That alone ` +
          "decides nothing; chance does it often.",
      ]),
];

const explainVerdict = (
  judgement: Judgement,
  goal: Goal,
  key: SeriesKey,
  from: { readonly day: number; readonly phaseChange: boolean },
): string => {
  const { verdict, days, recent, comparison } = judgement;
  const since = `since ${formatDay(from.day as Goal["startDay"])}${from.phaseChange ? ", the last change of phase" : ""}`;
  if (verdict === "too few points" || comparison === undefined || recent === undefined) {
    return (
      `Too few points: ${plural(days, "day")} with an unaided probe ${since}, and a verdict needs ${LEAST_DAYS}. ` +
      `Probe on ${plural(LEAST_DAYS - days, "more day")}.`
    );
  }
  if (verdict === "goal met") {
    return (
      `Goal met: the middle value of the last ${GOAL_DAYS} days is ${formatWithUnit(recent, key)}, and the goal is ` +
      `${formatValue(goal.goalScore, key.measure)} by ${formatDay(goal.goalDay)} (${plural(days, "day")} ${since}).`
    );
  }
  return `${capitalise(verdict)}: ${explainComparison(comparison, key)} ${meaningOf(judgement, comparison, key)} Based on ${plural(days, "day")} ${since}.`;
};

const explainComparison = ({ day, fitted, low, high, aim }: Comparison, key: SeriesKey): string =>
  `on ${formatDay(day)} the trend stands at ${formatWithUnit(fitted, key)}, somewhere from ` +
  `${formatValue(low, key.measure)} to ${formatValue(high, key.measure)} ` +
  `(${formatNumber(100 * DEFAULT_VERDICT_SETTINGS.confidence)} % interval); the aim line asks for ` +
  `${formatValue(aim, key.measure)}.`;

const meaningOf = ({ verdict, lowerIsBetter }: Judgement, comparison: Comparison, key: SeriesKey): string => {
  switch (verdict) {
    case "below aim":
      return `All of that is worse than the aim${lowerIsBetter ? ", where lower is better" : ""}.`;
    case "above aim":
      return `All of that is better than the aim${lowerIsBetter ? ", where lower is better" : ""}.`;
    case "on aim":
      return "The aim lies within.";
    default:
      return (
        "The aim lies within, but the range is too wide to say: more than " +
        `${formatChange(comparison.widestHalf, key)} either way. More probe days, or several probes a day, will narrow it.`
      );
  }
};

/** A trend as far as a sentence states it; the interval is absent where there is none. */
interface StatedTrend {
  readonly perWeek: number;
  readonly low?: number;
  readonly high?: number;
  readonly points: number;
}

/** The trend as a sentence, with its interval and how many days it rests on. */
export const explainTrend = ({ perWeek, low, high, points }: StatedTrend, key: SeriesKey): string => {
  const direction = perWeek < 0 ? "down" : "up";
  const start = `Trend: ${direction} ${formatChange(perWeek, key)} each week over ${plural(points, "day")}`;
  if (low === undefined || high === undefined) return `${start}.`;
  const bounds = `95 % interval ${signed(low, key)} to ${signed(high, key)}`;
  return low <= 0 && high >= 0
    ? `${start} (${bounds}, so it may as well be level or going the other way).`
    : `${start} (${bounds}).`;
};

const signed = (change: number, key: SeriesKey): string => {
  const scaled = key.measure === "accuracy" ? 100 * change : change;
  const text = formatNumber(scaled, key.measure === "score" ? 2 : 1);
  return scaled > 0 && text !== "0" ? `+${text}` : text;
};

const capitalise = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
