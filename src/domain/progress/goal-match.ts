import type { Goal } from "./goal";
import { ALL_SIGNS } from "./sign-pool";
import type { Measure } from "./measure";
import { normaliseName, type SeriesKey } from "./series";

/** Words for a measure in a goal, most telling first: `cells a minute` before the plain `a minute`. */
const MEASURE_WORDS: readonly (readonly [Measure, RegExp])[] = [
  ["cells a minute", /\bcells?\b.*\b(minute|min)\b|\bcpm\b/],
  ["rate", /rate|speed|fluency|wc?pm|cwpm|minute|\bmin\b|\/ ?min/],
  ["accuracy", /accura|percent|per cent|%|share|correct/],
  ["score", /score|points?|level|rubric/],
];

/**
 * The measure that a goal's scores are in, from its own word for it; where it has none, shares up to 1 are accuracy
 * and larger numbers are either a rate or a score.
 *
 * @returns the measures that it may be about
 */
export const measuresOfGoal = (goal: Goal): readonly Measure[] => {
  const word = normaliseName(goal.measure);
  const named = MEASURE_WORDS.find(([, pattern]) => pattern.test(word));
  if (named !== undefined) return [named[0]];
  if (word !== "") return [];
  return Math.max(Math.abs(goal.startScore), Math.abs(goal.goalScore)) <= 1
    ? ["accuracy"]
    : ["rate", "score"];
};

/** A goal is about one sign only where its text names it; one without a text may be. */
const concernsSign = (goal: Goal, sign: string): boolean => {
  const words = normaliseName(goal.text);
  if (sign === "" || sign === ALL_SIGNS || words === "") return true;
  return words.split(/[^\p{L}\p{N}]+/u).includes(normaliseName(sign));
};

const FIELDS = ["task", "code", "unit"] as const;

/** How many of task, code and unit a goal and a series name alike; undefined where they name one differently. */
const agreement = (goal: Goal, key: SeriesKey): number | undefined => {
  if (!concernsSign(goal, key.sign)) return undefined;
  let alike = 0;
  for (const field of FIELDS) {
    const [wanted, given] = [normaliseName(goal[field]), normaliseName(key[field])];
    // What one of them leaves out cannot tell them apart.
    if (wanted === "" || given === "") continue;
    if (wanted !== given) return undefined;
    alike++;
  }
  return alike;
};

/**
 * The goal that a series is measured against: the same pupil and measure, nothing named differently. Of several, the
 * one that names most; then the one that started last by the series' last day.
 *
 * @param lastDay - day of the series' last point
 * @returns the goal with accuracy scores as shares, or undefined
 */
export const findGoal = (key: SeriesKey, goals: readonly Goal[], lastDay: number): Goal | undefined => {
  const candidates = goals.flatMap((goal) => {
    if (normaliseName(goal.pupil) !== normaliseName(key.pupil)) return [];
    if (!measuresOfGoal(goal).includes(key.measure)) return [];
    const alike = agreement(goal, key);
    return alike === undefined ? [] : [{ goal, alike, started: goal.startDay <= lastDay }];
  });
  candidates.sort(
    (a, b) =>
      b.alike - a.alike ||
      Number(b.started) - Number(a.started) ||
      (a.started ? b.goal.startDay - a.goal.startDay : a.goal.startDay - b.goal.startDay),
  );
  const best = candidates[0]?.goal;
  return best !== undefined && key.measure === "accuracy" ? asShares(best) : best;
};

/** Goals are written as 90 as often as 0.9: where either end is above 1, both are percentages. */
const asShares = (goal: Goal): Goal =>
  Math.max(Math.abs(goal.startScore), Math.abs(goal.goalScore)) > 1
    ? { ...goal, startScore: goal.startScore / 100, goalScore: goal.goalScore / 100 }
    : goal;

/**
 * The level that counts as met, from the criterion of a goal: `90 %`, `0.9`, `8 of 10`, `18/20` for accuracy, the first
 * number for a score.
 *
 * @returns the level in the unit of the measure, or undefined where the measure has none or the text says none
 */
export const parseCriterion = (criterion: string | undefined, measure: Measure): number | undefined => {
  const text = normaliseName(criterion).replace(/(\d),(\d)/g, "$1.$2");
  if (measure === "score") return firstNumber(text);
  if (measure !== "accuracy") return undefined;
  const percent = /(\d+(?:\.\d+)?) ?(?:%|per ?cent)/.exec(text)?.[1];
  if (percent !== undefined) return Number(percent) / 100;
  const [, correct, total] = /(\d+) ?(?:\/|of|out of) ?(\d+)/.exec(text) ?? [];
  if (Number(total) > 0 && Number(correct) <= Number(total)) return Number(correct) / Number(total);
  const number = firstNumber(text);
  return number === undefined || number > 100 ? undefined : number > 1 ? number / 100 : number;
};

const firstNumber = (text: string): number | undefined => {
  const digits = /\d+(?:\.\d+)?/.exec(text)?.[0];
  return digits === undefined ? undefined : Number(digits);
};
