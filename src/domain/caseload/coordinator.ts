import { formatDay } from "../calendar";
import { formatValue } from "../progress/measure-words";
import type { CaseloadLine } from "./caseload";
import type { Minutes } from "./minutes";

/** Groups of fewer pupils than this are not counted in an export (shared page on keeping pupils safe). */
const LEAST_GROUP = 5;
export const SUPPRESSED = "fewer than 5";

/** How many pupils a group has, or that they are too few to say. */
export interface PupilGroup {
  readonly name: string;
  readonly pupils: number | typeof SUPPRESSED;
}

/**
 * Pupils counted by verdict, for a coordinator. A group under five is not counted; and where only one is not, the next
 * smallest is not either, or its number could be told from the others and the total.
 *
 * @returns groups in order of first appearance, and all pupils last
 */
export function countByVerdict(lines: readonly CaseloadLine[]): readonly PupilGroup[] {
  const counts = new Map<string, number>();
  for (const { verdict = "no verdict" } of lines) counts.set(verdict, (counts.get(verdict) ?? 0) + 1);
  const small = new Set([...counts].filter(([, count]) => count < LEAST_GROUP).map(([name]) => name));
  if (small.size === 1) {
    const [next] = [...counts].filter(([name]) => !small.has(name)).sort(([, a], [, b]) => a - b);
    if (next) small.add(next[0]);
  }
  const all = lines.length < LEAST_GROUP ? SUPPRESSED : lines.length;
  return [
    ...[...counts].map(([name, count]) => ({ name, pupils: small.has(name) ? SUPPRESSED : count }) as const),
    { name: "all pupils", pupils: all },
  ];
}

/** The headings of {@link tabulateCaseload}. */
export const COORDINATOR_HEADINGS = [
  "Pupil",
  "Teacher",
  "Goal",
  "Start",
  "Last value",
  "Target",
  "Due",
  "Verdict",
  "Probes in the period",
  "Minutes planned",
  "Minutes given",
  "Last probe",
] as const;

/**
 * A row a pupil for a coordinator: goal, start, where the pupil is now, target, verdict, minutes. Texts and numbers as
 * they are shown; nothing is averaged.
 *
 * @param periodFrom - the first day of the period, for its probes
 */
export const tabulateCaseload = (
  lines: readonly CaseloadLine[],
  periodFrom: number,
): readonly (readonly (string | number)[])[] =>
  lines.map((line) => {
    const { summary, verdict, period, lastProbe } = line;
    const goal = summary?.trajectory.goal;
    const key = summary?.trajectory.series.key;
    const shown = (value: number | undefined): string =>
      value === undefined || key === undefined ? "" : formatValue(value, key.measure);
    const points = summary?.trajectory.series.points ?? [];
    return [
      line.pupil,
      line.teacher ?? "",
      goal?.text ?? "",
      shown(goal?.startScore),
      shown(summary?.latest.value),
      shown(goal?.goalScore),
      goal ? formatDay(goal.goalDay) : "",
      verdict ?? "none",
      points.filter(({ probe }) => probe.day >= periodFrom).length,
      ...minutesOf(period),
      lastProbe === undefined ? "" : formatDay(lastProbe),
    ];
  });

const minutesOf = ({ planned, given }: Minutes): readonly (string | number)[] => [planned ?? "", given];
