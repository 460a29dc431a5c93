import { describe, expect, it } from "vitest";
import type { Verdict } from "../../../src/domain/progress/verdict";
import { shareOfVerdicts, VERDICTS } from "../../simulation/decision-rules";

const PUPILS = 1000;

/** Share of simulated pupils, weekly probes in weeks 1 to `weeks`, that are told `wanted` at the last one. */
const shareTold = (
  wanted: Verdict,
  weeks: number,
  scatter: number,
  tooSlowBy: number,
  seed: number,
): number => {
  const shares = shareOfVerdicts({ correlation: 0, slopeOff: -tooSlowBy, scatter }, weeks, PUPILS, seed);
  return shares[VERDICTS.findIndex((verdict) => verdict === wanted)] ?? NaN;
};

/** Three binomial standard errors of the difference between 1,000 pupils here and 4,000 there, and half its last digit. */
const tolerance = (share: number): number =>
  3 * Math.sqrt(share * (1 - share) * (1 / PUPILS + 1 / 4000)) + 0.005;

// The shared page's simulation of this rule: 4,000 pupils each, independent noise.
describe("the verdict on simulated pupils", () => {
  it.each([
    { weeks: 6, scatter: 4 },
    { weeks: 10, scatter: 4 },
    { weeks: 14, scatter: 8 },
    { weeks: 14, scatter: 4 },
  ])("on the aim line, $weeks weeks, scatter $scatter: `below aim` at 5 % of looks", ({ weeks, scatter }) => {
    const share = shareTold("below aim", weeks, scatter, 0, 1 + weeks * scatter);
    expect(Math.abs(share - 0.05)).toBeLessThan(tolerance(0.05));
  });

  it.each([
    { weeks: 6, scatter: 4, caught: 0.53 },
    { weeks: 8, scatter: 4, caught: 0.86 },
    { weeks: 10, scatter: 4, caught: 0.99 },
    { weeks: 14, scatter: 4, caught: 1 },
    { weeks: 6, scatter: 8, caught: 0.22 },
    { weeks: 8, scatter: 8, caught: 0.39 },
    { weeks: 10, scatter: 8, caught: 0.61 },
    { weeks: 14, scatter: 8, caught: 0.95 },
  ])(
    "a word a week too slow, $weeks weeks, scatter $scatter: caught in $caught",
    ({ weeks, scatter, caught }) => {
      const share = shareTold("below aim", weeks, scatter, 1, 100 + weeks * scatter);
      expect(Math.abs(share - caught)).toBeLessThan(tolerance(caught));
    },
  );

  it("tells a pupil who is ahead and one who is behind apart evenly", () => {
    const below = shareTold("below aim", 10, 8, 1, 7);
    const above = shareTold("above aim", 10, 8, -1, 8);
    expect(Math.abs(below - above)).toBeLessThan(tolerance(0.61));
  });
});
