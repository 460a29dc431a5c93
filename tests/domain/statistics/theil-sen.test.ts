import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitMedianSlope, type MedianSlope } from "../../../src/domain/statistics/theil-sen";
import checks from "../../check-values/trend.json";

const slopeOf = (xs: readonly number[], ys: readonly number[], confidence?: number): MedianSlope => {
  const fit = fitMedianSlope(xs, ys, confidence);
  if (!fit.ok) throw new Error(fit.fault.message);
  return fit.value;
};

describe("Theil–Sen", () => {
  it.each([
    { name: "Sen 1968, 93 %", x: checks.sen.x, y: checks.sen.y, confidence: 0.93, expected: checks.sen },
    { name: "Tarlow's baseline C, ties in y", ...checks.tarlow, confidence: 0.95, expected: checks.tarlow },
    { name: "ten weeks", ...checks.weeks, confidence: 0.95, expected: checks.weeks.medianSlope },
  ])("$name", ({ x, y, confidence, expected }) => {
    const fit = slopeOf(x, y, confidence);
    expect(fit.slope).toBeCloseTo(expected.slope, 12);
    expect(fit.intercept).toBeCloseTo(expected.intercept, 12);
    expect(fit.interval?.low).toBeCloseTo(expected.low, 12);
    expect(fit.interval?.high).toBeCloseTo(expected.high, 12);
  });

  it("on R women rounds the rank outward where SciPy rounds to the nearest: 3.1, not 3.125", () => {
    const { low, high } = slopeOf(checks.women.x, checks.women.y).interval ?? {};
    expect(low).toBeCloseTo(3.1, 12);
    expect(low).toBeLessThan(checks.women.medianSlope.low);
    expect(high).toBeCloseTo(checks.women.medianSlope.high, 12);
  });

  it("leaves pairs on the same day out", () => {
    expect(slopeOf([0, 0, 1, 1], [0, 2, 4, 6]).slope).toBe(4);
  });

  it("gives no interval under six points, nor where ties leave too few slopes", () => {
    expect(slopeOf([1, 2, 3, 4, 5], [1, 3, 2, 5, 4]).interval).toBeUndefined();
    expect(slopeOf([1, 1, 1, 2, 2, 2], [1, 3, 2, 5, 4, 6]).interval).toBeUndefined();
    expect(slopeOf([1, 2, 3, 4, 5, 6], [1, 3, 2, 5, 4, 6]).interval).toBeDefined();
  });

  it("is untouched by one wild score among ten", () => {
    const calm = checks.weeks.y;
    const wild = calm.map((y, i) => (i === 4 ? 900 : y));
    expect(Math.abs(slopeOf(checks.weeks.x, wild).slope - slopeOf(checks.weeks.x, calm).slope)).toBeLessThan(
      0.3,
    );
  });

  it("turns its interval over with the sign of the scores", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -99, max: 99 }), { minLength: 6, maxLength: 12 }), (ys) => {
        const xs = ys.map((_, i) => i);
        const up = slopeOf(xs, ys);
        const down = slopeOf(
          xs,
          ys.map((y) => -y),
        );
        expect(down.slope).toBeCloseTo(-up.slope, 12);
        expect(down.interval?.low).toBeCloseTo(-(up.interval?.high ?? NaN), 12);
      }),
    );
  });

  it.each([
    { about: "one point", xs: [3], code: "too-few-points" },
    { about: "all on one day", xs: [3, 3, 3], code: "one-day" },
  ])("refuses $about", ({ xs, code }) => {
    expect(fitMedianSlope(xs, xs)).toMatchObject({ ok: false, fault: { code } });
  });
});
