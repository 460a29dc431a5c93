/** Decision rules on simulated pupils: how often each says that something should change. */
import { aimOn } from "../../src/domain/progress/aim";
import type { DailyValue } from "../../src/domain/progress/phases";
import { countProbesToSettle } from "../../src/domain/progress/settling";
import { computeTrend } from "../../src/domain/progress/trend";
import { judgeProgress, type Verdict } from "../../src/domain/progress/verdict";
import { seededRandom } from "../../src/domain/seeded-random";
import { SIMULATED_AIM, simulateScores, type SimulatedPupil } from "./simulated-pupil";

const AIM_SLOPE = 2;

const isBelow = ({ day, value }: DailyValue): boolean => value < (aimOn(SIMULATED_AIM, day) ?? NaN);

const longestRun = (flags: readonly boolean[]): number => {
  let [run, longest] = [0, 0];
  for (const flag of flags) longest = Math.max(longest, (run = flag ? run + 1 : 0));
  return longest;
};

/** The usual rules, each as whether it says that the pupil is behind. */
export const RULES = {
  "three below in a row, ever": (scores) => longestRun(scores.map(isBelow)) >= 3,
  "four, ever": (scores) => longestRun(scores.map(isBelow)) >= 4,
  "last three below": (scores) => scores.slice(-3).every(isBelow),
  "last four": (scores) => scores.slice(-4).every(isBelow),
  "trend flatter than the aim": (scores) => slopeOf(scores).perWeek < AIM_SLOPE,
  "95 % interval of the trend below": (scores) => (slopeOf(scores).interval?.high ?? Infinity) < AIM_SLOPE,
  "this verdict": (scores) => verdictOn(scores) === "below aim",
} as const satisfies Readonly<Record<string, (scores: readonly DailyValue[]) => boolean>>;
export type Rule = keyof typeof RULES;
export const RULE_NAMES = Object.keys(RULES) as readonly Rule[];

const slopeOf = (scores: readonly DailyValue[]): { perWeek: number; interval?: { high: number } } => {
  const trend = computeTrend(
    scores.map(({ day }) => day),
    scores.map(({ value }) => value),
    "least-squares",
  );
  if (!trend.ok) throw new Error(trend.fault.message);
  return trend.value;
};

const verdictOn = (scores: readonly DailyValue[]): Verdict => {
  const judged = judgeProgress(scores, SIMULATED_AIM);
  if (!judged.ok) throw new Error(judged.fault.message);
  return judged.value.verdict;
};

/** The share of simulated pupils that each rule calls behind, by one look after `weeks` weekly probes. */
export const shareCalledBehind = (
  pupil: SimulatedPupil,
  weeks: number,
  pupils: number,
  seed: number,
): Readonly<Record<Rule, number>> => {
  const random = seededRandom(seed);
  const counts = RULE_NAMES.map(() => 0);
  for (let i = 0; i < pupils; i++) {
    const scores = simulateScores(pupil, weeks, random);
    RULE_NAMES.forEach((rule, place) => {
      if (RULES[rule](scores)) counts[place] = (counts[place] ?? 0) + 1;
    });
  }
  return Object.fromEntries(RULE_NAMES.map((rule, place) => [rule, (counts[place] ?? 0) / pupils])) as Record<
    Rule,
    number
  >;
};

export const VERDICTS = ["below aim", "unclear", "on aim", "above aim", "goal met"] as const;

/** The share of simulated pupils that are told each verdict after `weeks` weekly probes. */
export const shareOfVerdicts = (
  pupil: SimulatedPupil,
  weeks: number,
  pupils: number,
  seed: number,
): readonly number[] => {
  const random = seededRandom(seed);
  const told = Array.from({ length: pupils }, () => verdictOn(simulateScores(pupil, weeks, random)));
  return VERDICTS.map((verdict) => told.filter((one) => one === verdict).length / pupils);
};

/** Of the pupils with an unclear verdict: for how many a number of further probes is named, and how it turns out. */
export interface Settling {
  readonly unclear: number;
  /** share of the unclear for whom a number is named */
  readonly named: number;
  /** median of the numbers named */
  readonly middle: number;
  /** share of these that are no longer unclear after exactly so many more probes */
  readonly settled: number;
}

/** Whether the number of probes that would settle an unclear verdict settles it. */
export const checkSettling = (
  pupil: SimulatedPupil,
  weeks: number,
  pupils: number,
  seed: number,
): Settling => {
  const random = seededRandom(seed);
  let [unclear, settled] = [0, 0];
  const named: number[] = [];
  for (let i = 0; i < pupils; i++) {
    const scores = simulateScores(pupil, weeks + 40, random);
    const sofar = scores.slice(0, weeks);
    if (verdictOn(sofar) !== "unclear") continue;
    unclear++;
    const more = countProbesToSettle(sofar, SIMULATED_AIM);
    if (more === undefined) continue;
    named.push(more);
    if (verdictOn(scores.slice(0, weeks + more)) !== "unclear") settled++;
  }
  const middle = [...named].sort((a, b) => a - b)[named.length >> 1] ?? NaN;
  return { unclear, named: named.length / unclear, middle, settled: settled / named.length };
};
