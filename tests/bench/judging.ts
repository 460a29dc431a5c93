/** How fast a caseload of rates is judged: series, one verdict and one trend each; and what memory that takes. */
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { buildSeries, type Series } from "../../src/domain/progress/series";
import { computeTrend } from "../../src/domain/progress/trend";
import { judgeProgress } from "../../src/domain/progress/verdict";
import type { Probe } from "../../src/domain/probe/probe";
import { normalDeviate, seededRandom } from "../../src/domain/seeded-random";
import type { Day, PerMinute } from "../../src/domain/units";
import type { BenchFigure } from "./figure";

const SEED = 20_261_125;
const PROBES = 100_000;
const PUPILS = 400;
const RUNS = 5;
const MOST = 2;
const START = 46_000;
const ENDS = { startDay: START, startScore: 20, goalDay: START + 1000, goalScore: 120 };
const AGAINST = "nothing: no other program judges by this rule";

/** Measures series, verdict and trend of 100,000 probes, and how its time and memory grow from 50,000. */
export default function run(): BenchFigure[] {
  const half = measure(PROBES / 2, PUPILS / 2);
  const full = measure(PROBES, PUPILS);
  const growth = full.bytes / half.bytes;
  const name = `judging: ${PROBES} probes of ${PUPILS} pupils given as rates (seed ${SEED})`;
  return [
    {
      name: `${name}, a verdict and a trend a series, median of ${RUNS}`,
      value: Number((full.milliseconds / 1000).toPrecision(3)),
      unit: "s",
      against: AGAINST,
      ratio: null,
      goal: `under ${MOST} s`,
      met: full.milliseconds < MOST * 1000,
    },
    {
      name: `${name}, memory kept, as a multiple of that for half as many`,
      value: Number(growth.toPrecision(3)),
      unit: "times",
      against: `${(half.bytes / 1e6).toPrecision(3)} MB for half, ${(full.bytes / 1e6).toPrecision(3)} MB for all`,
      ratio: null,
      goal: "under 2.2 times (linear)",
      met: growth < 2.2,
    },
  ];
}

/** Rates about a slow growth, every second or third day, pupil after pupil. */
const makeProbes = (count: number, pupils: number): Probe[] => {
  const random = seededRandom(SEED);
  const each = count / pupils;
  return Array.from({ length: count }, (_, i): Probe => {
    const place = Math.floor(i / pupils);
    return {
      pupil: `Pupil ${i % pupils}`,
      day: (START + Math.floor((place * 900) / each)) as Day,
      task: "read aloud",
      unit: "words",
      code: "contracted",
      medium: "braille",
      rate: Math.max(0, 20 + (60 * place) / each + 8 * normalDeviate(random)) as PerMinute,
      source: { sheet: "Probes", row: i + 2 },
    };
  });
};

const judge = (series: readonly Series[]): readonly unknown[] =>
  series.map(({ points }) => {
    const values = points.map(({ probe, value }) => ({ day: probe.day, value }));
    const verdict = judgeProgress(values, ENDS);
    const trend = computeTrend(
      values.map(({ day }) => day),
      values.map(({ value }) => value),
    );
    if (!verdict.ok || !trend.ok) throw new Error("Every series of the benchmark can be judged.");
    return [verdict.value, trend.value];
  });

setFlagsFromString("--expose-gc");
const collectGarbage = runInNewContext("gc") as () => void;

/** Keeps alive what is measured until it is. */
const held: unknown[] = [];

const measure = (
  count: number,
  pupils: number,
): { readonly milliseconds: number; readonly bytes: number } => {
  const probes = makeProbes(count, pupils);
  const bytes = measureMemory(probes);
  const taken: number[] = [];
  for (let index = 0; index < RUNS; index += 1) {
    const start = performance.now();
    judge(buildSeries(probes));
    taken.push(performance.now() - start);
  }
  const middle = taken.sort((one, other) => one - other)[RUNS >> 1] ?? Number.NaN;
  return { milliseconds: middle, bytes };
};

/** Before the timed runs: what a stack frame still holds of them would count as in use already. */
const measureMemory = (probes: readonly Probe[]): number => {
  const before = memoryInUse();
  const series = buildSeries(probes);
  held.push(probes, series, judge(series));
  const bytes = memoryInUse() - before;
  held.length = 0;
  return bytes;
};

/** Bytes of objects in use after everything that can go is gone. */
const memoryInUse = (): number => {
  for (let index = 0; index < 3; index += 1) collectGarbage();
  return process.memoryUsage().heapUsed;
};
