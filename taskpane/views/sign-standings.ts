import { judgeSigns, type PupilSigns } from "../../src/domain/progress/pupil-signs";
import { normaliseName } from "../../src/domain/progress/series";
import type { Day } from "../../src/domain/units";
import { transcribeWith } from "../../src/ports/loaded-transcription";
import type { WorkbookRecords } from "../../src/records/read-records";
import type { PaneContext } from "./pane-context";

type Asked = Pick<PaneContext, "records" | "today" | "cells" | "translators" | "scheduler">;

interface Kept {
  readonly asOf: Day;
  /** the engine that texts were read with, or none */
  readonly cells: Asked["cells"];
  readonly signs: PupilSigns;
}
const kept = new WeakMap<WorkbookRecords, Map<string, Kept>>();

/** A pupil's signs on the day of the context, computed once a reading, pupil and engine. */
export function signsOf(context: Asked, pupil: string): PupilSigns {
  const { records, today, cells, translators, scheduler } = context;
  const ofRecords = kept.get(records) ?? new Map<string, Kept>();
  kept.set(records, ofRecords);
  const name = normaliseName(pupil);
  const before = ofRecords.get(name);
  if (before?.asOf === today && before.cells === cells) return before.signs;
  const signs = judgeSigns(records, name, today, transcribeWith(translators), (occasions) =>
    scheduler.nextCheck(occasions),
  );
  ofRecords.set(name, { asOf: today, cells, signs });
  return signs;
}
