import type { TaughtSign } from "../contraction/taught-sign";
import type { Probe } from "../probe/probe";
import type { Goal } from "../progress/goal";
import { findGoal } from "../progress/goal-match";
import type { CellSource } from "../progress/measure";
import { medianByDay, type DailyValue } from "../progress/phases";
import { buildSeries, normaliseName, type Series } from "../progress/series";
import type { Verdict } from "../progress/verdict";
import type { Day } from "../units";
import { findWrittenChecks, type DueSign } from "./written-checks";
import type { Lesson } from "./lesson";
import { sumMinutes, type Minutes } from "./minutes";
import { findNeeds, NEEDS, type Need } from "./need";
import type { Pupil } from "./pupil";
import { summariseSeries, type PupilSummary } from "./summary";
import { DAYS_A_WEEK, mondayOf } from "./week";

/** The records that a caseload is made of: those of the workbook. */
export interface CaseloadRecords {
  readonly probes: readonly Probe[];
  readonly goals: readonly Goal[];
  readonly taught: readonly TaughtSign[];
  readonly pupils: readonly Pupil[];
  readonly lessons: readonly Lesson[];
}

/** Days after a probe at which the next one for a goal is due: our choice, no source. */
const PROBE_EVERY = 7;
/** Daily values that the small chart shows. */
const SPARK_DAYS = 12;
/** Length of the period where none is given, in days: a term's twelve weeks (our choice, no source). */
const PERIOD_DAYS = 84;

/** The first day of the period that ends on a day, where none is given. */
export const periodUpTo = (asOf: Day): Day => (asOf - PERIOD_DAYS) as Day;

/** Where one pupil stands on a day: one line of the caseload. */
export interface CaseloadLine {
  /** as first written */
  readonly pupil: string;
  readonly teacher?: string;
  readonly code?: string;
  /** the main series, its goal and verdict; absent where no probe can be read */
  readonly summary?: PupilSummary;
  readonly verdict?: Verdict;
  /** last probe of any kind up to the day, with the days since */
  readonly lastProbe?: Day;
  readonly daysSince?: number;
  /** medians by day of the main series, unaided probes alone, oldest first: for a small chart */
  readonly spark: readonly DailyValue[];
  /** signs due for a check, the longest waiting first */
  readonly checksDue: readonly DueSign[];
  /** goals, not over, without a probe in the last seven days */
  readonly probesDue: readonly Goal[];
  readonly week: Minutes;
  readonly period: Minutes;
  /** most pressing first; none where all is well */
  readonly needs: readonly Need[];
}

/** How a caseload is looked at. */
export interface CaseloadOptions {
  /** first day of the period of minutes; twelve weeks back unless given */
  readonly periodFrom?: Day;
  /** how to count a passage's cells */
  readonly cells?: CellSource;
  /** the signs of a pupil due for a check, where they are known from the records; else the written days count */
  readonly checksOf?: (pupil: string) => readonly DueSign[] | undefined;
}

/** Records by pupil, whatever the spelling of the name. */
const byPupil = <T extends { readonly pupil: string }>(records: readonly T[]): ReadonlyMap<string, T[]> => {
  const groups = new Map<string, T[]>();
  for (const record of records) {
    const name = normaliseName(record.pupil);
    const group = groups.get(name);
    if (group) group.push(record);
    else groups.set(name, [record]);
  }
  groups.delete("");
  return groups;
};

const lastDayOf = (series: readonly Series[]): Day | undefined => {
  const days = series.flatMap(({ points }) => points.at(-1)?.probe.day ?? []);
  return days.length === 0 ? undefined : (Math.max(...days) as Day);
};

/** Goals under way for which no probe of their own series was done in the last seven days. */
const findProbesDue = (goals: readonly Goal[], series: readonly Series[], asOf: Day): readonly Goal[] =>
  goals.filter((goal) => {
    if (goal.startDay > asOf || goal.goalDay < asOf) return false;
    const last = lastDayOf(series.filter(({ key }) => findGoal(key, [goal], asOf) !== undefined));
    return last === undefined || asOf - last >= PROBE_EVERY;
  });

const rankOf = ({ needs }: CaseloadLine): number => (needs[0] ? NEEDS.indexOf(needs[0].kind) : NEEDS.length);

/** The most pressing need first; then more needs, then the longer wait for a probe, then the name. */
const compareLines = (a: CaseloadLine, b: CaseloadLine): number =>
  rankOf(a) - rankOf(b) ||
  b.needs.length - a.needs.length ||
  (b.daysSince ?? Infinity) - (a.daysSince ?? Infinity) ||
  (normaliseName(a.pupil) < normaliseName(b.pupil) ? -1 : 1);

/**
 * One line a pupil, the one who needs most first ({@link NEEDS}). Pupils are those of any record; what lies after the day
 * is not looked at. Nothing is averaged across pupils.
 *
 * @param asOf - the day that the caseload is looked at on
 */
export function buildCaseload(
  records: CaseloadRecords,
  asOf: Day,
  { periodFrom = periodUpTo(asOf), cells, checksOf }: CaseloadOptions = {},
): readonly CaseloadLine[] {
  const probes = byPupil(records.probes.filter(({ day }) => day <= asOf));
  const goals = byPupil(records.goals);
  const taught = byPupil(records.taught);
  const pupils = byPupil(records.pupils);
  const lessons = byPupil(records.lessons);
  const names = new Map<string, string>();
  for (const group of [pupils, probes, goals, taught, lessons])
    for (const [name, [first]] of group) if (first && !names.has(name)) names.set(name, first.pupil.trim());
  return [...names]
    .map(([name, pupil]): CaseloadLine => {
      const series = buildSeries(probes.get(name) ?? [], cells);
      const ownGoals = goals.get(name) ?? [];
      const summary = summariseSeries(series, ownGoals);
      const about = pupils.get(name)?.[0];
      const lastProbe = lastDayOf(series);
      const verdict = summary?.trajectory.verdict;
      const checksDue = checksOf?.(pupil) ?? findWrittenChecks(taught.get(name) ?? [], asOf);
      const probesDue = findProbesDue(ownGoals, series, asOf);
      const ownLessons = lessons.get(name) ?? [];
      const minutes = (from: Day): Minutes => sumMinutes(ownLessons, about?.minutesPlanned, from, asOf);
      const period = minutes(periodFrom);
      const unaided = (summary?.trajectory.series.points ?? []).flatMap(({ probe, value, supported }) =>
        supported ? [] : [{ day: probe.day, value }],
      );
      return {
        pupil,
        ...(about?.teacher === undefined ? {} : { teacher: about.teacher }),
        ...(about?.code === undefined ? {} : { code: about.code }),
        ...(summary && { summary }),
        ...(verdict && { verdict }),
        ...(lastProbe === undefined
          ? {}
          : { lastProbe, daysSince: Math.floor(asOf) - Math.floor(lastProbe) }),
        spark: medianByDay(unaided).slice(-SPARK_DAYS),
        checksDue,
        probesDue,
        week: weekOf(ownLessons, about?.minutesPlanned, asOf),
        period,
        needs: findNeeds({
          asOf,
          lastProbe,
          verdict,
          goal: summary?.trajectory.goal ?? ownGoals[0],
          checksDue,
          probesDue,
          period,
        }),
      };
    })
    .sort(compareLines);
}

/** Minutes of the week of a day: what is planned for a week is planned for this one, lessons noted or not. */
const weekOf = (lessons: readonly Lesson[], planned: number | undefined, asOf: Day): Minutes => {
  const monday = mondayOf(asOf);
  const { given } = sumMinutes(lessons, undefined, monday, (monday + DAYS_A_WEEK - 1) as Day);
  return { ...(planned === undefined ? {} : { planned }), given };
};
