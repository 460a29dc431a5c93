import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { selectRank } from "../../../src/domain/statistics/order-statistic";

describe("the value of a rank", () => {
  it("is the one that sorting puts there, ties and infinities included", () => {
    const value = fc.oneof(fc.double({ noNaN: true }), fc.integer({ min: -3, max: 3 }));
    fc.assert(
      fc.property(fc.array(value, { minLength: 1 }), fc.nat(), (values, seed) => {
        const rank = seed % values.length;
        const sorted = Float64Array.from(values).sort();
        // 0 and −0 sort apart but are one value.
        expect((selectRank(Float64Array.from(values), rank) ?? NaN) + 0).toBe((sorted[rank] ?? NaN) + 0);
      }),
    );
  });

  it.each([-1, 3, 0.5, NaN])("%d of three there is not", (rank) => {
    expect(selectRank(Float64Array.of(1, 2, 3), rank)).toBeUndefined();
  });
});
