import { describe, expect, it } from "vitest";
import type { AimEnds } from "../../../src/domain/progress/aim";
import { judgeProgress, type Verdict } from "../../../src/domain/progress/verdict";
import { normalDeviate, seededRandom } from "../../../src/domain/seeded-random";
import type { Day } from "../../../src/domain/units";

const PUPILS = 1000;
/** Twenty weeks at two words a week to a goal of 60. */
const ENDS: AimEnds = { startDay: 46_000, startScore: 20, goalDay: 46_140, goalScore: 60 };

/** Share of simulated pupils, weekly probes in weeks 1 to `weeks`, that are told `wanted` at the last one. */
const shareTold = (
  wanted: Verdict,
  weeks: number,
  scatter: number,
  tooSlowBy: number,
  seed: number,
): number => {
  const random = seededRandom(seed);
  let told = 0;
  for (let pupil = 0; pupil < PUPILS; pupil++) {
    const values = Array.from({ length: weeks }, (_, i) => ({
      day: (ENDS.startDay + 7 * (i + 1)) as Day,
      value: ENDS.startScore + (2 - tooSlowBy) * (i + 1) + scatter * normalDeviate(random),
    }));
    const judged = judgeProgress(values, ENDS);
    if (judged.ok && judged.value.verdict === wanted) told++;
  }
  return told / PUPILS;
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
