import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { betaQuantile } from "../../../src/domain/statistics/beta-quantile";
import { incompleteBeta } from "../../../src/domain/statistics/incomplete-beta";
import usual from "../../check-values/beta-quantiles.json";
import wide from "../../check-values/beta-quantiles-wide.json";

describe("the quantile of the beta distribution", () => {
  it.each([
    { name: "usual shapes", rows: usual.rows },
    { name: "shapes from 0.2 to 100,000, shares from 1e-6", rows: wide.rows },
  ])("agrees with SciPy to 1e-10: $name", ({ rows }) => {
    for (const [a = NaN, b = NaN, share = NaN, x = NaN] of rows) {
      expect(Math.abs(betaQuantile(share, a, b) / x - 1), `${share} of (${a}, ${b})`).toBeLessThan(1e-10);
    }
  });

  it("undoes the incomplete beta function", () => {
    const shape = fc.double({ min: 0.3, max: 300, noNaN: true });
    const share = fc.double({ min: 1e-4, max: 1 - 1e-4, noNaN: true });
    fc.assert(
      fc.property(share, shape, shape, (p, a, b) => {
        // Near 1 a last digit of x can be a good part of the share: p lies between its neighbours.
        const x = betaQuantile(p, a, b);
        expect(incompleteBeta(x * (1 - Number.EPSILON), a, b)).toBeLessThan(p + 1e-10);
        expect(incompleteBeta(Math.min(1, x * (1 + Number.EPSILON)), a, b)).toBeGreaterThan(p - 1e-10);
      }),
    );
  });

  it("of the even distribution is the share itself", () => {
    for (const share of [0.001, 0.25, 0.5, 0.999]) expect(betaQuantile(share, 1, 1)).toBeCloseTo(share, 14);
  });

  it.each([
    [0, 1, 1],
    [1, 1, 1],
    [0.5, 0, 1],
    [0.5, 1, Infinity],
  ])("throws outside its range: %f of (%f, %f)", (share, a, b) => {
    expect(() => betaQuantile(share, a, b)).toThrow(RangeError);
  });
});
