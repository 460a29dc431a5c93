import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { incompleteBeta } from "../../../src/domain/statistics/incomplete-beta";
import { logBeta, logGamma } from "../../../src/domain/statistics/log-beta";
import checks from "../../check-values/beta-quantiles.json";

describe("incomplete beta", () => {
  it(`undoes ${checks.rows.length} quantiles of SciPy to 1e-12`, () => {
    for (const [a = NaN, b = NaN, share = NaN, x = NaN] of checks.rows) {
      expect(Math.abs(incompleteBeta(x, a, b) / share - 1)).toBeLessThan(1e-12);
    }
  });

  it("is the binomial tail for whole numbers: 8 or more of 10 at .7 is .38278", () => {
    // P(X ≥ k) = I_p(k, n − k + 1); value by SciPy
    expect(incompleteBeta(0.7, 8, 3)).toBeCloseTo(0.38278278639999985, 14);
  });

  it("adds up to 1 with its mirror image", () => {
    const shape = fc.double({ min: 0.1, max: 500, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), shape, shape, (x, a, b) => {
        expect(incompleteBeta(x, a, b) + incompleteBeta(1 - x, b, a, x)).toBeCloseTo(1, 12);
      }),
    );
  });

  it("throws outside its range", () => {
    expect(() => incompleteBeta(1.1, 1, 1)).toThrow(RangeError);
    expect(() => incompleteBeta(0.5, 0, 1)).toThrow(RangeError);
  });
});

describe("ln Γ and ln B", () => {
  it.each([
    { x: 0.5, value: Math.log(Math.PI) / 2, about: "Γ(½) = √π" },
    { x: 1, value: 0, about: "Γ(1) = 1" },
    { x: 11, value: Math.log(3_628_800), about: "Γ(11) = 10!" },
    { x: 171, value: 706.5730622457873, about: "ln 170!, summed term by term with 40 digits" },
  ])("$about", ({ x, value }) => expect(logGamma(x)).toBeCloseTo(value, 12));

  it("keeps its digits where one argument is large: B(n, 1) = 1/n", () => {
    expect(logBeta(1e9, 1)).toBeCloseTo(-Math.log(1e9), 12);
    expect(logBeta(3, 1)).toBeCloseTo(-Math.log(3), 13);
  });
});
