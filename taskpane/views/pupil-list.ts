import { normaliseName } from "../../src/domain/progress/series";
import type { WorkbookRecords } from "../../src/records/read-records";

/** Every pupil that the workbook names, each once as first written, in the order of the alphabet. */
export function listPupils(records: WorkbookRecords): readonly string[] {
  const names = new Map<string, string>();
  for (const rows of [records.pupils, records.probes, records.goals, records.taught, records.lessons]) {
    for (const { pupil } of rows) {
      const key = normaliseName(pupil);
      if (key !== "" && !names.has(key)) names.set(key, pupil.trim());
    }
  }
  return [...names.values()].sort((one, other) => one.localeCompare(other, undefined, { numeric: true }));
}

/** The pupil of a list whom a name means, whatever its capitals and spaces. */
export const findPupil = (pupils: readonly string[], name: string | undefined): string | undefined =>
  name === undefined ? undefined : pupils.find((pupil) => normaliseName(pupil) === normaliseName(name));
