import tQuantile from "@stdlib/stats-base-dists-t-quantile";
import { describe, expect, it } from "vitest";
import { normalQuantile } from "../../../src/domain/statistics/normal";

describe("normal quantile", () => {
  // Student's t with 1e14 degrees of freedom is the normal distribution to 14 digits.
  it.each([1e-20, 1e-12, 1e-5, 0.01, 0.025, 0.07, 0.1, 0.3, 0.9, 0.975])(
    "at %f is that of @stdlib",
    (share) => {
      expect(Math.abs(normalQuantile(share) / tQuantile(share, 1e14) - 1)).toBeLessThan(1e-11);
    },
  );

  it("is 1.959963984540054 at 97.5 % (any table)", () =>
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 13));
  it("is 0 in the middle", () => expect(normalQuantile(0.5)).toBe(0));
  it("throws at the ends", () => {
    expect(() => normalQuantile(0)).toThrow(RangeError);
    expect(() => normalQuantile(1)).toThrow(RangeError);
  });
});
