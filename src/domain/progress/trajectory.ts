import { fitLine, valueAt, type LineFit } from "../statistics/least-squares";
import { studentQuantile } from "../statistics/student-t";
import type { Day } from "../units";
import { checkAim, isLowerBetter } from "./aim";
import { comparePhases } from "./before-after";
import { findCautions } from "./cautions";
import { explainJudgement } from "./explanation";
import type { Goal } from "./goal";
import { findGoal, parseCriterion } from "./goal-match";
import { nameMeasure } from "./measure-words";
import { explainPhaseChange, explainProjection, explainSettling } from "./outlook-words";
import { splitPhases, type DailyValue, type PhaseStretch } from "./phases";
import { projectGoal } from "./projection";
import type { Series } from "./series";
import { countProbesToSettle } from "./settling";
import { computeTrend } from "./trend";
import { DEFAULT_VERDICT_SETTINGS, judgeProgress, LEAST_DAYS, type Judgement, type Verdict } from "./verdict";

export type { PhaseStretch } from "./phases";

/** A straight line from one day to another. */
export interface Line {
  readonly fromDay: Day;
  readonly fromValue: number;
  readonly toDay: Day;
  readonly toValue: number;
}

/** The trend through the daily medians that the verdict is about, with the band of its fitted value. From six days on. */
export interface TrendBand {
  readonly line: Line;
  /** change a week by least squares, with its 95 % interval */
  readonly perWeek: number;
  readonly low?: number;
  readonly high?: number;
  /** days that took part */
  readonly points: number;
  /** lower and upper edge of the 90 % interval of the fitted value, by day, for drawing */
  readonly band: readonly { readonly day: Day; readonly low: number; readonly high: number }[];
  /** from the last probe day to the goal day, drawn dotted; absent without a goal ahead */
  readonly projection?: Line;
}

/** Everything that the picture, its text and its table show: computed once, shown three ways. */
export interface Trajectory {
  readonly series: Series;
  readonly phases: readonly PhaseStretch[];
  /** in words of the axis, such as "words read correctly a minute" */
  readonly measureName: string;
  readonly goal?: Goal;
  readonly aimLine?: Line;
  readonly trend?: TrendBand;
  readonly verdict?: Verdict;
  /** what the verdict rests on */
  readonly judgement?: Judgement;
  /** the verdict as sentences for a teacher: what was compared, and what would settle it */
  readonly explanation: readonly string[];
  /** what may come and what came after a change of phase, as sentences: never a verdict */
  readonly outlook: readonly string[];
  /** level that counts as met where the measure is accuracy or a score: a horizontal line */
  readonly criterion?: number;
  readonly cautions: readonly string[];
}

/**
 * What one series shows: its phases, the aim line of its goal, and trend and verdict over the daily medians from the
 * goal's start, or from the last phase change if later. Supported probes take part in neither.
 *
 * @param goals - all goals of the workbook; the one that is about this series is found
 */
export const buildTrajectory = (series: Series, goals: readonly Goal[] = []): Trajectory => {
  const { key, points } = series;
  const phases = splitPhases(points);
  const lastDay = points.at(-1)?.probe.day ?? (0 as Day);
  const goal = findGoal(key, goals, lastDay);
  const aim = goal && checkAim(goal);
  const phaseDaily = phases.at(-1)?.daily ?? [];
  const judged = goal === undefined ? phaseDaily : phaseDaily.filter(({ day }) => day >= goal.startDay);
  const trend = fitTrend(judged, aim?.ok === true ? goal?.goalDay : undefined);
  const judgement = goal && aim?.ok === true ? judgeProgress(judged, goal) : undefined;
  const criterion = parseCriterion(goal?.criterion, key.measure);
  return {
    series,
    phases,
    measureName: nameMeasure(key),
    ...(goal && { goal }),
    ...(goal && aim?.ok === true && { aimLine: lineOf(goal) }),
    ...(trend && { trend }),
    ...(judgement?.ok === true && { verdict: judgement.value.verdict, judgement: judgement.value }),
    ...(criterion !== undefined && { criterion }),
    explanation: explain(series, phases, goal, judgement),
    outlook: [
      ...(goal && aim?.ok === true ? lookAhead(judged, goal, key, judgement) : []),
      ...comparePhases(phases, goal !== undefined && isLowerBetter(goal)).map((comparison) =>
        explainPhaseChange(comparison, key),
      ),
    ],
    cautions: findCautions(series, judged.length),
  };
};

const lineOf = ({ startDay, startScore, goalDay, goalScore }: Goal): Line => ({
  fromDay: startDay,
  fromValue: startScore,
  toDay: goalDay,
  toValue: goalScore,
});

const explain = (
  { key }: Series,
  phases: readonly PhaseStretch[],
  goal: Goal | undefined,
  judgement: ReturnType<typeof judgeProgress> | undefined,
): readonly string[] => {
  if (goal === undefined) {
    return ["No verdict: no goal is noted for this series. Note one with its start and goal date and score."];
  }
  if (judgement === undefined || !judgement.ok) {
    return ["No verdict: the goal date must be after the start date. Check both dates of this goal."];
  }
  const phaseDay = phases.length > 1 ? (phases.at(-1)?.points[0]?.probe.day ?? 0) : 0;
  const phaseChange = phaseDay > goal.startDay;
  return explainJudgement(judgement.value, goal, key, {
    day: phaseChange ? phaseDay : goal.startDay,
    phaseChange,
  });
};

const lookAhead = (
  judged: readonly DailyValue[],
  goal: Goal,
  key: Series["key"],
  judgement: ReturnType<typeof judgeProgress> | undefined,
): readonly string[] => {
  const unclear = judgement?.ok === true && judgement.value.verdict === "unclear";
  const more = unclear ? countProbesToSettle(judged, goal) : undefined;
  const projection = projectGoal(judged, goal.goalScore);
  return [
    ...(more === undefined ? [] : [explainSettling(more)]),
    ...(projection.ok ? [explainProjection(projection.value, goal, key)] : []),
  ];
};

const fitTrend = (daily: readonly DailyValue[], goalDay: Day | undefined): TrendBand | undefined => {
  const days = daily.map(({ day }) => day);
  const values = daily.map(({ value }) => value);
  const [fromDay, toDay] = [days[0], days.at(-1)];
  if (daily.length < LEAST_DAYS || fromDay === undefined || toDay === undefined) return undefined;
  const fit = fitLine(days, values);
  const trend = computeTrend(days, values, "least-squares");
  if (!fit.ok || !trend.ok) return undefined;
  const at = (day: Day): number => valueAt(fit.value, day).value;
  const line = (from: Day, to: Day): Line => ({
    fromDay: from,
    fromValue: at(from),
    toDay: to,
    toValue: at(to),
  });
  return {
    line: line(fromDay, toDay),
    perWeek: trend.value.perWeek,
    ...trend.value.interval,
    points: daily.length,
    band: drawBand(fit.value, fromDay, toDay),
    ...(goalDay !== undefined && goalDay > toDay && { projection: line(toDay, goalDay) }),
  };
};

/** Places along the trend at which its curved band is computed. */
const BAND_STEPS = 16;

const drawBand = (fit: LineFit, fromDay: Day, toDay: Day): TrendBand["band"] => {
  const reach = studentQuantile((1 + DEFAULT_VERDICT_SETTINGS.confidence) / 2, fit.points - 2);
  return Array.from({ length: BAND_STEPS + 1 }, (_, step) => {
    const day = (fromDay + ((toDay - fromDay) * step) / BAND_STEPS) as Day;
    const { value, error = 0 } = valueAt(fit, day);
    return { day, low: value - reach * error, high: value + reach * error };
  });
};
