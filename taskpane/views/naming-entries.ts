import { formatSignMarks, formatSigns } from "../../src/domain/probe/marked-signs";
import type { Day, Seconds } from "../../src/domain/units";
import type { NewEntries } from "../../src/records/new-entries";
import { signsOfRow } from "./naming-draft";
import type { NamingDraft } from "./naming-draft";

/** What she may add to a row of signs. */
export interface NamingRemarks {
  readonly support: string;
  readonly note: string;
}

/** A row of signs as one row of probes: the signs reached, a mark for each, and the counts. */
export function entriesOfNaming(
  { task, marks }: NamingDraft,
  seconds: number,
  { support, note }: NamingRemarks,
  day: Day,
): NewEntries {
  const reached = signsOfRow(task).slice(0, marks.length);
  const kinds = new Set(reached.map(({ name }) => name));
  const [only] = kinds;
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
        ...(kinds.size === 1 && only !== undefined ? { sign: only } : {}),
        ...(support === "" ? {} : { support }),
        ...(note === "" ? {} : { note }),
      },
    ],
  };
}
