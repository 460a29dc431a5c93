import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { intervalOfProportion, PROPORTION_METHODS } from "../../../src/domain/statistics/proportion-interval";
import checks from "../../check-values/mastery.json";

describe("the interval of a proportion", () => {
  it.each([
    { method: "jeffreys", expected: checks.eightOfTen.jeffreys },
    { method: "clopper-pearson", expected: checks.eightOfTen.clopper_pearson },
    { method: "wilson", expected: checks.eightOfTen.wilson },
  ] as const)("8 of 10 by $method: $expected", ({ method, expected: [low = NaN, high = NaN] }) => {
    const interval = intervalOfProportion(8, 10, 0.95, method);
    expect(interval.low).toBeCloseTo(low, 11);
    expect(interval.high).toBeCloseTo(high, 11);
  });

  it("is Jeffreys unless told otherwise: 8 of 10 is .497 to .956", () => {
    const { low, high } = intervalOfProportion(8, 10);
    expect([low.toFixed(3), high.toFixed(3)]).toEqual(["0.497", "0.956"]);
  });

  it("reaches 0 where none and 1 where all succeeded, and says nothing about nothing", () => {
    expect(intervalOfProportion(0, 10).low).toBe(0);
    expect(intervalOfProportion(10, 10).high).toBe(1);
    expect(intervalOfProportion(10, 10).low).toBeLessThan(1);
    expect(intervalOfProportion(0, 0)).toEqual({ low: 0, high: 1 });
  });

  it.each(PROPORTION_METHODS)("%s holds the share, and mirrors for failures", (method) => {
    const counts = fc.nat(300).chain((n) => fc.tuple(fc.nat(n), fc.constant(n + 1)));
    fc.assert(
      fc.property(counts, ([k, n]) => {
        const { low, high } = intervalOfProportion(k, n, 0.95, method);
        const mirror = intervalOfProportion(n - k, n, 0.95, method);
        expect(low).toBeLessThanOrEqual(k / n + 1e-12);
        expect(high).toBeGreaterThanOrEqual(k / n - 1e-12);
        expect(mirror.low).toBeCloseTo(1 - high, 10);
      }),
    );
  });

  it("throws where more succeeded than were tried", () => {
    expect(() => intervalOfProportion(11, 10)).toThrow(RangeError);
    expect(() => intervalOfProportion(-1, 10)).toThrow(RangeError);
  });
});
