import { expect, it } from "vitest";
import { buildCaseload } from "../../../src/domain/caseload/caseload";
import type { Day } from "../../../src/domain/units";
import { NO_RECORDS } from "../../../src/records/read-records";
import {
  caseloadOf,
  describeLine,
  linesOfTeacher,
  listTeachers,
} from "../../../taskpane/views/caseload-lines";
import { caseloadTable, formatCsv } from "../../../taskpane/views/caseload-table";

const TODAY = 46351 as Day;
const source = { sheet: "Pupils", row: 2 };
const records = {
  ...NO_RECORDS,
  pupils: ["Heron", "Plover", "Dunlin", "Avocet", "=Tern", "Knot"].map((pupil, place) => ({
    pupil,
    teacher: place < 4 ? "Ruff" : " ruff ",
    minutesPlanned: 60,
    source,
  })),
  probes: [
    {
      pupil: "Heron",
      day: (TODAY - 1) as Day,
      task: "read aloud",
      words: 40,
      errors: 2,
      seconds: 60 as never,
      source,
    },
  ],
};
const lines = buildCaseload(records, TODAY);

it("writes comma-separated values in which no text is a formula", () => {
  expect(
    formatCsv([
      ["=1+1", 'say "a"', -3],
      ["+a", "b,c", "-d", "@e"],
    ]),
  ).toBe(`'=1+1,"say ""a""",-3\r\n'+a,"b,c",'-d,'@e\r\n`);
});

it("counts groups under five for nobody, and gives each pupil a row", () => {
  const table = caseloadTable(lines, [(TODAY - 84) as Day, TODAY]);
  expect(table.slice(1, 7).map(([pupil]) => pupil)).toEqual(lines.map(({ pupil }) => pupil));
  expect(table.slice(8)).toEqual([
    ["Verdict", "Pupils"],
    ["no verdict", 6],
    ["all pupils", 6],
    [],
    ["Period: 2 Sep 2026 to 25 Nov 2026"],
  ]);
  expect(caseloadTable(lines.slice(0, 4), [TODAY, TODAY])).toContainEqual(["no verdict", "fewer than 5"]);
});

it("knows a teacher whatever the spelling, and keeps her pupils' order", () => {
  expect(listTeachers(lines)).toEqual(["ruff"]);
  expect(linesOfTeacher(lines, "RUFF")).toEqual(lines);
  expect(linesOfTeacher(lines, "")).toBe(lines);
  expect(linesOfTeacher(lines, "Knot")).toEqual([]);
});

it("computes the caseload once a reading and day", () => {
  expect(caseloadOf(records, TODAY, undefined, undefined)).toBe(
    caseloadOf(records, TODAY, { cellsOf: () => 1 } as never, undefined),
  );
  expect(caseloadOf(records, TODAY, undefined, undefined)).not.toBe(
    caseloadOf({ ...records }, TODAY, undefined, undefined),
  );
});

it("says one probe, and none, in words", () => {
  const said = lines.map((line) => [line.pupil, describeLine(line, false)] as const);
  expect(said.find(([pupil]) => pupil === "Heron")?.[1]).toMatchObject({
    lastProbe: "24 Nov 2026, yesterday",
    now: "38 words a minute (read aloud)",
    verdict: "none, for want of a goal",
    week: "0 of 60 planned",
  });
  expect(said.find(([pupil]) => pupil === "Knot")?.[1]).toMatchObject({
    need: "No probe is noted yet.",
    lastProbe: "none",
    now: "",
    verdict: "none yet",
  });
});
