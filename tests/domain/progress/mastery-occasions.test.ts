import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { poolOccasions, type TrialCount } from "../../../src/domain/progress/mastery-occasions";
import type { Day } from "../../../src/domain/units";

const row = (day: number, correct: number, opportunities: number): TrialCount => ({
  day: day as Day,
  correct,
  opportunities,
});
const pooled = (rows: readonly TrialCount[], least?: number): readonly (readonly number[])[] => {
  const result = poolOccasions(rows, least);
  if (!result.ok) throw new Error(result.fault.message);
  return result.value.map(({ day, correct, opportunities }) => [day, correct, opportunities]);
};

// This project's rule: the page on probes and progress, "Mastery".
describe("occasions", () => {
  it.each([
    { about: "the rows of a day are summed", rows: [row(1, 4, 5), row(1.6, 5, 5)], want: [[1, 9, 10]] },
    {
      about: "a short day is pooled with the next, dated by the last",
      rows: [row(1, 4, 5), row(3, 3, 5), row(8, 9, 10)],
      want: [
        [3, 7, 10],
        [8, 9, 10],
      ],
    },
    {
      about: "a short day before a long one is pooled with it",
      rows: [row(1, 0, 4), row(3, 9, 10)],
      want: [[3, 9, 14]],
    },
    {
      about: "what is left over is no occasion yet",
      rows: [row(1, 9, 10), row(5, 4, 9)],
      want: [[1, 9, 10]],
    },
    {
      about: "rows in any order",
      rows: [row(8, 9, 10), row(1, 7, 10)],
      want: [
        [1, 7, 10],
        [8, 9, 10],
      ],
    },
    {
      about: "days without opportunities count for nothing",
      rows: [row(1, 0, 0), row(2, 9, 10)],
      want: [[2, 9, 10]],
    },
    { about: "no rows", rows: [], want: [] },
  ])("$about", ({ rows, want }) => expect(pooled(rows, 10)).toEqual(want));

  it.each([
    {
      about: "more correct than opportunities",
      bad: row(1, 11, 10),
      code: "more-correct-than-opportunities",
    },
    { about: "some correct of none", bad: row(1, 1, 0), code: "more-correct-than-opportunities" },
    { about: "a negative count", bad: row(1, -1, 10), code: "negative-count" },
    { about: "a share for a count", bad: row(1, 0.8, 1), code: "impossible-number" },
    { about: "1e9 opportunities", bad: row(1, 5, 1e9), code: "impossible-number" },
    { about: "no number", bad: row(1, NaN, 10), code: "impossible-number" },
  ])("$about: $code", ({ bad, code }) => {
    expect(poolOccasions([row(1, 8, 10), bad])).toMatchObject({ ok: false, fault: { code } });
  });

  it("loses nothing but an unfinished pool, and never makes an occasion too small", () => {
    const rows = fc.array(
      fc.record({ day: fc.integer({ min: 1, max: 40 }), opportunities: fc.nat(12), share: fc.nat(100) }),
    );
    fc.assert(
      fc.property(rows, fc.integer({ min: 1, max: 15 }), (given, least) => {
        const trials = given.map(({ day, opportunities, share }) =>
          row(day, Math.floor((opportunities * share) / 100), opportunities),
        );
        const occasions = pooled(trials, least);
        const total = trials.reduce((sum, trial) => sum + trial.opportunities, 0);
        const kept = occasions.reduce((sum, [, , opportunities = NaN]) => sum + opportunities, 0);
        expect(total - kept).toBeGreaterThanOrEqual(0);
        expect(total - kept).toBeLessThan(least);
        for (const [, , opportunities] of occasions) expect(opportunities).toBeGreaterThanOrEqual(least);
      }),
    );
  });
});
