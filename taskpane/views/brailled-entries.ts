import type { Day, Seconds } from "../../src/domain/units";
import type { NewEntries } from "../../src/records/new-entries";
import { listErrors, nameSides, type ComparedWriting } from "./brailled-comparison";
import type { BrailledTask } from "./brailled-draft";

/** The task's name in the tables. */
export const BRAILLED = "heard and brailled";

/** What she may add. */
export interface BrailledRemarks {
  readonly support: string;
  readonly note: string;
}

/** Writing as one row of probes and a row an error. @param seconds - undefined where it was not timed */
export function entriesOfBrailled(
  task: BrailledTask,
  compared: ComparedWriting,
  seconds: number | undefined,
  { support, note }: BrailledRemarks,
  day: Day,
): NewEntries {
  const { pupil, title, text, code, medium } = task;
  const { score, written } = compared;
  const isSigns = code === "signs";
  return {
    probes: [
      {
        pupil,
        day,
        task: BRAILLED,
        unit: isSigns ? "signs" : "cells",
        medium,
        correct: score.right,
        opportunities: score.cells,
        expected: text,
        response: written,
        ...(isSigns ? {} : { code }),
        ...(seconds === undefined ? {} : { seconds: seconds as Seconds }),
        ...(title === "" ? {} : { material: title }),
        ...(support === "" ? {} : { support }),
        ...(note === "" ? {} : { note }),
      },
    ],
    miscues: listErrors(compared).map((error) => {
      const [expected, response] = nameSides(error);
      return {
        ...{ pupil, day, task: BRAILLED, position: error.position, expected, response },
        ...(error.kind === undefined ? {} : { kind: error.kind }),
      };
    }),
  };
}
