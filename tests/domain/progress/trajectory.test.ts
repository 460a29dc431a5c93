import { describe, expect, it } from "vitest";
import type { Goal } from "../../../src/domain/progress/goal";
import type { Probe } from "../../../src/domain/probe/probe";
import { buildSeries } from "../../../src/domain/progress/series";
import { buildTrajectory, type Trajectory } from "../../../src/domain/progress/trajectory";
import type { Day, Share } from "../../../src/domain/units";
import checks from "../../check-values/trend.json";
import { goalOf, probeOf, START, weeklyProbes } from "./probes";

const trajectoryOf = (probes: readonly Probe[], goals: readonly Goal[] = [goalOf()]): Trajectory => {
  const series = buildSeries(probes)[0];
  if (series === undefined) throw new Error("No series.");
  return buildTrajectory(series, goals);
};
const ON_AIM = [22, 25, 26, 28, 30, 32];

describe("phases", () => {
  const names = (phases: readonly (string | undefined)[]): string[] =>
    trajectoryOf(
      phases.map((phase, i) => probeOf({ day: START + i, rate: i, ...(phase !== undefined && { phase }) })),
    ).phases.map(({ name, points }) => `${name}×${points.length}`);

  it.each([
    { given: [undefined, undefined], expected: ["×2"], about: "none named" },
    { given: ["baseline", "baseline", "new"], expected: ["baseline×2", "new×1"], about: "named on each row" },
    {
      given: ["baseline", undefined, "new", undefined],
      expected: ["baseline×2", "new×2"],
      about: "named where they begin",
    },
    { given: [undefined, "new"], expected: ["×1", "new×1"], about: "the first left blank" },
    { given: ["A", "a ", "B"], expected: ["A×2", "B×1"], about: "in two spellings" },
    { given: ["A", "B", "A"], expected: ["A×1", "B×1", "A×1"], about: "gone back to" },
  ])("$about", ({ given, expected }) => expect(names(given)).toEqual(expected));

  it("have a data path of daily medians without supported probes", () => {
    const probes = [
      probeOf({ rate: 10 }),
      probeOf({ rate: 30 }),
      probeOf({ rate: 14 }),
      probeOf({ rate: 99, support: "verbal prompt" }),
      probeOf({ rate: 70, day: START + 7, support: "verbal prompt" }),
    ];
    expect(trajectoryOf(probes).phases[0]?.daily).toEqual([{ day: START, value: 14 }]);
  });
});

describe("a trajectory", () => {
  it("has aim line, trend, verdict and its explanation", () => {
    const trajectory = trajectoryOf(weeklyProbes(ON_AIM));
    expect(trajectory).toMatchObject({
      measureName: "words read correctly a minute",
      aimLine: { fromDay: START, fromValue: 20, toDay: START + 140, toValue: 60 },
      verdict: "on aim",
      trend: { points: 6 },
    });
    expect(trajectory.explanation[0]).toMatch(/^On aim: on 14 Oct 2026 the trend stands at /);
    expect(trajectory.explanation[0]).toContain("6 days since 2 Sep 2026");
  });

  it("draws the trend of the worked set, its band and its projection to the goal", () => {
    const probes = checks.weeks.x.map((week, i) =>
      probeOf({ day: START + 7 * week, rate: checks.weeks.y[i] ?? NaN }),
    );
    const { trend } = trajectoryOf(probes);
    expect(trend?.perWeek).toBeCloseTo(checks.weeks.slope, 10);
    expect(trend?.low).toBeCloseTo(checks.weeks.low95, 10);
    expect(trend?.high).toBeCloseTo(checks.weeks.high95, 10);
    expect(trend?.line.fromValue).toBeCloseTo(checks.weeks.intercept + 5 * checks.weeks.slope, 10);
    // interval by SciPy, as in the test of the verdict
    expect(trend?.band.at(-1)?.low).toBeCloseTo(30.875837857165788, 10);
    expect(trend?.band.at(-1)?.high).toBeCloseTo(33.85143487010695, 10);
    expect(trend?.projection).toMatchObject({ fromDay: START + 98, toDay: START + 140 });
    expect(trend?.projection?.toValue).toBeCloseTo(checks.weeks.intercept + 20 * checks.weeks.slope, 10);
  });

  it("judges from the last phase change", () => {
    const before = weeklyProbes([20, 19, 20, 21, 20, 19, 20], { phase: "baseline" });
    const after = [38, 40, 42, 44].map((rate, i) =>
      probeOf({ rate, phase: "new lists", day: START + 56 + 7 * i }),
    );
    const trajectory = trajectoryOf([...before, ...after]);
    expect(trajectory.verdict).toBe("too few points");
    expect(trajectory.trend).toBeUndefined();
    expect(trajectory.explanation[0]).toContain(
      "4 days with an unaided probe since 28 Oct 2026, the last change of phase",
    );
    expect(trajectory.explanation[0]).toContain("Probe on 2 more days");
  });

  it("takes no probe of the phase before that was made on the day of the change", () => {
    const day = START + 56;
    const before = [
      ...weeklyProbes([20, 21, 20], { phase: "baseline" }),
      probeOf({ day, rate: 5, phase: "baseline" }),
    ];
    const after = probeOf({ day, rate: 40, phase: "new", source: { sheet: "Probes", row: 99 } });
    expect(trajectoryOf([...before, after]).phases[1]?.daily).toEqual([{ day, value: 40 }]);
  });

  it("judges from the goal's start, where that is later than the phase change", () => {
    const old = [1, 2, 3, 4].map((rate, i) => probeOf({ rate, day: START - 70 + 7 * i }));
    const trajectory = trajectoryOf([...old, ...weeklyProbes(ON_AIM)]);
    expect(trajectory.judgement?.days).toBe(6);
    expect(trajectory.phases[0]?.points).toHaveLength(10);
  });

  it("leaves supported probes out of trend and verdict, and says so", () => {
    const supported = probeOf({ rate: 200, day: START + 43, support: "told the first letter" });
    const trajectory = trajectoryOf([...weeklyProbes(ON_AIM), supported]);
    expect(trajectory.trend).toEqual(trajectoryOf(weeklyProbes(ON_AIM)).trend);
    expect(trajectory.cautions).toContainEqual(expect.stringMatching(/^1 of 7 probes was done with support/));
  });

  it("without a goal says what to do and still has a trend", () => {
    const trajectory = trajectoryOf(weeklyProbes(ON_AIM), []);
    expect(trajectory.verdict).toBeUndefined();
    expect(trajectory.aimLine).toBeUndefined();
    expect(trajectory.trend?.points).toBe(6);
    expect(trajectory.explanation[0]).toContain("no goal is noted");
  });

  it("with a goal date that is not after the start refuses the verdict", () => {
    const trajectory = trajectoryOf(weeklyProbes(ON_AIM), [goalOf({ goalDay: START as Day })]);
    expect(trajectory.verdict).toBeUndefined();
    expect(trajectory.aimLine).toBeUndefined();
    expect(trajectory.explanation[0]).toContain("goal date must be after the start date");
  });

  it("has the criterion line of an accuracy", () => {
    const probes = [0.6, 0.7, 0.8].map((accuracy, i) =>
      probeOf({ accuracy: accuracy as Share, day: START + 7 * i }),
    );
    const goal = goalOf({
      measure: "accuracy",
      startScore: 0.5,
      goalScore: 0.9,
      criterion: "90 % on three days",
    });
    expect(trajectoryOf(probes, [goal]).criterion).toBe(0.9);
  });

  it.each([
    {
      about: "passages that differ",
      fields: (i: number) => ({ material: `Passage ${i}` }),
      caution: "6 different passages",
    },
    { about: "few days", fields: () => ({}), caution: "6 days as independent" },
  ])("cautions about $about", ({ fields, caution }) => {
    const probes = weeklyProbes(ON_AIM).map((probe, i) => ({ ...probe, ...fields(i) }));
    expect(trajectoryOf(probes).cautions.join(" ")).toContain(caution);
  });

  it("names the longest gap", () => {
    const cautions = trajectoryOf([probeOf({ rate: 1 }), probeOf({ rate: 2, day: START + 30 })]).cautions;
    expect(cautions).toContainEqual(expect.stringContaining("No probe from 2 Sep 2026 to 2 Oct 2026"));
  });

  it("adds the prompt of four in a row beside the verdict", () => {
    const { explanation, verdict } = trajectoryOf(weeklyProbes([24, 28, 24, 27, 29, 31]));
    expect(verdict).toBe("on aim");
    expect(explanation[1]).toContain("last four days are all on the worse side");
  });
});
