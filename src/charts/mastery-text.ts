import { formatDay } from "../domain/calendar";
import { formatValue } from "../domain/progress/measure-words";
import type { Day } from "../domain/units";
import type { ChartPicture } from "./chart-picture";
import {
  coursesOf,
  countMastered,
  listEvents,
  poolKnown,
  WAYS,
  type KnownOn,
  type Mastery,
  type SignCourse,
  type Way,
} from "./mastery-course";

const percent = (share: number): string => formatValue(Number(share.toFixed(2)), "accuracy");
const capitalise = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const count = (number: number, one: string): string => `${number} ${number === 1 ? one : `${one}s`}`;

/** Whether the picture is of a single sign. */
export const isOfOneSign = ({ courses }: Mastery): boolean =>
  new Set(courses.map(({ sign }) => sign)).size === 1;

/** What the picture is of. */
export const titleOfMastery = ({ pupil, scope }: Mastery): string => `${pupil}: mastery of ${scope}`;

const sayKnown = ({ day, expected, low, high }: KnownOn): string =>
  `${percent(expected)} (${percent(low)} to ${percent(high)}) on ${formatDay(day)}`;

const sayDays = (days: readonly Day[]): string => days.map(formatDay).join(", ");

const sayOneSign = ({ way, introduced, met, lapses, known }: SignCourse): string => {
  const parts = [
    introduced === undefined ? "day introduced not noted" : `introduced ${formatDay(introduced)}`,
    met.length === 0 ? "criterion not met yet" : `criterion met ${sayDays(met)}`,
    ...(lapses.length === 0 ? [] : [`lapsed ${sayDays(lapses)}`]),
  ];
  const last = known.at(-1);
  const share = last === undefined ? "nothing seen of it yet" : `share expected right ${sayKnown(last)}`;
  return `${capitalise(way)}: ${parts.join("; ")}; ${share}.`;
};

const sayManySigns = (way: Way, courses: readonly SignCourse[]): string => {
  const introduced = courses.filter((course) => course.introduced !== undefined).length;
  const steps = countMastered(courses);
  const mastered = steps.at(-1)?.count ?? 0;
  const most = Math.max(0, ...steps.map((step) => step.count));
  const lapses = courses.reduce((sum, course) => sum + course.lapses.length, 0);
  const last = poolKnown(courses).at(-1);
  return (
    `${capitalise(way)}: ${count(courses.length, "sign")}, ${introduced} with a day introduced; ${mastered} mastered now` +
    `${most > mastered ? `, ${most} at most` : ""}; ${count(lapses, "lapse")}` +
    `${last === undefined ? "" : `; share expected to be known ${sayKnown(last)}`}.`
  );
};

/** The picture in sentences: for each way the days, the number mastered and the share expected. */
export const summariseMastery = (mastery: Mastery): readonly string[] => {
  const one = isOfOneSign(mastery);
  const ways = WAYS.filter((way) => coursesOf(mastery, way).length > 0);
  return [
    ...ways.flatMap((way) => {
      const courses = coursesOf(mastery, way);
      return one ? courses.map(sayOneSign) : [sayManySigns(way, courses)];
    }),
    one
      ? "The band is the interval of the share expected right; forgetting between probes is reckoned with."
      : "Share expected to be known: the mean over these signs, one not seen yet counted as 0. Its band takes the signs as independent of each other. The stepped line counts the signs that met the criterion, less those that lapsed.",
    "Only the criterion, met in direct trials, makes a sign mastered; a high expected share alone means probably known.",
  ];
};

const tabulateOne = (mastery: Mastery): readonly (readonly string[])[] => {
  const days = new Map<Day, Map<string, string[]>>();
  const note = (day: Day, column: string, text: string): void => {
    const cells = days.get(day) ?? new Map<string, string[]>();
    days.set(day, cells);
    cells.set(column, [...(cells.get(column) ?? []), text]);
  };
  for (const { way, known } of mastery.courses)
    for (const { day, expected, low, high } of known)
      note(day, way, `${percent(expected)} (${percent(low)} to ${percent(high)})`);
  for (const { day, what, way } of listEvents(mastery.courses)) note(day, "event", `${way}: ${what}`);
  return [...days]
    .sort(([a], [b]) => a - b)
    .map(([day, cells]) => [
      formatDay(day),
      ...[...WAYS, "event"].map((column) => (cells.get(column) ?? []).join("; ")),
    ]);
};

const tabulateMany = ({ courses }: Mastery): readonly (readonly string[])[] =>
  courses.map(({ sign, way, introduced, met, lapses, known }) => {
    const last = known.at(-1);
    return [
      sign,
      way,
      introduced === undefined ? "" : formatDay(introduced),
      sayDays(met),
      sayDays(lapses),
      last === undefined ? "" : `${percent(last.expected)} (${percent(last.low)} to ${percent(last.high)})`,
    ];
  });

/** One sign by day; several signs one a row. Columns that would be empty are left out. */
export const tabulateMastery = (mastery: Mastery): ChartPicture["table"] => {
  const [headings, rows] = isOfOneSign(mastery)
    ? [["Date", "Reading, expected right", "Writing, expected right", "What happened"], tabulateOne(mastery)]
    : [
        ["Sign", "Way", "Introduced", "Criterion met", "Lapsed", "Expected right, latest"],
        tabulateMany(mastery),
      ];
  const shown = headings.map((_, column) => column === 0 || rows.some((row) => row[column] !== ""));
  return {
    caption: titleOfMastery(mastery),
    headings: headings.filter((_, column) => shown[column]),
    rows: rows.map((row) => row.filter((_, column) => shown[column])),
  };
};
