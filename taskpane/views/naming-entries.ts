import { formatSignMarks, formatSigns } from "../../src/domain/probe/marked-signs";
import { isContraction, type Sign } from "../../src/domain/contraction/sign";
import { normaliseName } from "../../src/domain/progress/series";
import type { Day, Seconds } from "../../src/domain/units";
import type { WorkbookRecords } from "../../src/records/read-records";
import type { NewEntries } from "../../src/records/new-entries";
import { signsOfRow } from "./naming-draft";
import type { NamingDraft, NamingTask } from "./naming-draft";

/** What she may add to a row of signs. */
export interface NamingRemarks {
  readonly support: string;
  readonly note: string;
}

type Known = Pick<WorkbookRecords, "probes" | "goals">;

/**
 * The code of a row: contracted where it has a contraction; of a row of other signs the one that the pupil's last such
 * probe or goal names, so that the series goes on.
 */
const codeOf = (
  { pupil, task }: NamingTask,
  signs: readonly Sign[],
  { probes, goals }: Known,
): string | undefined => {
  if (signs.some(isContraction)) return "contracted";
  const isSame = (row: Known["probes"][number] | Known["goals"][number]): boolean =>
    normaliseName(row.pupil) === normaliseName(pupil) &&
    normaliseName(row.task) === task &&
    row.code !== undefined;
  const last = probes
    .filter(isSame)
    .toSorted((one, other) => one.day - other.day)
    .at(-1);
  return last?.code ?? goals.findLast(isSame)?.code;
};

/** A row of signs as one row of probes: the signs reached, a mark for each, and the counts. */
export function entriesOfNaming(
  { task, marks }: NamingDraft,
  seconds: number,
  { support, note }: NamingRemarks,
  day: Day,
  known: Known,
): NewEntries {
  const reached = signsOfRow(task).slice(0, marks.length);
  const kinds = new Set(reached.map(({ name }) => name));
  const [only] = kinds;
  const code = codeOf(task, reached, known);
  return {
    probes: [
      {
        pupil: task.pupil,
        day,
        task: task.task,
        unit: "signs",
        medium: task.medium,
        correct: marks.filter((mark) => mark === "correct").length,
        opportunities: marks.length,
        seconds: seconds as Seconds,
        expected: formatSigns(reached),
        response: formatSignMarks(marks),
        ...(code === undefined ? {} : { code }),
        ...(kinds.size === 1 && only !== undefined ? { sign: only } : {}),
        ...(support === "" ? {} : { support }),
        ...(note === "" ? {} : { note }),
      },
    ],
  };
}
