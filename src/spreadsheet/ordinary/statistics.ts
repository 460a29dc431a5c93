import { checkNumber } from "../engine/operators";
import type { Scope } from "../engine/program";
import { makeError, Reference, type Value } from "../engine/value";
import { collectCells, collectNumbers, collectPairs, eachValue } from "./collecting";
import { defineFunction, type OrdinaryFunction } from "./ordinary-function";
import { many, number, optional, range } from "./parameters";

const DIVISION = makeError("#DIV/0!");
const NUMBER = makeError("#NUM!");

type Summary = (values: readonly Value[], scope: Scope) => Value;

const ofNumbers =
  (summarize: (numbers: readonly number[]) => Value): Summary =>
  (values, scope) =>
    summarize(collectNumbers(values, scope));

const total = (numbers: readonly number[]): number => numbers.reduce((sum, each) => sum + each, 0);

const mean = (numbers: readonly number[]): number => total(numbers) / numbers.length;

/** The sum of squared distances from the mean. */
const squares = (numbers: readonly number[]): number => {
  const middle = mean(numbers);
  return total(numbers.map((each) => (each - middle) ** 2));
};

const ascending = (numbers: readonly number[]): number[] => [...numbers].sort((a, b) => a - b);

const average = ofNumbers((numbers) => (numbers.length === 0 ? DIVISION : mean(numbers)));
const count: Summary = (values, scope) => {
  let found = 0;
  for (const value of values) {
    eachValue(value, scope, (cell, direct) => {
      if (
        typeof cell === "number" ||
        (direct && (typeof cell === "boolean" || (typeof cell === "string" && isNumeric(cell, scope))))
      )
        found++;
    });
  }
  return found;
};
const countAll: Summary = (values, scope) => {
  let found = 0;
  for (const value of values)
    eachValue(value, scope, (cell, direct) => (found += cell !== null || direct ? 1 : 0));
  return found;
};
const largest = ofNumbers((numbers) => numbers.reduce((most, each) => Math.max(most, each), numbers[0] ?? 0));
const smallest = ofNumbers((numbers) =>
  numbers.reduce((least, each) => Math.min(least, each), numbers[0] ?? 0),
);
const product = ofNumbers((numbers) =>
  numbers.length === 0 ? 0 : checkNumber(numbers.reduce((a, b) => a * b, 1)),
);
const sampleDeviation = ofNumbers((numbers) =>
  numbers.length < 2 ? DIVISION : Math.sqrt(squares(numbers) / (numbers.length - 1)),
);
const deviation = ofNumbers((numbers) =>
  numbers.length === 0 ? DIVISION : Math.sqrt(squares(numbers) / numbers.length),
);
const sampleVariance = ofNumbers((numbers) =>
  numbers.length < 2 ? DIVISION : squares(numbers) / (numbers.length - 1),
);
const variance = ofNumbers((numbers) =>
  numbers.length === 0 ? DIVISION : squares(numbers) / numbers.length,
);

const isNumeric = (text: string, scope: Scope): boolean => {
  try {
    return collectNumbers([text], scope).length === 1;
  } catch {
    return false;
  }
};

/** The summaries that SUBTOTAL numbers from 1 to 11. */
export const SUMMARIES: Readonly<Record<number, Summary>> = {
  1: average,
  2: count,
  3: countAll,
  4: largest,
  5: smallest,
  6: product,
  7: sampleDeviation,
  8: deviation,
  9: ofNumbers(total),
  10: sampleVariance,
  11: variance,
};

const summary = (name: string, summarize: Summary): OrdinaryFunction =>
  defineFunction(name, [many(range)], (scope, values) => summarize(values, scope));

/** The value at a share of the way through sorted numbers, between neighbours in proportion. */
function quantile(numbers: readonly number[], share: number): Value {
  if (numbers.length === 0 || share < 0 || share > 1) return NUMBER;
  const sorted = ascending(numbers);
  const at = share * (sorted.length - 1);
  const low = sorted[Math.floor(at)] ?? 0;
  const high = sorted[Math.ceil(at)] ?? low;
  return low + (high - low) * (at - Math.floor(at));
}

interface Fit {
  readonly slope: number;
  readonly intercept: number;
  readonly correlation: number;
}

/** The straight line of least squares through points; undefined where all x are the same. */
function fitLine(points: readonly { x: number; y: number }[]): Fit | undefined {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const [middleX, middleY] = [mean(xs), mean(ys)];
  const sxx = squares(xs);
  if (points.length < 2 || sxx === 0) return undefined;
  const sxy = total(points.map(({ x, y }) => (x - middleX) * (y - middleY)));
  const slope = sxy / sxx;
  return { slope, intercept: middleY - slope * middleX, correlation: sxy / Math.sqrt(sxx * squares(ys)) };
}

const ofLine = (name: string, give: (fit: Fit) => number): OrdinaryFunction =>
  defineFunction(name, [range, range], (scope, ys, xs) => {
    const fit = fitLine(collectPairs(xs, ys, scope));
    const result = fit && give(fit);
    return result === undefined || Number.isNaN(result) ? DIVISION : result;
  });

function median(numbers: readonly number[]): Value {
  return numbers.length === 0 ? NUMBER : quantile(numbers, 0.5);
}

function mode(numbers: readonly number[]): Value {
  const times = new Map<number, number>();
  for (const each of numbers) times.set(each, (times.get(each) ?? 0) + 1);
  let best: number | undefined;
  for (const [each, found] of times)
    if (found > Math.max(1, (best === undefined ? 0 : times.get(best)) ?? 0)) best = each;
  return best ?? makeError("#N/A", "No number occurs twice.");
}

function rank(value: number, numbers: readonly number[], rising: number): Value {
  if (!numbers.includes(value)) return makeError("#N/A", "The number is not among the others.");
  return 1 + numbers.filter((each) => (rising === 0 ? each > value : each < value)).length;
}

/** Counts, averages, spread, rank and the line of least squares. */
export const STATISTICS: readonly OrdinaryFunction[] = [
  summary("AVERAGE", average),
  summary("COUNT", count),
  summary("COUNTA", countAll),
  defineFunction("COUNTBLANK", [range], (scope, value) => {
    if (!(value instanceof Reference)) return makeError("#VALUE!", "COUNTBLANK needs cells.");
    const filled = collectCells(value, scope).filter((cell) => cell !== null && cell !== "").length;
    return value.height * value.width - filled;
  }),
  summary("MAX", largest),
  summary("MIN", smallest),
  summary("MEDIAN", ofNumbers(median)),
  summary("MODE", ofNumbers(mode)),
  summary("MODE.SNGL", ofNumbers(mode)),
  summary("STDEV", sampleDeviation),
  summary("STDEV.S", sampleDeviation),
  summary("STDEVP", deviation),
  summary("STDEV.P", deviation),
  summary("VAR", sampleVariance),
  summary("VAR.S", sampleVariance),
  summary("VARP", variance),
  summary("VAR.P", variance),
  summary(
    "DEVSQ",
    ofNumbers((numbers) => (numbers.length === 0 ? NUMBER : squares(numbers))),
  ),
  summary(
    "AVEDEV",
    ofNumbers((numbers) =>
      numbers.length === 0 ? NUMBER : mean(numbers.map((each) => Math.abs(each - mean(numbers)))),
    ),
  ),
  summary(
    "GEOMEAN",
    ofNumbers((numbers) =>
      numbers.length === 0 || numbers.some((each) => each <= 0)
        ? NUMBER
        : Math.exp(mean(numbers.map(Math.log))),
    ),
  ),
  defineFunction("LARGE", [range, number], (scope, values, place) =>
    place < 1 ? NUMBER : (ascending(collectNumbers([values], scope)).at(-Math.ceil(place)) ?? NUMBER),
  ),
  defineFunction("SMALL", [range, number], (scope, values, place) =>
    place < 1 ? NUMBER : (ascending(collectNumbers([values], scope))[Math.ceil(place) - 1] ?? NUMBER),
  ),
  ...["RANK", "RANK.EQ"].map((name) =>
    defineFunction(name, [number, range, optional(number)], (scope, value, others, rising = 0) =>
      rank(value, collectNumbers([others], scope), rising),
    ),
  ),
  ...["PERCENTILE", "PERCENTILE.INC"].map((name) =>
    defineFunction(name, [range, number], (scope, values, share) =>
      quantile(collectNumbers([values], scope), share),
    ),
  ),
  ...["QUARTILE", "QUARTILE.INC"].map((name) =>
    defineFunction(name, [range, number], (scope, values, quarter) =>
      quantile(collectNumbers([values], scope), Math.trunc(quarter) / 4),
    ),
  ),
  ofLine("SLOPE", ({ slope }) => slope),
  ofLine("INTERCEPT", ({ intercept }) => intercept),
  ofLine("CORREL", ({ correlation }) => correlation),
  ofLine("PEARSON", ({ correlation }) => correlation),
  ofLine("RSQ", ({ correlation }) => correlation ** 2),
  ...["FORECAST", "FORECAST.LINEAR"].map((name) =>
    defineFunction(name, [number, range, range], (scope, x, ys, xs) => {
      const fit = fitLine(collectPairs(xs, ys, scope));
      return fit ? fit.intercept + fit.slope * x : DIVISION;
    }),
  ),
];
