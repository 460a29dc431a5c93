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

it("knows pupils whom only the list of pupils or the lessons name, spelled as in the list of pupils", () => {
  const source = { sheet: "Pupils", row: 2 };
  const records = {
    ...NO_RECORDS,
    probes: [probe("heron")],
    pupils: [
      { pupil: "Heron", source },
      { pupil: "Dunlin", source },
    ],
    lessons: [{ pupil: "Avocet", day: 46300 as Day, minutes: 30, held: "yes" as const, source }],
  };
  expect(listPupils(records)).toEqual(["Avocet", "Dunlin", "Heron"]);
});

it.each([
  ["plover", "Plover"],
  [" PLOVER ", "Plover"],
  ["Dunlin", undefined],
  [undefined, undefined],
])("finds whom %j means", (name, pupil) => {
  expect(findPupil(["Heron", "Plover"], name)).toBe(pupil);
});
