import { formatDay } from "../calendar";
import type { Minutes } from "../caseload/minutes";
import type { Probe } from "../probe/probe";
import { median } from "../statistics/median";
import type { Day } from "../units";
import type { Goal } from "./goal";
import type { CellSource } from "./measure";
import { describeAbility, describeValue, FAMILY_VERDICTS, joinNames, REPORT_CAUTIONS } from "./report-words";
import { buildSeries, normaliseName, type Series } from "./series";
import type { SignStanding } from "./sign-states";
import { buildTrajectory, type Trajectory } from "./trajectory";
import { GOAL_DAYS } from "./verdict";
import { WAYS, type Way } from "./way";

/** What a report is made from: the records of one pupil. */
export interface ReportSource {
  readonly pupil: string;
  /** first and last day of the period */
  readonly from: Day;
  readonly to: Day;
  readonly probes: readonly Probe[];
  readonly goals: readonly Goal[];
  /** how far each sign is on the last day */
  readonly standings: readonly SignStanding[];
  readonly minutes: Minutes;
  /** the teacher's own sentences; "" for none */
  readonly own: string;
  readonly cells?: CellSource;
}

/** A heading with sentences, or with a goal as it is written. */
export interface ReportSection {
  readonly heading: string;
  readonly sentences: readonly string[];
}

/** A report for a family and a pupil's team: sections in the order in which they are read, and what its chart shows. */
export interface Report {
  readonly title: string;
  /** `7 Sep 2026 to 25 Nov 2026` */
  readonly period: string;
  readonly sections: readonly ReportSection[];
  /** probes of the period with the aim line, without trend and interval; absent where there is none */
  readonly chart?: Trajectory;
}

/** Goals told of on one page: our choice, no source. */
const MOST_GOALS = 3;
/** Signs named in a row: our choice, no source. */
const MOST_SIGNS = 12;
/** The days of a period whose reports begin without a goal: ten weeks, our choice, no source. */
const USUAL_PERIOD = 70;

/** The first day of a report: the start of the goal under way that began last, or ten weeks back. */
export const usualStart = (goals: readonly Goal[], to: Day): Day => {
  const started = goals.filter(({ startDay, goalDay }) => startDay < to && goalDay >= to);
  return (
    started.length === 0 ? to - USUAL_PERIOD : Math.max(...started.map(({ startDay }) => startDay))
  ) as Day;
};

/**
 * A report of one pupil: what the pupil can do first, each goal as written with its start, where it stands and the
 * verdict in plain words, signs mastered in the period, minutes, what is next, the teacher's own sentences, cautions.
 * Records of other pupils are left out, and so are days after the period.
 */
export const buildReport = (source: ReportSource): Report => {
  const { pupil, from, to, goals, cells } = source;
  const own = source.probes.filter(
    (probe) => normaliseName(probe.pupil) === normaliseName(pupil) && Math.floor(probe.day) <= to,
  );
  const told = chooseTrajectories(buildSeries(own, cells), goals);
  const [first] = told;
  const chart = first && chartOf(first.series, goals, from);
  const sections: readonly ReportSection[] = [
    { heading: `What ${pupil} can do`, sentences: tellAbilities(told, source) },
    ...told.flatMap((trajectory) => tellGoal(trajectory, told.length)),
    { heading: `Signs mastered since ${formatDay(from)}`, sentences: tellMastered(source) },
    { heading: "Lessons", sentences: tellMinutes(source.minutes) },
    { heading: "What is next", sentences: tellNext(source, told) },
    { heading: "From the teacher", sentences: source.own.trim() === "" ? [] : [source.own.trim()] },
    { heading: "Please keep in mind", sentences: REPORT_CAUTIONS },
  ];
  return {
    title: `Progress report: ${pupil}`,
    period: `${formatDay(from)} to ${formatDay(to)}`,
    sections: sections.filter(({ sentences }) => sentences.length > 0),
    ...(chart && { chart }),
  };
};

/** Those with a goal, each goal once, the one probed most first; or the one series probed most. */
const chooseTrajectories = (series: readonly Series[], goals: readonly Goal[]): readonly Trajectory[] => {
  const all = series
    .map((each) => buildTrajectory(each, goals))
    .sort((one, other) => other.series.points.length - one.series.points.length);
  const byGoal = new Map<string, Trajectory>();
  for (const trajectory of all) {
    const { goal } = trajectory;
    if (goal === undefined) continue;
    const key = [goal.text, goal.startDay, goal.goalDay, goal.goalScore].join("\n");
    if (!byGoal.has(key)) byGoal.set(key, trajectory);
  }
  return byGoal.size > 0 ? [...byGoal.values()].slice(0, MOST_GOALS) : all.slice(0, 1);
};

const chartOf = ({ key, points }: Series, goals: readonly Goal[], from: Day): Trajectory | undefined => {
  const within = points.filter(({ probe }) => probe.day >= from);
  if (within.length === 0) return undefined;
  const { series, phases, measureName, goal, aimLine } = buildTrajectory({ key, points: within }, goals);
  return {
    ...{ series, phases, measureName, explanation: [], outlook: [], cautions: [] },
    ...(goal && { goal }),
    ...(aimLine && { aimLine }),
  };
};

/** The middle value of the last days, as the verdict takes it. */
const levelOf = ({ phases }: Trajectory): number | undefined => {
  const last = phases.flatMap(({ daily }) => daily).slice(-GOAL_DAYS);
  return last.length === 0 ? undefined : median(last.map(({ value }) => value));
};

const tellAbilities = (
  told: readonly Trajectory[],
  { pupil, standings }: ReportSource,
): readonly string[] => {
  const levels = told.flatMap((trajectory) => {
    const level = levelOf(trajectory);
    return level === undefined ? [] : [describeAbility(level, trajectory.series.key)];
  });
  const counts = WAYS.map((way) => [countMastered(standings, way), way] as const).filter(
    ([count]) => count > 0,
  );
  const mastered =
    counts.length === 0
      ? []
      : [
          `${pupil} has mastered ${counts.map(([count, way]) => `${count} ${count === 1 ? "sign" : "signs"} in ${way}`).join(" and ")}.`,
        ];
  const sentences = [...levels, ...mastered];
  return sentences.length > 0 ? sentences : ["No result is written down yet for this period."];
};

const countMastered = (standings: readonly SignStanding[], way: Way): number =>
  standings.filter((standing) => standing[way].state === "mastered").length;

const tellGoal = (trajectory: Trajectory, goals: number): readonly ReportSection[] => {
  const { goal, verdict, series } = trajectory;
  if (goal === undefined)
    return [{ heading: "The goal", sentences: ["No goal is written down for this yet."] }];
  const { key } = series;
  const text = goal.text?.trim() ?? "";
  const level = levelOf(trajectory);
  return [
    {
      heading: goals === 1 ? "The goal" : `A goal: ${key.task.trim() || trajectory.measureName}`,
      sentences: [
        text === ""
          ? `To reach ${describeValue(goal.goalScore, key)} by ${formatDay(goal.goalDay)}.`
          : `As it is written: “${text}”`,
        `At the start, on ${formatDay(goal.startDay)}: ${describeValue(goal.startScore, key)}.`,
        ...(level === undefined
          ? []
          : [`Now: ${describeValue(level, key)}, the middle value of the last days.`]),
        `The goal for ${formatDay(goal.goalDay)}: ${describeValue(goal.goalScore, key)}.`,
        ...(verdict === undefined ? [] : [FAMILY_VERDICTS[verdict]]),
      ],
    },
  ];
};

const nameSigns = (standings: readonly SignStanding[]): string => {
  const names = standings.slice(0, MOST_SIGNS).map(({ sign }) => sign.name);
  const more = standings.length - names.length;
  return joinNames([...names, ...(more > 0 ? [`${more} more`] : [])]);
};

const tellMastered = ({ standings, from, to }: ReportSource): readonly string[] =>
  WAYS.flatMap((way) => {
    const mastered = standings.filter((standing) => {
      const { masteredOn } = standing[way];
      return masteredOn !== undefined && masteredOn >= from && masteredOn <= to;
    });
    return mastered.length === 0 ? [] : [`In ${way}: ${nameSigns(mastered)}.`];
  });

const tellMinutes = ({ planned, given }: Minutes): readonly string[] => {
  if (planned === undefined) return given > 0 ? [`${given} minutes of lessons were given.`] : [];
  return [`${planned} minutes of lessons were planned, and ${given} were given.`];
};

const tellNext = ({ standings, from, to }: ReportSource, told: readonly Trajectory[]): readonly string[] => {
  const either = (states: readonly string[]): readonly SignStanding[] =>
    standings.filter(
      ({ reading, writing }) => states.includes(reading.state) || states.includes(writing.state),
    );
  const again = either(["check again"]);
  const growing = either(["growing"]).filter((standing) => !again.includes(standing));
  const fresh = standings.filter(
    ({ taught, reading, writing }) =>
      taught !== undefined &&
      taught !== "earlier" &&
      taught >= from &&
      reading.state === "taught" &&
      writing.state === "taught",
  );
  const ends = told.flatMap(({ goal }) => (goal !== undefined && goal.goalDay > to ? [goal.goalDay] : []));
  return [
    ...(growing.length > 0 ? [`More practice with ${nameSigns(growing)}.`] : []),
    ...(again.length > 0 ? [`A short check whether these are still known: ${nameSigns(again)}.`] : []),
    ...(fresh.length > 0 ? [`First steps with ${nameSigns(fresh)}.`] : []),
    ...(ends.length > 0
      ? [`Short checks go on until the day of the goal, ${formatDay(Math.min(...ends) as Day)}.`]
      : []),
  ];
};

/** A report as text: its title, the period, each heading over its sentences. */
export const formatReport = ({ title, period, sections }: Report): string =>
  [title, period, ...sections.flatMap(({ heading, sentences }) => ["", heading, ...sentences])].join("\n");

/** Pupils of the caseload whose names stand in a text that is about another one. */
export const findOtherPupils = (
  text: string,
  pupils: readonly string[],
  pupil: string,
): readonly string[] => {
  const words = ` ${normaliseName(text)
    .split(/[^\p{L}\p{N}]+/u)
    .join(" ")} `;
  return pupils.filter(
    (other) =>
      normaliseName(other) !== normaliseName(pupil) &&
      words.includes(
        ` ${normaliseName(other)
          .split(/[^\p{L}\p{N}]+/u)
          .join(" ")} `,
      ),
  );
};
