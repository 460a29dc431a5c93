import { formatDay } from "../../src/domain/calendar";
import { buildCaseload } from "../../src/domain/caseload/caseload";
import type { CaseloadLine, CaseloadOptions, CaseloadRecords } from "../../src/domain/caseload/caseload";
import type { CellSource } from "../../src/domain/progress/measure";
import { formatWithUnit } from "../../src/domain/progress/measure-words";
import { describeSeries, normaliseName } from "../../src/domain/progress/series";
import type { Day } from "../../src/domain/units";
import { countInWords } from "./count-words";

/** One line of the caseload in words. */
export interface LineWords {
  /** the most pressing need, or that there is none */
  readonly need: string;
  readonly furtherNeeds: readonly string[];
  readonly lastProbe: string;
  /** where the pupil stands; "" without a probe */
  readonly now: string;
  readonly verdict: string;
  readonly signsDue: string;
  readonly probesDue: string;
  readonly week: string;
  readonly period: string;
}

interface Kept {
  readonly asOf: Day;
  readonly cells: CellSource | undefined;
  readonly checksOf: CaseloadOptions["checksOf"];
  readonly lines: readonly CaseloadLine[];
}
const kept = new WeakMap<CaseloadRecords, Kept>();

/** Only a goal in cells a minute needs the passages' cells, which take long to count. */
const needsCells = ({ goals }: CaseloadRecords): boolean =>
  goals.some(({ measure }) => /cell/i.test(measure ?? ""));

/** The caseload of a reading on a day, computed once a reading, and again when the signs due are known. */
export function caseloadOf(
  records: CaseloadRecords,
  asOf: Day,
  cells: CellSource | undefined,
  checksOf: CaseloadOptions["checksOf"],
): readonly CaseloadLine[] {
  const counted = needsCells(records) ? cells : undefined;
  const before = kept.get(records);
  if (before?.asOf === asOf && before.cells === counted && before.checksOf === checksOf) return before.lines;
  const lines = buildCaseload(records, asOf, {
    ...(counted && { cells: counted }),
    ...(checksOf && { checksOf }),
  });
  kept.set(records, { asOf, cells: counted, checksOf, lines });
  return lines;
}

/** Teachers of a caseload, each once as first written, in the order of the alphabet. */
export const listTeachers = (lines: readonly CaseloadLine[]): readonly string[] => {
  const names = new Map<string, string>();
  for (const { teacher } of lines) {
    const key = normaliseName(teacher);
    if (teacher !== undefined && key !== "" && !names.has(key)) names.set(key, teacher.trim());
  }
  return [...names.values()].sort((one, other) => one.localeCompare(other));
};

/** The lines of one teacher; all of them where none is named. */
export const linesOfTeacher = (lines: readonly CaseloadLine[], teacher: string): readonly CaseloadLine[] =>
  teacher === "" ? lines : lines.filter((line) => normaliseName(line.teacher) === normaliseName(teacher));

const sayDaysSince = (days: number): string =>
  days === 0 ? "today" : days === 1 ? "yesterday" : `${String(days)} days ago`;

const sayMinutes = ({ planned, given }: CaseloadLine["week"]): string =>
  planned === undefined ? String(given) : `${String(given)} of ${String(planned)} planned`;

/**
 * Says one line in words: what is needed, the last probe, where the pupil stands, what is due, minutes.
 *
 * @param isOpen - true while it is not known yet which signs are due
 */
export function describeLine(line: CaseloadLine, isOpen: boolean): LineWords {
  const { needs, lastProbe, daysSince, summary, verdict, checksDue, probesDue, week, period } = line;
  const [first, ...further] = needs;
  return {
    need: first?.sentence ?? "Nothing is pressing.",
    furtherNeeds: further.map(({ sentence }) => sentence),
    lastProbe: lastProbe === undefined ? "none" : `${formatDay(lastProbe)}, ${sayDaysSince(daysSince ?? 0)}`,
    now:
      summary === undefined
        ? ""
        : `${formatWithUnit(summary.latest.value, summary.trajectory.series.key)} (${describeSeries(summary.trajectory.series.key)})`,
    verdict: verdict ?? (summary === undefined ? "none yet" : "none, for want of a goal"),
    signsDue: isOpen ? "being worked out" : countInWords(checksDue.length, "sign"),
    probesDue: countInWords(probesDue.length, "probe"),
    week: sayMinutes(week),
    period: sayMinutes(period),
  };
}
