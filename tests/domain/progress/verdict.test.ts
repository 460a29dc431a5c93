import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { AimEnds } from "../../../src/domain/progress/aim";
import { judgeProgress, type Judgement } from "../../../src/domain/progress/verdict";
import type { Day } from "../../../src/domain/units";
import checks from "../../check-values/trend.json";

const weekly = (scores: readonly number[], firstDay = 7): { day: Day; value: number }[] =>
  scores.map((value, i) => ({ day: (firstDay + 7 * i) as Day, value }));
const judge = (values: readonly { day: Day; value: number }[], ends: AimEnds): Judgement => {
  const judged = judgeProgress(values, ends);
  if (!judged.ok) throw new Error(judged.fault.message);
  return judged.value;
};
const ENDS: AimEnds = { startDay: 0, startScore: 20, goalDay: 140, goalScore: 60 };
const DOWN: AimEnds = { startDay: 0, startScore: 20, goalDay: 140, goalScore: 5 };

describe("the verdict", () => {
  it.each([
    { about: "five days", scores: [22, 24, 26, 28, 30], ends: ENDS, verdict: "too few points" },
    { about: "no probe at all", scores: [], ends: ENDS, verdict: "too few points" },
    {
      about: "six days exactly on the line",
      scores: [22, 24, 26, 28, 30, 32],
      ends: ENDS,
      verdict: "on aim",
    },
    {
      about: "little scatter about the line",
      scores: [23, 23, 27, 27, 31, 31],
      ends: ENDS,
      verdict: "on aim",
    },
    {
      about: "wide scatter about the line",
      scores: [10, 40, 12, 45, 10, 50],
      ends: ENDS,
      verdict: "unclear",
    },
    { about: "level since the start", scores: [20, 21, 20, 19, 21, 20], ends: ENDS, verdict: "below aim" },
    { about: "twice as fast as asked", scores: [24, 29, 32, 35, 41, 44], ends: ENDS, verdict: "above aim" },
    { about: "last three at the goal", scores: [30, 40, 50, 59, 60, 61], ends: ENDS, verdict: "goal met" },
    {
      about: "last three at the goal, but five days",
      scores: [50, 60, 60, 60, 60],
      ends: ENDS,
      verdict: "too few points",
    },
    { about: "one lucky day at the goal", scores: [20, 21, 20, 19, 21, 61], ends: ENDS, verdict: "unclear" },
    {
      about: "errors that do not fall, lower is better",
      scores: [20, 20, 19, 20, 20, 21],
      ends: DOWN,
      verdict: "below aim",
    },
    {
      about: "errors that fall fast, lower is better",
      scores: [17, 15, 13, 12, 10, 8],
      ends: DOWN,
      verdict: "above aim",
    },
    { about: "errors down at the goal", scores: [17, 15, 9, 5, 5, 4], ends: DOWN, verdict: "goal met" },
    {
      about: "start equal to goal: higher is better",
      scores: [30, 31, 29, 30, 30, 31],
      ends: { ...ENDS, startScore: 60 },
      verdict: "below aim",
    },
    {
      about: "constant at a goal of zero",
      scores: [0, 0, 0, 0, 0, 0],
      ends: { ...DOWN, goalScore: 0 },
      verdict: "goal met",
    },
  ])("$about: $verdict", ({ scores, ends, verdict }) => {
    expect(judge(weekly(scores), ends).verdict).toBe(verdict);
  });

  // interval by NumPy and SciPy: least squares, t(8) at 95 %
  it("compares the fitted value on the last day with the aim on that day", () => {
    const values = checks.weeks.x.map((week, i) => ({
      day: (7 * week) as Day,
      value: checks.weeks.y[i] ?? NaN,
    }));
    const judged = judge(values, { startDay: 28, startScore: 19, goalDay: 126, goalScore: 45 });
    expect(judged.verdict).toBe("below aim");
    expect(judged.comparison?.fitted).toBeCloseTo(32.36363636363637, 10);
    expect(judged.comparison?.low).toBeCloseTo(30.875837857165788, 10);
    expect(judged.comparison?.high).toBeCloseTo(33.85143487010695, 10);
    expect(judged.comparison?.aim).toBeCloseTo(37.57142857142857, 12);
    expect(judged.comparison?.widestHalf).toBe(4.5);
  });

  it("counts days, not probes: three probes a day for five days are too few", () => {
    const values = [0, 7, 14, 21, 28].flatMap((day) =>
      [20, 22, 24].map((value) => ({ day: day as Day, value })),
    );
    expect(judge(values, ENDS)).toMatchObject({ verdict: "too few points", days: 5 });
  });

  it("takes the median of a day", () => {
    const once = weekly([22, 24, 26, 28, 30, 32]);
    const noisy = once.flatMap(({ day, value }) => [
      { day, value },
      { day, value: value - 1 },
      { day, value: 400 },
    ]);
    expect(judge(noisy, ENDS)).toEqual(judge(once, ENDS));
  });

  it("leaves out what was before the start, and keeps the start day itself", () => {
    const before = weekly([1, 90, 3, 80], -28);
    const since = weekly([20, 22, 24, 26, 28, 30], 0);
    expect(judge([...before, ...since], ENDS)).toEqual(judge(since, ENDS));
    expect(judge(since, ENDS).days).toBe(6);
  });

  it("holds the aim at the goal after its date", () => {
    expect(judge(weekly([50, 51, 50, 49, 50, 51], 200), ENDS).comparison?.aim).toBe(60);
  });

  it("does not mind the order of the rows", () => {
    const rows = weekly([22, 20, 27, 29, 28, 33, 30]);
    fc.assert(
      fc.property(fc.shuffledSubarray(rows, { minLength: rows.length }), (shuffled) => {
        expect(judge(shuffled, ENDS)).toEqual(judge(rows, ENDS));
      }),
    );
  });

  it("is the same with every score and both ends in another unit", () => {
    const scores = fc.array(fc.integer({ min: 1, max: 90 }), { minLength: 6, maxLength: 14 });
    fc.assert(
      fc.property(scores, (values) => {
        const tenth = { ...ENDS, startScore: 2, goalScore: 6 };
        expect(judge(weekly(values.map((value) => value / 10)), tenth).verdict).toBe(
          judge(weekly(values), ENDS).verdict,
        );
      }),
    );
  });

  it.each([
    { about: "four days in a row under the aim", scores: [22, 25, 20, 21, 22, 23], run: "worse" },
    { about: "four days in a row over it", scores: [22, 20, 30, 31, 32, 36], run: "better" },
    { about: "three days only", scores: [22, 24, 29, 21, 22, 23], run: undefined },
    { about: "one day on the line", scores: [22, 24, 20, 21, 30, 23], run: undefined },
  ])("stands beside a prompt: $about", ({ scores, run }) => {
    expect(judge(weekly(scores), ENDS).run).toBe(run);
  });

  it("turns the prompt over where lower is better", () => {
    expect(judge(weekly([20, 20, 20, 20]), DOWN).run).toBe("worse");
  });

  it.each([0, -7])("refuses a goal date %i days after the start", (days) => {
    const judged = judgeProgress(weekly([1, 2, 3, 4, 5, 6]), { ...ENDS, goalDay: days });
    expect(judged).toMatchObject({ ok: false, fault: { code: "goal-not-after-start" } });
  });

  it("is stricter about `on aim` with a narrower limit", () => {
    const values = weekly([23, 23, 27, 27, 31, 31]);
    const strict = judgeProgress(values, ENDS, { confidence: 0.9, widest: 0.01 });
    expect(strict).toMatchObject({ ok: true, value: { verdict: "unclear" } });
  });
});
