import type { Goal } from "../../src/domain/progress/goal";
import type { Probe } from "../../src/domain/probe/probe";
import { buildSeries } from "../../src/domain/progress/series";
import { buildTrajectory, type Trajectory } from "../../src/domain/progress/trajectory";
import { normalDeviate, seededRandom } from "../../src/domain/seeded-random";
import type { Day, Share } from "../../src/domain/units";
import { goalOf, probeOf, START, weeklyProbes } from "../domain/progress/probes";

const firstSeries = (probes: readonly Probe[], goals: readonly Goal[]): Trajectory => {
  const series = buildSeries(probes)[0];
  if (series === undefined) throw new Error("No series.");
  return buildTrajectory(series, goals);
};

const scattered = (count: number, from: number, rise: number, scatter: number, seed: number): number[] => {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, i) => Math.max(0, Math.round(from + rise * i + scatter * normalDeviate(random))));
};
const share = (value: number): Share => Math.min(1, Math.max(0, value)) as Share;

/** Invented pupils whose graphs show each thing that a trajectory can show. */
export const TRAJECTORIES: Readonly<Record<string, Trajectory>> = {
  "one-phase": firstSeries(weeklyProbes(scattered(12, 22, 2, 2.5, 1)), [goalOf()]),
  "phase-change": firstSeries(
    [
      ...weeklyProbes(scattered(6, 20, 0.1, 2, 2), { phase: "Baseline" }),
      probeOf({ day: START + 38, rate: 31, phase: "Baseline", support: "first letter told" }),
      ...scattered(11, 24, 1, 2, 3).map((rate, i) => probeOf({ rate, day: START + 49 + 7 * i, phase: "Paired reading" })),
      probeOf({ day: START + 94, rate: 44, phase: "Paired reading", support: "first letter told" }),
    ],
    [goalOf()],
  ),
  accuracy: firstSeries(
    scattered(30, 62, 0.9, 6, 4).map((percent, i) =>
      probeOf({
        task: "signs named",
        unit: "signs",
        day: START + 7 * Math.floor(i / 3),
        accuracy: share(percent / 100),
        source: { sheet: "Probes", row: i + 2 },
      }),
    ),
    [goalOf({ measure: "accuracy", startScore: 55, goalScore: 95, goalDay: (START + 119) as Day, criterion: "90 %" })],
  ),
  "lower-is-better": firstSeries(
    scattered(9, 24, -1.5, 1.2, 5).map((score, i) =>
      probeOf({ task: "copied", unit: "errors", score, day: START + 7 * (i + 1) }),
    ),
    [goalOf({ measure: "score", startScore: 25, goalScore: 5 })],
  ),
  "few-points": firstSeries(
    [14, 17, 16].map((rate, i) => probeOf({ rate, day: START + 5 * i })),
    [],
  ),
  "two-years": firstSeries(
    [
      ...weeklyProbes(scattered(30, 18, 0.2, 3, 6), { phase: "Uncontracted lists" }),
      ...scattered(34, 26, 0.5, 3, 7).map((rate, i) =>
        probeOf({ rate, day: START + 245 + 7 * i, phase: "Alphabetic wordsigns" }),
      ),
      ...scattered(30, 40, 0.8, 3, 8).map((rate, i) =>
        probeOf({ rate, day: START + 483 + 7 * i, phase: "All contractions" }),
      ),
    ],
    [goalOf({ goalDay: (START + 720) as Day, goalScore: 70 })],
  ),
  maintenance: firstSeries(
    [
      ...weeklyProbes(scattered(8, 55, 4, 4, 9).map((n) => Math.min(98, n)), { phase: "Daily cards" }),
      ...[94, 91, 96].map((rate, i) =>
        probeOf({ rate, day: START + 56 + 14 + 28 * i, phase: "Maintenance", source: { sheet: "Probes", row: 20 + i } }),
      ),
    ],
    [],
  ),
  "with-zeros": firstSeries(
    weeklyProbes([0, 0, 1, 2, 2, 4, 3, 6, 9, 8, 13, 17]),
    [goalOf({ startScore: 1, goalScore: 30 })],
  ),
};
