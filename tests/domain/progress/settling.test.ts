import tQuantile from "@stdlib/stats-base-dists-t-quantile";
import { describe, expect, it } from "vitest";
import { countProbesToSettle } from "../../../src/domain/progress/settling";
import { judgeProgress } from "../../../src/domain/progress/verdict";
import { fitLine } from "../../../src/domain/statistics/least-squares";
import type { Day } from "../../../src/domain/units";

const ENDS = { startDay: 0, startScore: 20, goalDay: 140, goalScore: 60 };
const weekly = (scores: readonly number[]): { day: Day; value: number }[] =>
  scores.map((value, i) => ({ day: (7 * (i + 1)) as Day, value }));
/** The half-width from scratch: all days written out, the scatter of the days so far. */
const halfWidth = (scores: readonly number[], more: number): number => {
  const so = scores.map((_, i) => 7 * (i + 1));
  const fit = fitLine(so, scores);
  if (!fit.ok) throw new Error(fit.fault.message);
  const days = Array.from({ length: scores.length + more }, (_, i) => 7 * (i + 1));
  const mean = days.reduce((sum, day) => sum + day, 0) / days.length;
  const spread = days.reduce((sum, day) => sum + (day - mean) ** 2, 0);
  const last = days.at(-1) ?? NaN;
  const error = (fit.value.scatter ?? NaN) * Math.sqrt(1 / days.length + (last - mean) ** 2 / spread);
  return tQuantile(0.95, days.length - 2) * error;
};
const settled = (scores: readonly number[], more: number): boolean => halfWidth(scores, more) <= 6;

describe("how many more weekly probes settle an unclear verdict", () => {
  it.each([
    { about: "along the aim line", scores: [29, 15, 33, 21, 37, 24] },
    { about: "flatter than the aim line", scores: [29, 14, 30, 17, 29, 20] },
    { about: "steeper", scores: [12, 34, 20, 41, 29, 47] },
  ])("$about: the fewest that do by the whole calculation", ({ scores }) => {
    const judged = judgeProgress(weekly(scores), ENDS);
    expect(judged.ok && judged.value.verdict).toBe("unclear");
    const more = countProbesToSettle(weekly(scores), ENDS) ?? NaN;
    expect(more).toBeGreaterThanOrEqual(1);
    expect(settled(scores, more)).toBe(true);
    for (let fewer = 0; fewer < more; fewer++) expect(settled(scores, fewer), String(fewer)).toBe(false);
  });

  it("names none where forty are not enough, and with two days", () => {
    expect(countProbesToSettle(weekly([500, -380, -380, 500, 500, -380, -380, 500]), ENDS)).toBeUndefined();
    expect(countProbesToSettle(weekly([20, 22]), ENDS)).toBeUndefined();
  });
});
