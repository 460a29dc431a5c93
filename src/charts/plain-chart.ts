import { dateOf, shortMonth } from "../domain/calendar";
import { isMaintenanceCheck } from "../domain/probe/maintenance-check";
import { formatNumber, formatValue } from "../domain/progress/measure-words";
import type { Trajectory } from "../domain/progress/trajectory";
import type { Day } from "../domain/units";
import { roundTicks } from "./axis-scale";
import { calendarTicks } from "./calendar-ticks";
import {
  coursesOf,
  countMastered,
  listEvents,
  poolKnown,
  spanOfMastery,
  WAYS,
  type Mastery,
} from "./mastery-course";
import { isOfOneSign, titleOfMastery } from "./mastery-text";
import { spanOfDays, spanOfValues } from "./trajectory-frame";
import { titleOf } from "./trajectory-text";

/** A value on a day. */
export interface PlainPoint {
  readonly day: Day;
  readonly value: number;
  readonly isCheck?: boolean;
}

/** Values that belong together, in stretches between which the path is broken. */
export interface PlainPath {
  readonly name: string;
  readonly stretches: readonly (readonly PlainPoint[])[];
  /** a value holds until the next one: drawn level, then straight up or down */
  readonly isStepped?: boolean;
}

/**
 * A chart reduced to what ear and hand take in one after another: paths of data, a few lines to hold them against, and
 * days on which something changed. What sounds, what is embossed and what goes into the sheet is made of this.
 */
export interface PlainChart {
  readonly title: string;
  readonly yTitle: string;
  /** a value as it is said and written: `42.5`, `90 %` */
  readonly formatValue: (value: number) => string;
  /** a tick without its unit, which {@link yTitle} names: every cell counts under the fingers */
  readonly formatTick: (value: number) => string;
  /** of the vertical axis, lowest first, its ends among them; the last ones lie beyond every value */
  readonly yTicks: readonly number[];
  readonly days: readonly [number, number];
  /** the first is the one that matters most */
  readonly paths: readonly PlainPath[];
  /** straight from point to point, such as the aim */
  readonly lines: readonly { readonly name: string; readonly points: readonly PlainPoint[] }[];
  readonly events: readonly { readonly name: string; readonly day: Day }[];
  /** what the picture shows and this does not, as a sentence; absent where that is nothing */
  readonly leftOut?: string;
}

const TICKS = 5;

const NO_TREND = "The trend and its interval are left out: the sentences beneath the picture give them.";
const NO_BAND = "The intervals are left out: the sentences beneath the picture give them.";

/** A trajectory's daily medians, aim line, criterion and phase changes. Supported probes are left out. */
export const plainTrajectory = (trajectory: Trajectory): PlainChart => {
  const { series, phases, aimLine, criterion, measureName } = trajectory;
  const { measure } = series.key;
  const checks = new Set(
    series.points.filter(({ probe }) => isMaintenanceCheck(probe)).map(({ probe }) => Math.floor(probe.day)),
  );
  const days = spanOfDays([trajectory]);
  const level = (value: number): readonly PlainPoint[] => days.map((day) => ({ day: day as Day, value }));
  return {
    title: titleOf(trajectory),
    yTitle: measureName,
    formatValue: (value) => formatValue(value, measure),
    formatTick: (value) => formatNumber(measure === "accuracy" ? 100 * value : value),
    yTicks: roundTicks(...spanOfValues(trajectory), TICKS),
    days,
    paths: [
      {
        name: measureName,
        stretches: phases.map(({ daily }) =>
          daily.map(({ day, value }) => ({ day, value, ...(checks.has(day) && { isCheck: true }) })),
        ),
      },
    ],
    lines: [
      ...(aimLine === undefined
        ? []
        : [
            {
              name: "aim",
              points: [
                { day: aimLine.fromDay, value: aimLine.fromValue },
                { day: aimLine.toDay, value: aimLine.toValue },
                ...(days[1] > aimLine.toDay ? [{ day: days[1] as Day, value: aimLine.toValue }] : []),
              ],
            },
          ]),
      ...(criterion === undefined ? [] : [{ name: "criterion", points: level(criterion) }]),
    ],
    events: phases.slice(1).flatMap(({ name, points }, i) => {
      const [last, first] = [phases[i]?.points.at(-1)?.probe.day, points[0]?.probe.day];
      return last === undefined || first === undefined
        ? []
        : [{ name: name === "" ? "change of phase" : name, day: ((last + first) / 2) as Day }];
    }),
    ...(trajectory.trend !== undefined && { leftOut: NO_TREND }),
  };
};

/** The share expected right (of one sign) or expected to be known (of several), by way; what happened to one sign. */
export const plainKnown = (mastery: Mastery): PlainChart => {
  const one = isOfOneSign(mastery);
  const ways = WAYS.filter((way) => coursesOf(mastery, way).some(({ known }) => known.length > 0));
  return {
    title: titleOfMastery(mastery),
    yTitle: one ? "percent expected right" : "percent expected to be known",
    formatValue: (share) => formatValue(Number(share.toFixed(2)), "accuracy"),
    formatTick: (share) => formatNumber(100 * share),
    yTicks: [0, 0.2, 0.4, 0.6, 0.8, 1],
    days: spanOfMastery(mastery.courses) ?? [0, 7],
    paths: ways.map((way) => ({
      name: way,
      stretches: [poolKnown(coursesOf(mastery, way)).map(({ day, expected }) => ({ day, value: expected }))],
    })),
    lines: [],
    events: one
      ? listEvents(mastery.courses).map(({ day, what, way }) => ({
          day,
          name: ways.length > 1 ? `${what}, ${way}` : what,
        }))
      : [],
    ...(ways.length > 0 && { leftOut: NO_BAND }),
  };
};

/** The number of signs mastered, by way: the level before and after each step. */
export const plainMastered = (mastery: Mastery): PlainChart => {
  const days = spanOfMastery(mastery.courses) ?? [0, 7];
  const paths = WAYS.filter((way) => coursesOf(mastery, way).length > 0).map((way) => ({
    name: way,
    isStepped: true,
    stretches: [
      [
        { day: days[0] as Day, value: 0 },
        ...countMastered(coursesOf(mastery, way)).map(({ day, count }) => ({ day, value: count })),
      ],
    ],
  }));
  const most = Math.max(1, ...paths.flatMap(({ stretches }) => stretches.flat().map(({ value }) => value)));
  return {
    title: titleOfMastery(mastery),
    yTitle: "signs mastered",
    formatValue: (value) => formatNumber(value),
    formatTick: (value) => formatNumber(value),
    yTicks: roundTicks(0, most, TICKS).filter(Number.isInteger),
    days,
    paths,
    lines: [],
    events: [],
  };
};

/** A label of the axis of days. */
export interface DayLabel {
  readonly day: Day;
  readonly text: string;
}

/** Longer than this, in days, the same month may come twice: the labels then name the year. */
const ONE_YEAR = 330;

/** Labels of the axis of days; the year is among them where the axis is longer than one, else {@link sayDays} has it. */
export const labelDays = ({ days: [from, to] }: PlainChart, most: number): readonly DayLabel[] =>
  calendarTicks(from, to, Math.max(2, most)).map(({ day, label }) => ({
    day,
    text: to - from > ONE_YEAR ? `${label} ${dateOf(day).year}` : label,
  }));

/** What the axis of days is about: `days from 2 Sep 2026 to 20 Jan 2027`. */
export const sayDays = ({ days }: PlainChart): string => {
  const [from, to] = days.map((day) => {
    const { year, month, date } = dateOf(Math.max(1, day) as Day);
    return `${date} ${shortMonth(month)} ${year}`;
  });
  return `days, ${from ?? ""} to ${to ?? ""}`;
};
