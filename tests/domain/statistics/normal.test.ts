import tQuantile from "@stdlib/stats-base-dists-t-quantile";
import { describe, expect, it } from "vitest";
import { normalQuantile, normalShare } from "../../../src/domain/statistics/normal";

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

describe("the share at or below z", () => {
  // scipy.stats.norm.cdf, SciPy 1.17.1
  it.each([
    { z: -9, share: 1.1285884059538324e-19 },
    { z: -3.01, share: 0.0013062384487694256 },
    { z: -2.99, share: 0.0013948872354922457 },
    { z: -1.96, share: 0.024997895148220435 },
    { z: 0, share: 0.5 },
    { z: 1, share: 0.8413447460685429 },
    { z: 3.5, share: 0.9997673709209645 },
  ])("$z: $share", ({ z, share }) => expect(normalShare(z) / share).toBeCloseTo(1, 12));

  it("undoes the quantile", () => {
    for (const share of [1e-12, 0.001, 0.2, 0.5, 0.9, 0.999])
      expect(normalShare(normalQuantile(share)) / share).toBeCloseTo(1, 12);
  });
});
