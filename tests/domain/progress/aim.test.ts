import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { aimOn, checkAim, isLowerBetter, type AimEnds } from "../../../src/domain/progress/aim";

const ENDS: AimEnds = { startDay: 28, startScore: 19, goalDay: 126, goalScore: 45 };

describe("the aim line", () => {
  it.each([
    { day: 28, value: 19, about: "starts at the start" },
    { day: 126, value: 45, about: "ends at the goal" },
    { day: 77, value: 32, about: "is half-way in between" },
    { day: 127, value: 45, about: "is held after the goal's date" },
    { day: 5000, value: 45, about: "is held for ever" },
    { day: 27, value: undefined, about: "is not there before the start" },
  ])("$about", ({ day, value }) => expect(aimOn(ENDS, day)).toBe(value));

  it("rises 1.857142857 a week on the worked set", () => {
    expect((aimOn(ENDS, 35) ?? NaN) - 19).toBeCloseTo(1.8571428571428572, 12);
  });

  it("never leaves the span between start and goal", () => {
    fc.assert(
      fc.property(fc.integer({ min: 28, max: 400 }), (day) => {
        const value = aimOn(ENDS, day) ?? NaN;
        expect(value).toBeGreaterThanOrEqual(19);
        expect(value).toBeLessThanOrEqual(45);
      }),
    );
  });

  it("refuses a goal on the start day", () => {
    expect(checkAim({ ...ENDS, goalDay: 28 })).toMatchObject({ fault: { code: "goal-not-after-start" } });
  });

  it("says which way is better", () => {
    expect(isLowerBetter(ENDS)).toBe(false);
    expect(isLowerBetter({ ...ENDS, goalScore: 18 })).toBe(true);
    expect(isLowerBetter({ ...ENDS, goalScore: 19 })).toBe(false);
  });
});
