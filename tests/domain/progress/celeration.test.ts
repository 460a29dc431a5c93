import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { computeCeleration, type Celeration } from "../../../src/domain/progress/celeration";
import trend from "../../check-values/trend.json";
import checks from "../../check-values/worked-trend.json";

const of = (days: readonly number[], rates: readonly number[]): Celeration => {
  const result = computeCeleration(days, rates);
  if (!result.ok) throw new Error(result.fault.message);
  return result.value;
};

describe("celeration", () => {
  it("is ×1.0541 a week for the worked set, doubled in 13.1 weeks", () => {
    const days = trend.weeks.x.map((week) => 46_000 + 7 * week);
    const { perWeek, doublingWeeks, points } = of(days, trend.weeks.y);
    expect(perWeek).toBeCloseTo(checks.worked.celeration_per_week, 10);
    expect(doublingWeeks).toBeCloseTo(checks.worked.celeration_doubling_weeks, 8);
    expect(points).toBe(10);
  });

  it.each([
    { about: "from 10 to 20 in seven days", days: [1, 8], rates: [10, 20], factor: 2 },
    { about: "halved in seven days", days: [1, 8], rates: [20, 10], factor: 0.5 },
    { about: "level", days: [1, 8, 15], rates: [20, 20, 20], factor: 1 },
    { about: "doubled in one day", days: [1, 2], rates: [10, 20], factor: 128 },
  ])("$about is ×$factor", ({ days, rates, factor }) =>
    expect(of(days, rates).perWeek).toBeCloseTo(factor, 10),
  );

  it("does not depend on the unit of the rate", () => {
    const rates = fc.array(fc.double({ min: 0.5, max: 200, noNaN: true }), { minLength: 2, maxLength: 20 });
    fc.assert(
      fc.property(rates, fc.double({ min: 0.01, max: 100, noNaN: true }), (given, unit) => {
        const days = given.map((_, i) => 3 * i);
        const same = of(
          days,
          given.map((rate) => rate * unit),
        ).perWeek;
        expect(same / of(days, given).perWeek).toBeCloseTo(1, 8);
      }),
    );
  });

  it.each([
    { about: "a rate of 0", days: [1, 8], rates: [0, 20], code: "not-above-zero" },
    { about: "a rate below 0", days: [1, 8], rates: [-3, 20], code: "not-above-zero" },
    { about: "one point", days: [1], rates: [20], code: "too-few-points" },
    { about: "one day", days: [1, 1], rates: [20, 25], code: "one-day" },
  ])("$about: $code", ({ days, rates, code }) => {
    expect(computeCeleration(days, rates)).toMatchObject({ ok: false, fault: { code } });
  });
});
