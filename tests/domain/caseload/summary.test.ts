import { describe, expect, it } from "vitest";
import { formatSummary, summariseSeries, type PupilSummary } from "../../../src/domain/caseload/summary";
import type { Probe } from "../../../src/domain/probe/probe";
import type { Goal } from "../../../src/domain/progress/goal";
import { buildSeries } from "../../../src/domain/progress/series";
import type { Day, Seconds } from "../../../src/domain/units";

const START = 46_132;
const probe = (pupil: string, week: number, rate: number, more: Partial<Probe> = {}): Probe => ({
  pupil,
  day: (START + 7 * week) as Day,
  task: "read aloud",
  words: rate,
  errors: 0,
  seconds: 60 as Seconds,
  source: { sheet: "Progress", row: week + 2 },
  ...more,
});

const goal = (pupil: string): Goal => ({
  pupil,
  measure: "rate",
  startDay: START as Day,
  startScore: 20,
  goalDay: (START + 140) as Day,
  goalScore: 40,
});

const weeks = Array.from({ length: 10 }, (_, week) => week);

const summarise = (probes: readonly Probe[], goals: readonly Goal[]): PupilSummary | undefined =>
  summariseSeries(buildSeries(probes), goals);

describe("summary of a pupil", () => {
  it("speaks of the series with a goal, though another has more probes", () => {
    const probes = [
      ...weeks.map((week) => probe("Heron", week, 20 + week)),
      ...weeks.flatMap((week) => [
        probe("Heron", week, 5, { task: "copied" }),
        probe("Heron", week, 6, { task: "copied" }),
      ]),
    ];
    const summary = summarise(probes, [{ ...goal("Heron"), task: "read aloud" }]);
    expect(summary?.trajectory.series.key.task).toBe("read aloud");
    expect(summary?.trajectory.verdict).toBe("on aim");
  });

  it("gives the last unaided probe as the latest", () => {
    const probes = [probe("Heron", 0, 20), probe("Heron", 1, 50, { support: "finger guided" })];
    expect(summarise(probes, [])?.latest.value).toBe(20);
  });

  it("says latest value, trend and verdict in one line", () => {
    const summary = summarise(
      weeks.map((week) => probe("Heron", week, 20 + week)),
      [goal("Heron")],
    );
    if (summary === undefined) throw new Error("no summary");
    const line = formatSummary(summary);
    expect(line).toContain("29 words a minute");
    expect(line).toContain("up 1 word a minute each week");
    expect(line).toContain("Verdict: on aim.");
    expect(line).not.toContain("\n");
  });

  it("says what is missing where there is no goal and no trend", () => {
    const summary = summarise([probe("Heron", 0, 20)], []);
    if (summary === undefined) throw new Error("no summary");
    expect(formatSummary(summary)).toMatch(/No trend yet.*Verdict: none, for want of a goal\.$/);
  });
});
