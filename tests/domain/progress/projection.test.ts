import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { projectGoal, type Projection } from "../../../src/domain/progress/projection";
import type { Day } from "../../../src/domain/units";
import trend from "../../check-values/trend.json";
import checks from "../../check-values/worked-trend.json";

const FIRST = 46_000;
const values = (scores: readonly number[], step = 7): { day: Day; value: number }[] =>
  scores.map((value, i) => ({ day: (FIRST + step * i) as Day, value }));
const codeOf = (scores: readonly number[], goal: number): string => {
  const result = projectGoal(values(scores), goal);
  return result.ok ? "a date" : result.fault.code;
};
const dateOf = (rows: readonly { day: Day; value: number }[], goal: number): Projection => {
  const result = projectGoal(rows, goal);
  if (!result.ok) throw new Error(result.fault.message);
  return result.value;
};

describe("the day on which a trend reaches a goal", () => {
  const { x: weeks, y: scores } = trend.weeks;
  const worked = weeks.map((week, i) => ({ day: (7 * week) as Day, value: scores[i] ?? NaN }));

  it("is week 23.2, from 20.4 to 27.9, of the worked set", () => {
    const { day, earliest, latest, days } = dateOf(worked, checks.worked.goal);
    expect(day / 7).toBeCloseTo(checks.worked.projected_week, 9);
    expect(earliest / 7).toBeCloseTo(checks.worked.fieller95_week[0] ?? NaN, 9);
    expect(latest / 7).toBeCloseTo(checks.worked.fieller95_week[1] ?? NaN, 9);
    expect(days).toBe(10);
  });

  it("takes the median of a day, and rows in any order", () => {
    const [first, ...rest] = worked;
    const threeOnOneDay = [1, 0, -8].map((off) => ({
      day: first?.day ?? (0 as Day),
      value: (first?.value ?? NaN) + off,
    }));
    expect(dateOf([...rest.reverse(), ...threeOnOneDay], 45)).toEqual(dateOf(worked, 45));
  });

  it.each([
    { about: "five days", scores: [20, 22, 24, 26, 28], goal: 40, code: "too-few-points" },
    { about: "level scores", scores: [20, 20, 20, 20, 20, 20], goal: 40, code: "level-trend" },
    { about: "level fractions", scores: [0.1, 0.1, 0.1, 0.1, 0.1, 0.1], goal: 1, code: "level-trend" },
    { about: "scatter without a trend", scores: [20, 28, 19, 27, 21, 26], goal: 40, code: "level-trend" },
    {
      about: "a falling trend under the goal",
      scores: [30, 28, 27, 24, 22, 21],
      goal: 40,
      code: "away-from-goal",
    },
    {
      about: "a rising trend over the goal",
      scores: [20, 22, 24, 26, 28, 31],
      goal: 10,
      code: "away-from-goal",
    },
    { about: "a goal among the scores", scores: [20, 22, 24, 26, 28, 31], goal: 25, code: "goal-passed" },
    {
      about: "the last three at the goal, the line not yet",
      scores: [20, 24, 22, 26, 26, 26],
      goal: 26,
      code: "goal-passed",
    },
    {
      about: "fewer errors, the goal not yet reached",
      scores: [30, 28, 27, 24, 22, 21],
      goal: 5,
      code: "a date",
    },
    { about: "fewer errors, passed", scores: [30, 28, 27, 24, 22, 21], goal: 25, code: "goal-passed" },
    { about: "a goal of 1e9", scores: [20, 22, 24, 26, 28, 31], goal: 1e9, code: "too-far-ahead" },
  ])("$about: $code", ({ scores: given, goal, code }) => expect(codeOf(given, goal)).toBe(code));

  it("has its date inside its interval, and the further goal is the later one", () => {
    const noise = fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: 8, maxLength: 20 });
    fc.assert(
      fc.property(noise, fc.double({ min: 1, max: 40, noNaN: true }), (offs, ahead) => {
        const rows = values(offs.map((off, i) => 20 + 2 * i + off));
        const near = projectGoal(rows, 24 + 2 * rows.length + ahead);
        const far = projectGoal(rows, 25 + 2 * rows.length + ahead);
        if (!near.ok || !far.ok) return;
        expect(near.value.earliest).toBeLessThanOrEqual(near.value.day);
        expect(near.value.latest).toBeGreaterThanOrEqual(near.value.day);
        expect(far.value.day).toBeGreaterThan(near.value.day);
      }),
    );
  });
});
