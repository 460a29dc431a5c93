import { describe, expect, it } from "vitest";
import type { Probe } from "../../../src/domain/probe/probe";
import type { Goal } from "../../../src/domain/progress/goal";
import { buildSeries } from "../../../src/domain/progress/series";
import { buildTrajectory } from "../../../src/domain/progress/trajectory";
import { goalOf, probeOf, START, weeklyProbes } from "./probes";

const outlookOf = (probes: readonly Probe[], goals: readonly Goal[] = [goalOf()]): readonly string[] => {
  const series = buildSeries(probes)[0];
  if (series === undefined) throw new Error("There is no series.");
  return buildTrajectory(series, goals).outlook;
};
/** Sentences break between a number and its unit nowhere. */
const plain = (sentences: readonly string[]): readonly string[] =>
  sentences.map((sentence) => sentence.replaceAll("\u00A0", " "));

describe("the outlook of a trajectory", () => {
  it("says when the trend reaches the goal, from when to when, and on how many days that rests", () => {
    // On the line from 22 by 1.8 a week, 60 is reached 38/1.8 weeks after the first probe: 147.8 days.
    const outlook = plain(outlookOf(weeklyProbes([22, 24, 25, 28, 29, 31])));
    expect(outlook).toHaveLength(1);
    expect(outlook[0]).toMatch(
      /^If the trend goes on, it reaches 60 about \d+ Feb 2027: 95 % interval \d+ \w+ 202\d to \d+ \w+ 2027, based on 6 days\.$/,
    );
  });

  it("names how many more probes settle an unclear verdict, and no date where the trend may be level", () => {
    const outlook = outlookOf(weeklyProbes([29, 15, 33, 21, 37, 24]));
    expect(outlook).toHaveLength(1);
    expect(outlook[0]).toMatch(
      /^About \d+ more weekly probes would settle the verdict, if they scatter as before/,
    );
  });

  it("sets each phase beside the one before it, as what came after", () => {
    // ln(27/21) corrected is .25116, its error .03483: 28.6 %, 20.1 % to 37.6 % (by hand).
    const rows = [20, 22, 21, 26, 28, 27].map((rate, i) =>
      probeOf({ rate, day: START + 7 * i, phase: i < 3 ? "Baseline" : "Paired reading" }),
    );
    expect(plain(outlookOf(rows, []))).toEqual([
      "“Paired reading” after “Baseline”: the median went from 21 words a minute (20 to 22, 3 days) to 27 words a " +
        "minute (26 to 28, 3 days). 100 % of the pairs of a day before and a day after are better (NAP 1.00, 95 % " +
        "interval 0.50 to 1.00); the mean changed by +29 %, 95 % interval +20 to +38 %. This is the change after, not " +
        "because of, the new phase.",
    ]);
  });

  it("leaves out a percentage that there is not, and counts down as better where the goal is lower", () => {
    const rows = [4, 0, 0].map((score, i) =>
      probeOf({ score, day: START + 7 * i, phase: i < 1 ? "Baseline" : "Cards", unit: "errors" }),
    );
    const goals = [goalOf({ measure: "score", startScore: 5, goalScore: 1 })];
    const [sentence = ""] = plain(outlookOf(rows, goals));
    expect(sentence).toContain("100 % of the pairs");
    expect(sentence).not.toContain("mean changed");
  });

  it("has nothing to say of few points in one phase, or without a goal", () => {
    expect(outlookOf(weeklyProbes([22, 24]))).toEqual([]);
    expect(outlookOf(weeklyProbes([22, 24, 25, 28, 29, 31]), [])).toEqual([]);
  });
});
