import type { KnownOn, SignCourse } from "../domain/progress/sign-course";
import type { Way } from "../domain/progress/way";
import type { Day } from "../domain/units";

export { WAYS, type Way } from "../domain/progress/way";
export type { KnownOn, SignCourse } from "../domain/progress/sign-course";

/** What a picture of mastery is of. */
export interface Mastery {
  readonly pupil: string;
  /** one sign, a kind or all, in words: `sign ch`, `strong groupsigns`, `all signs` */
  readonly scope: string;
  readonly courses: readonly SignCourse[];
}

/** Something that happened to a sign on a day. */
export interface MasteryEvent {
  readonly day: Day;
  readonly what: "introduced" | "criterion met" | "lapse";
  readonly way: Way;
  readonly sign: string;
}

/** The courses of one way. */
export const coursesOf = ({ courses }: Mastery, way: Way): readonly SignCourse[] =>
  courses.filter((course) => course.way === way);

/** Everything that happened, oldest first. */
export const listEvents = (courses: readonly SignCourse[]): readonly MasteryEvent[] =>
  courses
    .flatMap(({ sign, way, introduced, met, lapses }): readonly MasteryEvent[] => [
      ...(introduced === undefined ? [] : [{ day: introduced, what: "introduced", way, sign } as const]),
      ...met.map((day) => ({ day, what: "criterion met", way, sign }) as const),
      ...lapses.map((day) => ({ day, what: "lapse", way, sign }) as const),
    ])
    .sort((a, b) => a.day - b.day);

/** How many days with a value a pooled path has at most; a longer one is read at evenly spaced days. */
const MOST_DAYS = 60;

const lastBy = (known: readonly KnownOn[], day: number): KnownOn | undefined => {
  let [low, high] = [0, known.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((known[middle]?.day ?? Infinity) <= day) low = middle + 1;
    else high = middle;
  }
  return known[low - 1];
};

/**
 * The share of all these signs that is expected to be known, by day: the mean over the signs, one not yet seen counted
 * as 0, the last estimate kept until there is another. The half-widths of the intervals are added as independent of
 * each other, in squares, on each side: an approximation.
 *
 * @param courses - of one way, each sign once
 * @returns oldest first; the one sign's own values where there is one
 */
export const poolKnown = (courses: readonly SignCourse[]): readonly KnownOn[] => {
  const [only] = courses;
  if (only === undefined || courses.length === 1) return only?.known ?? [];
  const days = [...new Set(courses.flatMap(({ known }) => known.map(({ day }) => day)))].sort(
    (a, b) => a - b,
  );
  const step = Math.max(1, (days.length - 1) / (MOST_DAYS - 1));
  const chosen = Array.from(
    { length: Math.min(days.length, MOST_DAYS) },
    (_, i) => days[Math.round(i * step)] ?? (NaN as Day),
  );
  return chosen.map((day) => {
    let [sum, below, above] = [0, 0, 0];
    for (const { known } of courses) {
      const last = lastBy(known, day);
      if (last === undefined) continue;
      sum += last.expected;
      below += (last.expected - last.low) ** 2;
      above += (last.high - last.expected) ** 2;
    }
    const n = courses.length;
    const expected = sum / n;
    return { day, expected, low: expected - Math.sqrt(below) / n, high: expected + Math.sqrt(above) / n };
  });
};

/** How many signs were mastered from a day on. */
export interface MasteredFrom {
  readonly day: Day;
  readonly count: number;
}

/** The number of signs mastered, by the days on which it changed: one more for a criterion met, one less for a lapse. */
export const countMastered = (courses: readonly SignCourse[]): readonly MasteredFrom[] => {
  const changes = new Map<Day, number>();
  for (const { day, what } of listEvents(courses)) {
    if (what === "introduced") continue;
    changes.set(day, (changes.get(day) ?? 0) + (what === "criterion met" ? 1 : -1));
  }
  let count = 0;
  return [...changes].flatMap(([day, change]) => {
    count += change;
    return change === 0 ? [] : [{ day, count }];
  });
};

/** First and last day that anything is known of, at least a week apart; undefined where nothing is. */
export const spanOfMastery = (courses: readonly SignCourse[]): readonly [number, number] | undefined => {
  let [low, high] = [Infinity, -Infinity];
  for (const { known, introduced, met, lapses } of courses) {
    for (const day of [
      introduced ?? Infinity,
      known[0]?.day ?? Infinity,
      met[0] ?? Infinity,
      lapses[0] ?? Infinity,
    ])
      low = Math.min(low, day);
    for (const day of [
      introduced ?? -Infinity,
      known.at(-1)?.day ?? -Infinity,
      met.at(-1) ?? -Infinity,
      lapses.at(-1) ?? -Infinity,
    ])
      high = Math.max(high, day);
  }
  if (!Number.isFinite(low)) return undefined;
  return high - low < 6 ? [low - 3, low + 10] : [low, high];
};
