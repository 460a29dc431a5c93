import { formatDay } from "../../src/domain/calendar";
import { SIGN_MARKS, type SignMark } from "../../src/domain/probe/marked-signs";
import type { Probe } from "../../src/domain/probe/probe";
import { computeRate } from "../../src/domain/probe/rate";
import { measureProbe } from "../../src/domain/progress/measure";
import { normaliseName } from "../../src/domain/progress/series";
import type { Seconds } from "../../src/domain/units";
import { beginSentence, countInWords } from "./count-words";
import type { NamingDraft, NamingTask } from "./naming-draft";

/** A sign that was not named or copied as it should be, and how often. */
export interface MissedInRow {
  readonly sign: string;
  readonly missed: number;
  readonly met: number;
}

/** How often each mark was given. */
export const countMarks = (marks: readonly SignMark[]): Readonly<Record<SignMark, number>> =>
  Object.fromEntries(
    SIGN_MARKS.map((mark) => [mark, marks.filter((each) => each === mark).length]),
  ) as Record<SignMark, number>;

/** The signs missed at least once, most often missed first. */
export const listMissed = ({ task, marks }: NamingDraft): readonly MissedInRow[] => {
  const counts = new Map<string, { missed: number; met: number }>();
  marks.forEach((mark, place) => {
    const sign = task.signs[place] ?? "";
    const count = counts.get(sign) ?? { missed: 0, met: 0 };
    counts.set(sign, { missed: count.missed + (mark === "correct" ? 0 : 1), met: count.met + 1 });
  });
  return [...counts]
    .map(([sign, count]) => ({ sign, ...count }))
    .filter(({ missed }) => missed > 0)
    .sort((one, other) => other.missed - one.missed || one.met - other.met);
};

const round = (value: number): string => (Math.round(value * 10) / 10).toString();
const doneOf = ({ task }: NamingTask): string => (task === "copied" ? "copied" : "named");

/** A row in sentences: how many were right, how fast, what was missed. */
export function describeNaming(draft: NamingDraft, seconds: number): readonly string[] {
  const { task, marks } = draft;
  const counts = countMarks(marks);
  const [all, right] = [marks.length, counts.correct];
  if (all === 0) return ["No sign is marked: there is nothing to write yet."];
  const rate = computeRate(all, all - right, seconds as Seconds);
  const others = SIGN_MARKS.filter((mark) => mark !== "correct" && counts[mark] > 0).map((mark) =>
    mark === "incorrect" ? `${counts[mark]} not correct` : `${counts[mark]} ${mark}`,
  );
  const missed = listMissed(draft);
  return [
    `${beginSentence(countInWords(right, "sign"))} of ${String(all)} ${doneOf(task)} correctly, in ${round(seconds)} seconds.`,
    ...(seconds < 1 ? ["The time is under a second: correct it beneath."] : []),
    ...(rate.ok ? [`${round(rate.value)} signs ${doneOf(task)} correctly a minute.`] : []),
    ...(others.length === 0 ? [] : [`${beginSentence(others.join(", "))}.`]),
    ...(all < task.signs.length
      ? [`${beginSentence(countInWords(task.signs.length - all, "sign"))} of the row not reached.`]
      : []),
    missed.length === 0
      ? "No sign was missed."
      : `Missed: ${missed.map(({ sign, missed: times, met }) => `${sign} (${String(times)} of ${String(met)})`).join(", ")}.`,
  ];
}

/** How many earlier probes stand beside a new one. */
const EARLIER = 5;

/** The pupil's last probes of the same task, newest first, a line each. */
export const listEarlierRows = (probes: readonly Probe[], task: NamingTask): readonly string[] =>
  probes
    .filter(
      (probe) =>
        normaliseName(probe.pupil) === normaliseName(task.pupil) &&
        normaliseName(probe.task) === task.task &&
        (probe.medium === undefined || normaliseName(probe.medium) === task.medium),
    )
    .flatMap((probe) => {
      const rate = measureProbe(probe, "rate");
      const share = measureProbe(probe, "accuracy");
      const said = [
        ...(rate === undefined ? [] : [`${round(rate)} a minute`]),
        ...(share === undefined ? [] : [`${round(100 * share)} % correct`]),
      ];
      return said.length === 0 ? [] : [{ probe, said: said.join(", ") }];
    })
    .sort((one, other) => other.probe.day - one.probe.day)
    .slice(0, EARLIER)
    .map(
      ({ probe, said }) =>
        `${formatDay(probe.day)}: ${said}${probe.sign === undefined ? "" : `, ${probe.sign}`}`,
    );
