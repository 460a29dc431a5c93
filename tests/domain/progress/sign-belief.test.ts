import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { absorbUse, beliefOf, expectedShare, varianceOf } from "../../../src/domain/progress/sign-belief";
import { incompleteBeta } from "../../../src/domain/statistics/incomplete-beta";

const count = fc.double({ min: 0.05, max: 200, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe("taking in one use of a sign", () => {
  it("adds one right where it was surely recognised, one wrong where surely not", () => {
    expect(absorbUse({ right: 2, wrong: 3 }, 1).right).toBeCloseTo(3, 10);
    expect(absorbUse({ right: 2, wrong: 3 }, 1).wrong).toBeCloseTo(3, 10);
    expect(absorbUse({ right: 2, wrong: 3 }, 0).right).toBeCloseTo(2, 10);
    expect(absorbUse({ right: 2, wrong: 3 }, 0).wrong).toBeCloseTo(4, 10);
  });

  it("changes nothing where the use tells nothing", () => {
    fc.assert(
      fc.property(count, count, (right, wrong) => {
        const after = absorbUse({ right, wrong }, right / (right + wrong));
        expect(after.right / right).toBeCloseTo(1, 6);
        expect(after.wrong / wrong).toBeCloseTo(1, 6);
      }),
    );
  });

  it("has the mean and the variance of the mixture, found by summing over its density", () => {
    const [right, wrong, recognised] = [2.5, 1.2, 0.35];
    let [mean, square] = [0, 0];
    const steps = 20_000;
    const below = (x: number): number =>
      recognised * incompleteBeta(x, right + 1, wrong) +
      (1 - recognised) * incompleteBeta(x, right, wrong + 1);
    for (let step = 0; step < steps; step++) {
      const mass = below((step + 1) / steps) - below(step / steps);
      const x = (step + 0.5) / steps;
      mean += mass * x;
      square += mass * x * x;
    }
    const after = absorbUse({ right, wrong }, recognised);
    expect(expectedShare(after)).toBeCloseTo(mean, 7);
    expect(varianceOf(after)).toBeCloseTo(square - mean * mean, 7);
  });

  it("keeps both counts above 0, whatever comes", () => {
    fc.assert(
      fc.property(count, count, share, (right, wrong, recognised) => {
        const after = absorbUse({ right, wrong }, recognised);
        expect(after.right).toBeGreaterThan(0);
        expect(after.wrong).toBeGreaterThan(0);
      }),
    );
  });

  it("is told from its mean and variance", () => {
    const again = beliefOf(expectedShare({ right: 3, wrong: 7 }), varianceOf({ right: 3, wrong: 7 }));
    expect(again.right).toBeCloseTo(3, 10);
    expect(again.wrong).toBeCloseTo(7, 10);
  });
});
