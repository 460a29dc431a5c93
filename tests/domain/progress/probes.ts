import type { Goal } from "../../../src/domain/progress/goal";
import type { Probe } from "../../../src/domain/probe/probe";
import type { Day, PerMinute } from "../../../src/domain/units";

/** 2 September 2026, a Wednesday. */
export const START = 46_267;

type ProbeFields = Omit<Partial<Probe>, "day" | "rate"> & { readonly day?: number; readonly rate?: number };

/** A probe of Heron for tests: read aloud, contracted, on the day given. */
export const probeOf = ({ day = START, rate, ...fields }: ProbeFields): Probe => ({
  pupil: "Heron",
  task: "read aloud",
  unit: "words",
  code: "contracted",
  medium: "braille",
  source: { sheet: "Probes", row: day - START + 2 },
  ...fields,
  day: day as Day,
  ...(rate !== undefined && { rate: rate as PerMinute }),
});

/** Weekly probes with these rates, the first a week after the start. */
export const weeklyProbes = (rates: readonly number[], fields: ProbeFields = {}): Probe[] =>
  rates.map((rate, week) => probeOf({ ...fields, rate, day: START + 7 * (week + 1) }));

/** From 20 words a minute to 60 in twenty weeks. */
export const goalOf = (fields: Partial<Goal> = {}): Goal => ({
  pupil: "Heron",
  measure: "rate",
  startDay: START as Day,
  startScore: 20,
  goalDay: (START + 140) as Day,
  goalScore: 60,
  ...fields,
});
