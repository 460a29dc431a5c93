/** What the sheet functions on scores give: rates, accuracy, trials, trend, aim line and verdict. */
import { computeAccuracy } from "../src/domain/probe/accuracy";
import { computeRate } from "../src/domain/probe/rate";
import { countMarks } from "../src/domain/probe/trials";
import { aimOn, checkAim, type AimEnds } from "../src/domain/progress/aim";
import { computeTrend, TREND_METHODS, type TrendMethod } from "../src/domain/progress/trend";
import { judgeProgress } from "../src/domain/progress/verdict";
import { refusal, success, type Fault, type Result } from "../src/domain/result";
import type { Seconds } from "../src/domain/units";
import { numbersOf, textOf } from "./cell-reading";
import { readDate, readDatedScores, readNumber } from "./dated-cells";
import { answerOf, isBlank, type Answer, type Block } from "./shape";

/** {@link computeRate} of three cells. */
export const rateOfCells = (...cells: unknown[]): Answer => {
  const numbers = numbersOf(cells, ["words", "errors", "seconds"]);
  if (!numbers.ok) return numbers.fault;
  const [words = NaN, errors = NaN, seconds = NaN] = numbers.value;
  return answerOf(computeRate(words, errors, seconds as Seconds));
};

/** {@link computeAccuracy} of two cells. */
export const accuracyOfCells = (...cells: unknown[]): Answer => {
  const numbers = numbersOf(cells, ["words", "errors"]);
  if (!numbers.ok) return numbers.fault;
  const [words = NaN, errors = NaN] = numbers.value;
  return answerOf(computeAccuracy(words, errors));
};

/** Correct, opportunities, prompted and no response of all marks, as one row. */
export const trialsOfCells = (marks: Block): Fault | readonly (readonly Answer[])[] => {
  const read: (string | number | boolean)[] = [];
  for (const cell of marks.flat()) {
    if (isBlank(cell)) continue;
    read.push(typeof cell === "number" || typeof cell === "boolean" ? cell : textOf(cell));
  }
  const counted = countMarks(read);
  if (!counted.ok) return counted.fault;
  const { correct, opportunities, prompted, noResponse } = counted.value;
  return [[correct, opportunities, prompted, noResponse]];
};

const NO_INTERVAL: Fault = {
  code: "nothing-to-give",
  message: "An interval needs at least six points that differ enough: add more dates with scores.",
};

/** Change a week, low, high and points of pairs of dates and scores, as one row. */
export const trendOfCells = (
  dates: Block,
  scores: Block,
  method: string | null | undefined,
): Fault | readonly (readonly Answer[])[] => {
  const wanted = parseMethod(method);
  if (!wanted.ok) return wanted.fault;
  const pairs = readDatedScores(dates, scores);
  if (!pairs.ok) return pairs.fault;
  const trend = computeTrend(
    pairs.value.map(({ day }) => day),
    pairs.value.map(({ value }) => value),
    wanted.value,
  );
  if (!trend.ok) return trend.fault;
  const { perWeek, interval, points } = trend.value;
  return [[perWeek, interval?.low ?? NO_INTERVAL, interval?.high ?? NO_INTERVAL, points]];
};

const parseMethod = (method: string | null | undefined): Result<TrendMethod> => {
  if (isBlank(method)) return success("theil-sen");
  const spelled = textOf(method)
    .trim()
    .toLowerCase()
    .replace(/[\s\u2010-\u2015]+/g, "-");
  const found = TREND_METHODS.find((known) => known === spelled);
  return found === undefined
    ? refusal(
        "unknown-method",
        `There is no method “${textOf(method).slice(0, 40)}”: use "theil-sen" or "least-squares".`,
      )
    : success(found);
};

const AIM_NAMES = ["the start date", "the start score", "the goal date", "the goal score"] as const;

/** The aim line's value of five cells: its two ends and a date. */
export const aimOfCells = (...cells: unknown[]): Answer => {
  const ends = readAim(cells.slice(0, 4));
  if (!ends.ok) return ends.fault;
  const date = readDate(cells[4], "the date");
  if (!date.ok) return date.fault;
  return (
    aimOn(ends.value, date.value) ?? {
      code: "nothing-to-give",
      message: "The aim line begins at the start date, and this date is before it.",
    }
  );
};

/** The verdict on pairs of dates and scores against an aim line. */
export const verdictOfCells = (dates: Block, scores: Block, aim: readonly unknown[]): Answer => {
  const ends = readAim(aim);
  if (!ends.ok) return ends.fault;
  const pairs = readDatedScores(dates, scores);
  if (!pairs.ok) return pairs.fault;
  const judged = judgeProgress(pairs.value, ends.value);
  return judged.ok ? judged.value.verdict : judged.fault;
};

const readAim = ([startDate, startScore, goalDate, goalScore]: readonly unknown[]): Result<AimEnds> => {
  const startDay = readDate(startDate, AIM_NAMES[0]);
  if (!startDay.ok) return startDay;
  const start = readNumber(startScore, AIM_NAMES[1]);
  if (!start.ok) return start;
  const goalDay = readDate(goalDate, AIM_NAMES[2]);
  if (!goalDay.ok) return goalDay;
  const goal = readNumber(goalScore, AIM_NAMES[3]);
  if (!goal.ok) return goal;
  return checkAim({
    startDay: startDay.value,
    startScore: start.value,
    goalDay: goalDay.value,
    goalScore: goal.value,
  });
};
