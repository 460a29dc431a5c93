import { median } from "../statistics/median";
import type { Day } from "../units";
import { normaliseName, type SeriesPoint } from "./series";

/** The median of a day's unsupported probes. */
export interface DailyValue {
  readonly day: Day;
  readonly value: number;
}

/** Points between two phase changes; the data path is broken at its edges. */
export interface PhaseStretch {
  /** "" where she named none */
  readonly name: string;
  readonly points: readonly SeriesPoint[];
  /** one value a day without the supported probes, oldest first: the data path */
  readonly daily: readonly DailyValue[];
}

/**
 * The stretches between phase changes, oldest first. A blank phase goes on with the one before it.
 *
 * @param points - in order of day
 */
export const splitPhases = (points: readonly SeriesPoint[]): readonly PhaseStretch[] => {
  const stretches: { name: string; points: SeriesPoint[] }[] = [];
  for (const point of points) {
    const name = (point.probe.phase ?? "").trim();
    const last = stretches.at(-1);
    if (last === undefined || (name !== "" && normaliseName(name) !== normaliseName(last.name))) {
      stretches.push({ name, points: [point] });
    } else last.points.push(point);
  }
  return stretches.map((stretch) => ({ ...stretch, daily: dailyMedians(stretch.points) }));
};

/**
 * One value a day, the median of that day's unsupported probes, oldest first.
 *
 * Source: three passages at one sitting are judged by their median (Deno 1985, from memory).
 */
const dailyMedians = (points: readonly SeriesPoint[]): readonly DailyValue[] =>
  medianByDay(
    points.filter((point) => !point.supported).map((point) => ({ day: point.probe.day, value: point.value })),
  );

/** One value a day, the median of that day's values, oldest first; a time of day is ignored. */
export const medianByDay = (values: readonly DailyValue[]): readonly DailyValue[] => {
  const days = new Map<number, number[]>();
  for (const { day, value } of values) {
    const whole = Math.floor(day);
    const sameDay = days.get(whole);
    if (sameDay === undefined) days.set(whole, [value]);
    else sameDay.push(value);
  }
  return [...days]
    .sort(([a], [b]) => a - b)
    .map(([day, sameDay]) => ({
      day: day as Day,
      value: sameDay.length === 1 ? (sameDay[0] ?? NaN) : median(sameDay),
    }));
};
