import { expect, it } from "vitest";
import type { Probe } from "../../../src/domain/probe/probe";
import type { Day } from "../../../src/domain/units";
import { NO_RECORDS } from "../../../src/records/read-records";
import { findPupil, listPupils } from "../../../taskpane/views/pupil-list";

const probe = (pupil: string): Probe => ({ pupil, day: 46300 as Day, source: { sheet: "Probes", row: 2 } });

it("lists every pupil once, as first written, in the order of the alphabet and of numbers", () => {
  const records = { ...NO_RECORDS, probes: ["Plover ", "P10", "plover", "P9", "Heron", " "].map(probe) };
  expect(listPupils(records)).toEqual(["Heron", "P9", "P10", "Plover"]);
});

it.each([
  ["plover", "Plover"],
  [" PLOVER ", "Plover"],
  ["Dunlin", undefined],
  [undefined, undefined],
])("finds whom %j means", (name, pupil) => {
  expect(findPupil(["Heron", "Plover"], name)).toBe(pupil);
});
