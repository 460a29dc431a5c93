import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { recallOf } from "../../../src/domain/progress/mastery-recall";
import {
  estimateKnown,
  fadeBelief,
  KEPT_A_WEEK,
  SHARE_PRIOR,
  type KnownShare,
} from "../../../src/domain/progress/mastery-estimate";
import type { TrialCount } from "../../../src/domain/progress/mastery-occasions";
import type { Day } from "../../../src/domain/units";
import checks from "../../check-values/mastery.json";

const FIRST = 46_000;
const row = (week: number, correct: number, opportunities: number): TrialCount => ({
  day: (FIRST + 7 * week) as Day,
  correct,
  opportunities,
});
const known = (rows: readonly TrialCount[], asOfWeek?: number): KnownShare => {
  const result = estimateKnown(rows, asOfWeek === undefined ? undefined : ((FIRST + 7 * asOfWeek) as Day));
  if (!result.ok) throw new Error(result.fault.message);
  return result.value;
};

describe("the share known, with forgetting", () => {
  const { prior, lambda_per_week, rows } = checks.forgetting;

  it("is the worked sequence: 7 and 5, 14.4 and 6.6, 22.06 and 7.04, 21.82 and 7.96", () => {
    expect([SHARE_PRIOR.right, SHARE_PRIOR.wrong, KEPT_A_WEEK]).toEqual([...prior, lambda_per_week]);
    let week = 0;
    const trials = rows.map(({ k, n, weeks }) => row((week += weeks), k, n));
    rows.forEach(({ a, b, mean }, i) => {
      const { belief, expected } = known(trials.slice(0, i + 1));
      expect(belief.right).toBeCloseTo(a, 10);
      expect(belief.wrong).toBeCloseTo(b, 10);
      expect(expected).toBeCloseTo(mean, 12);
    });
  });

  it("has the interval of the beta distribution: 7 of 8 are Beta(8, 2), .518 to .972 (SciPy)", () => {
    const { low, high, opportunities } = known([row(0, 7, 8)]);
    expect(low).toBeCloseTo(0.517503485082663, 11);
    expect(high).toBeCloseTo(0.9718550265221018, 11);
    expect(opportunities).toBe(8);
  });

  it("fades up to the date asked about, and leaves out what came later", () => {
    const rowsGiven = [row(0, 9, 10), row(4, 2, 10)];
    const later = known(rowsGiven, 10);
    const { right, wrong } = fadeBelief(known(rowsGiven).belief, 6);
    expect(later.belief.right).toBeCloseTo(right, 12);
    expect(later.belief.wrong).toBeCloseTo(wrong, 12);
    expect(later.high - later.low).toBeGreaterThan(known(rowsGiven).high - known(rowsGiven).low);
    expect(known(rowsGiven, 3)).toMatchObject({ opportunities: 10, lastDay: FIRST });
  });

  it("does not mind the order of rows, nor how a day's rows are cut", () => {
    const trials = [row(0, 3, 5), row(0, 4, 5), row(2, 9, 10)];
    expect(known([...trials].reverse())).toEqual(known(trials));
    expect(known([row(0, 7, 10), row(2, 9, 10)])).toEqual(known(trials));
  });

  it("goes back to knowing nothing", () => {
    const { expected, low, high } = known([row(0, 40, 40)], 400);
    expect(expected).toBeCloseTo(0.5, 6);
    expect([low, high].map((limit) => limit.toFixed(3))).toEqual(["0.025", "0.975"]);
  });

  it("refuses where nothing was tried up to the date", () => {
    expect(estimateKnown([])).toMatchObject({ ok: false, fault: { code: "nothing-tried" } });
    expect(estimateKnown([row(0, 0, 0)])).toMatchObject({ ok: false, fault: { code: "nothing-tried" } });
    expect(estimateKnown([row(5, 8, 10)], FIRST as Day)).toMatchObject({ fault: { code: "nothing-tried" } });
  });

  it("holds the expected share within its interval", () => {
    const trials = fc.array(fc.tuple(fc.nat(20), fc.nat(20), fc.nat(20)), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(trials, (given) => {
        const result = estimateKnown(
          given.map(([week, right, wrong]) => row(week, right, right + wrong + 1)),
        );
        if (!result.ok) throw new Error(result.fault.message);
        const { low, expected, high } = result.value;
        expect(0 <= low && low < expected && expected < high && high <= 1).toBe(true);
      }),
    );
  });
});

// Our choice, no source.
describe("how well a sign was remembered on a day", () => {
  it.each([
    [10, 10, "remembered"],
    [8, 10, "remembered"],
    [7, 10, "unsteady"],
    [5, 10, "unsteady"],
    [4, 10, "forgotten"],
    [0, 10, "forgotten"],
  ])("%i of %i: %s", (correct, opportunities, recall) => {
    expect(recallOf({ day: FIRST as Day, correct, opportunities })).toBe(recall);
  });
});
