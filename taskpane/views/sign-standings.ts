import { normaliseName } from "../../src/domain/progress/series";
import { findConfusions, type SignConfusions } from "../../src/domain/probe/sign-confusions";
import { collectEvidence } from "../../src/domain/progress/sign-evidence";
import { listSignStates, type SignStanding } from "../../src/domain/progress/sign-states";
import type { Day } from "../../src/domain/units";
import type { WorkbookRecords } from "../../src/records/read-records";
import { transcribeWith } from "./loaded-transcription";
import type { PaneContext } from "./pane-context";

/** One pupil's signs: how far each is, and which are taken for which. */
export interface PupilSigns {
  readonly standings: readonly SignStanding[];
  readonly confusions: SignConfusions;
}

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
  const { records, today, cells } = context;
  const ofRecords = kept.get(records) ?? new Map<string, Kept>();
  kept.set(records, ofRecords);
  const name = normaliseName(pupil);
  const before = ofRecords.get(name);
  if (before?.asOf === today && before.cells === cells) return before.signs;
  const signs = computeSigns(context, name);
  ofRecords.set(name, { asOf: today, cells, signs });
  return signs;
}

const computeSigns = ({ records, today, translators, scheduler }: Asked, name: string): PupilSigns => {
  const isOwn = (row: { readonly pupil: string }): boolean => normaliseName(row.pupil) === name;
  const [probes, miscues] = [records.probes.filter(isOwn), records.miscues.filter(isOwn)];
  const transcribeIn = transcribeWith(translators);
  const evidence = collectEvidence(probes, miscues, transcribeIn);
  const standings = listSignStates({
    taught: records.taught.filter(isOwn),
    evidence,
    asOf: today,
    nextCheck: (occasions) => scheduler.nextCheck(occasions),
  });
  return { standings, confusions: findConfusions(probes, miscues, evidence, transcribeIn) };
};
