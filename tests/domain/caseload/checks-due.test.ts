import { describe, expect, it } from "vitest";
import { buildCaseload } from "../../../src/domain/caseload/caseload";
import { findChecksDue } from "../../../src/domain/caseload/checks-due";
import type { TaughtSign } from "../../../src/domain/contraction/taught-sign";
import { listSignStates } from "../../../src/domain/progress/sign-states";
import type { Day } from "../../../src/domain/units";
import { START } from "../progress/probes";

const day = (offset: number): Day => (START + offset) as Day;
const NOTHING = { words: [], direct: [], trials: [] };
const taught = (sign: string, checkAgain?: number): TaughtSign => ({
  pupil: "Heron",
  sign,
  introduced: day(0),
  ...(checkAgain === undefined ? {} : { checkAgain: day(checkAgain) }),
  source: { sheet: "Taught", row: 2 },
});

/** ch named right ten times of ten on three days; its check falls on day 20. */
const standingsOn = (asOf: number, rows: readonly TaughtSign[]) => {
  const trials = [1, 2, 3].map((after) => ({
    ...{ day: day(after), sign: "ch", correct: 10, opportunities: 10 },
  }));
  return listSignStates({
    taught: rows,
    evidence: { reading: { words: [], direct: trials, trials }, writing: NOTHING },
    asOf: day(asOf),
    nextCheck: (occasions) => (occasions.length === 0 ? undefined : day(20)),
  });
};

describe("signs due for a check", () => {
  it.each([
    ["before the day that the records give", 19, [taught("ch")], []],
    ["from that day on", 20, [taught("ch")], ["ch"]],
    ["by a written day of a sign not met since", 30, [taught("ch"), taught("sh", 10)], ["sh", "ch"]],
    ["not by a written day before the last trial", 5, [taught("ch", 2)], []],
    ["once where both say so", 40, [taught("ch", 30)], ["ch"]],
    ["by a written day for what is no sign of the inventory", 30, [taught("lines", 10)], ["lines", "ch"]],
  ])("%s", (_, asOf, rows, due) => {
    expect(findChecksDue(standingsOn(asOf, rows), rows, day(asOf)).map(({ sign }) => sign)).toEqual(due);
  });

  it("stand in the caseload's line, and are a need", () => {
    const [line] = buildCaseload(
      { probes: [], goals: [], taught: [taught("ch", 2)], pupils: [], lessons: [] },
      day(5),
      { checksOf: (pupil) => (pupil === "Heron" ? [{ sign: "ea", since: day(4) }] : undefined) },
    );
    expect(line?.checksDue).toEqual([{ sign: "ea", since: day(4) }]);
    expect(line?.needs.map(({ sentence }) => sentence)).toContain("1 sign due for a check: ea.");
  });
});
