import { formatDay } from "../calendar";
import { explainTrend } from "../progress/explanation";
import type { Goal } from "../progress/goal";
import { formatWithUnit } from "../progress/measure-words";
import { describeSeries, type Series, type SeriesPoint } from "../progress/series";
import { buildTrajectory, type Trajectory } from "../progress/trajectory";

/** Where one pupil stands: the series that the plan's goal is about, or else the one probed most. */
export interface PupilSummary {
  readonly pupil: string;
  readonly trajectory: Trajectory;
  /** the last unaided probe, or the last of all where every one was supported */
  readonly latest: SeriesPoint;
}

/**
 * The summary of one pupil: of the series the one with a goal comes first, then the one with more points, then the
 * earlier one.
 *
 * @param series - all of this pupil's
 * @returns undefined where there is none
 */
export const summariseSeries = (
  series: readonly Series[],
  goals: readonly Goal[],
): PupilSummary | undefined => {
  const [chosen] = series
    .map((each) => buildTrajectory(each, goals))
    .sort(
      (a, b) =>
        Number(b.goal !== undefined) - Number(a.goal !== undefined) ||
        b.series.points.length - a.series.points.length,
    );
  const points = chosen?.series.points ?? [];
  const latest = points.findLast(({ supported }) => !supported) ?? points.at(-1);
  return chosen === undefined || latest === undefined
    ? undefined
    : { pupil: chosen.series.key.pupil, trajectory: chosen, latest };
};

/** A pupil's summary as one line: pupil and series, latest value with its day, trend, verdict. */
export const formatSummary = ({ pupil, trajectory, latest }: PupilSummary): string => {
  const { key } = trajectory.series;
  const trend =
    trajectory.trend === undefined
      ? "No trend yet: fewer than six days."
      : explainTrend(trajectory.trend, key);
  return (
    `${pupil} (${describeSeries(key)}): ${formatWithUnit(latest.value, key)} on ${formatDay(latest.probe.day)}. ` +
    `${trend} Verdict: ${trajectory.verdict ?? "none, for want of a goal"}.`
  );
};
