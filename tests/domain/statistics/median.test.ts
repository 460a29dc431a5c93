import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { median } from "../../../src/domain/statistics/median";

describe("median", () => {
  it.each([
    { about: "three passages at one sitting", values: [41, 55, 38], expected: 41 },
    { about: "an even number: the mean of the middle two", values: [1, 9, 3, 4], expected: 3.5 },
    { about: "one value", values: [7], expected: 7 },
    { about: "sizes sorted as numbers, not as text", values: [9, 10, 100], expected: 10 },
  ])("$about", ({ values, expected }) => expect(median(values)).toBe(expected));

  it("has as many values above as below", () => {
    fc.assert(
      fc.property(fc.array(fc.integer(), { minLength: 1 }), (values) => {
        const middle = median(values);
        const above = values.filter((value) => value > middle).length;
        const below = values.filter((value) => value < middle).length;
        return above <= values.length / 2 && below <= values.length / 2;
      }),
    );
  });

  it("leaves its argument alone and refuses nothing at all", () => {
    const values = [3, 1, 2];
    median(values);
    expect(values).toEqual([3, 1, 2]);
    expect(() => median([])).toThrow(RangeError);
  });
});
