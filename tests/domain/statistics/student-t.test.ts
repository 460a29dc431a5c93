import tQuantile from "@stdlib/stats-base-dists-t-quantile";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { studentQuantile, studentShare } from "../../../src/domain/statistics/student-t";

const FREEDOMS = [0.5, 1, 2, 3, 4, 5, 8, 13, 30, 100, 1000, 100_000];
const SHARES = [1e-10, 1e-5, 0.001, 0.01, 0.025, 0.05, 0.1, 0.25, 0.4, 0.49, 0.6, 0.9, 0.95, 0.975, 0.999];

describe("Student's t", () => {
  it.each(FREEDOMS)("quantiles at %d degrees of freedom are those of @stdlib to 1e-10", (freedom) => {
    for (const share of SHARES) {
      const expected = tQuantile(share, freedom);
      expect(Math.abs(studentQuantile(share, freedom) / expected - 1)).toBeLessThan(1e-10);
    }
  });

  it.each([
    { freedom: 8, share: 0.975, t: 2.306004135204166, source: "SciPy, worked set" },
    { freedom: 1, share: 0.75, t: 1, source: "Cauchy: tan(π/4)" },
    { freedom: 2, share: 0.9, t: 1.885618083164127, source: "closed form (2p−1)√(2/(4p(1−p)))" },
  ])("is $t at $share and $freedom degrees ($source)", ({ freedom, share, t }) => {
    expect(studentQuantile(share, freedom)).toBeCloseTo(t, 12);
  });

  it("keeps its digits beside the middle (density of t with 2 degrees at 0 is 1/√8)", () => {
    expect(studentQuantile(0.5 + 1e-7, 2) / (1e-7 * Math.sqrt(8))).toBeCloseTo(1, 8);
    expect(studentQuantile(0.5, 2)).toBe(0);
  });

  it("share after quantile is the identity", () => {
    const share = fc.double({ min: 0.0001, max: 0.9999, noNaN: true });
    fc.assert(
      fc.property(share, fc.integer({ min: 1, max: 400 }), (p, freedom) => {
        expect(studentShare(studentQuantile(p, freedom), freedom)).toBeCloseTo(p, 12);
      }),
    );
  });

  it.each([
    { share: 0, freedom: 5 },
    { share: 1, freedom: 5 },
    { share: NaN, freedom: 5 },
    { share: 0.9, freedom: 0 },
  ])("throws at share $share with $freedom degrees", ({ share, freedom }) => {
    expect(() => studentQuantile(share, freedom)).toThrow(RangeError);
  });
});
