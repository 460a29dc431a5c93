/** What the sheet functions on a goal's date, on growth by factors, and on before and after give. */
import { computeChange, computeNap } from "../src/domain/progress/before-after";
import { computeCeleration } from "../src/domain/progress/celeration";
import { projectGoal } from "../src/domain/progress/projection";
import { success, type Fault, type Result } from "../src/domain/result";
import { numberOf } from "./cell-reading";
import { readDatedScores, readNumber } from "./dated-cells";
import { asBlock, isBlank, type Answer, type Block } from "./shape";

type Row = readonly (readonly Answer[])[];

/** Date, earliest and latest on which the trend reaches a goal, as one row. */
export const reachOfCells = (dates: Block, scores: Block, goal: unknown): Fault | Row => {
  const wanted = readNumber(goal, "the goal");
  if (!wanted.ok) return wanted.fault;
  const pairs = readDatedScores(dates, scores);
  if (!pairs.ok) return pairs.fault;
  const projected = projectGoal(pairs.value, wanted.value);
  if (!projected.ok) return projected.fault;
  const { day, earliest, latest } = projected.value;
  return [[day, earliest, latest]];
};

/** The factor a week of pairs of dates and rates. */
export const celerationOfCells = (dates: Block, rates: Block): Answer => {
  const pairs = readDatedScores(dates, rates);
  if (!pairs.ok) return pairs.fault;
  const celeration = computeCeleration(
    pairs.value.map(({ day }) => day),
    pairs.value.map(({ value }) => value),
  );
  return celeration.ok ? celeration.value.perWeek : celeration.fault;
};

/** NAP, low and high of two ranges of scores, as one row. */
export const napOfCells = (before: Block, after: Block, lowerIsBetter: unknown): Fault | Row => {
  const sides = readSides(before, after);
  if (!sides.ok) return sides.fault;
  const lower = truthOf(lowerIsBetter);
  if (!lower.ok) return lower.fault;
  const nap = computeNap(...sides.value, lower.value);
  return nap.ok ? [[nap.value.nap, nap.value.low, nap.value.high]] : nap.fault;
};

const NO_INTERVAL: Fault = {
  code: "nothing-to-give",
  message: "The scores do not vary, which leaves nothing to judge a range by: add more scores.",
};

/** Change of the mean in percent, low and high of two ranges of scores, as one row. */
export const changeOfCells = (before: Block, after: Block): Fault | Row => {
  const sides = readSides(before, after);
  if (!sides.ok) return sides.fault;
  const change = computeChange(...sides.value);
  if (!change.ok) return change.fault;
  const { percent, interval } = change.value;
  return [[percent, interval?.low ?? NO_INTERVAL, interval?.high ?? NO_INTERVAL]];
};

/** The two ranges need not be of the same length; blanks are left out. */
const readSides = (before: Block, after: Block): Result<[number[], number[]]> => {
  const first = readScores(before, "before");
  if (!first.ok) return first;
  const second = readScores(after, "after");
  return second.ok ? success([first.value, second.value]) : second;
};

const readScores = (block: Block, name: string): Result<number[]> => {
  const scores: number[] = [];
  for (const cell of asBlock(block).flat()) {
    if (isBlank(cell)) continue;
    const score = numberOf(cell, name);
    if (!score.ok) return score;
    scores.push(score.value);
  }
  return success(scores);
};

/** TRUE or FALSE, or a number as a sheet takes it: 0 is FALSE. Blank is FALSE. */
const truthOf = (cell: unknown): Result<boolean> => {
  if (isBlank(cell)) return success(false);
  if (typeof cell === "boolean") return success(cell);
  const number = numberOf(cell, "lowerIsBetter");
  return number.ok ? success(number.value !== 0) : number;
};
