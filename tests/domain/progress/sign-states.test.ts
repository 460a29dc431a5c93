import { describe, expect, it } from "vitest";
import { CONTRACTIONS } from "../../../src/domain/contraction/inventory";
import { PLAIN_SIGNS } from "../../../src/domain/contraction/sign";
import type { TaughtSign } from "../../../src/domain/contraction/taught-sign";
import type { DirectEvidence, WordEvidence } from "../../../src/domain/progress/knowledge-evidence";
import { listSignStates, type StandingQuestion } from "../../../src/domain/progress/sign-states";
import type { Day } from "../../../src/domain/units";

const FIRST = 46_000;
const dayOf = (week: number): Day => (FIRST + 7 * week) as Day;
const NOTHING = { words: [], direct: [], trials: [] };
const taught = (sign: string, week?: number): TaughtSign => ({
  ...{ pupil: "Plover", sign, source: { sheet: "Taught", row: 2 } },
  ...(week !== undefined && { introduced: dayOf(week) }),
});
const trials = (...rows: readonly (readonly [week: number, correct: number])[]) => {
  const counted: DirectEvidence[] = rows.map(([week, correct]) => ({
    ...{ day: dayOf(week), sign: "ch", correct, opportunities: 10 },
  }));
  return { words: [], direct: counted, trials: counted };
};
const words = (count: number, isRight: boolean) => {
  const read: WordEvidence[] = Array.from({ length: count }, () => ({
    day: dayOf(0),
    signs: ["ch"],
    isRight,
  }));
  return { words: read, direct: [], trials: [] };
};
/** Two weeks after the last occasion. */
const inTwoWeeks: StandingQuestion["nextCheck"] = (occasions) => {
  const last = occasions.at(-1);
  return last && ((last.day + 14) as Day);
};

const standing = (change: Partial<StandingQuestion>, sign = "ch") => {
  const found = listSignStates({
    ...{ taught: [taught("ch", 0)], evidence: { reading: NOTHING, writing: NOTHING }, asOf: dayOf(0) },
    nextCheck: inTwoWeeks,
    ...change,
  }).find((one) => one.sign.name === sign);
  if (found === undefined) throw new Error(`no ${sign}`);
  return found;
};
const stateOf = (reading: StandingQuestion["evidence"]["reading"], change: Partial<StandingQuestion> = {}) =>
  standing({ evidence: { reading, writing: NOTHING }, ...change }).reading.state;

describe("how far a sign is", () => {
  const met = trials([0, 9], [1, 8], [2, 10]);

  it.each([
    { name: "not taught", reading: NOTHING, change: { taught: [] }, state: "not taught" },
    {
      name: "to be taught later",
      reading: NOTHING,
      change: { taught: [taught("ch", 1)] },
      state: "not taught",
    },
    { name: "taught and not seen", reading: NOTHING, change: {}, state: "taught" },
    { name: "missed", reading: words(6, false), change: {}, state: "growing" },
    { name: "right in a word", reading: words(1, true), change: {}, state: "growing" },
    { name: "right in many words", reading: words(40, true), change: {}, state: "probably known" },
    {
      name: "right in many words and not taught",
      reading: words(60, true),
      change: { taught: [] },
      state: "probably known",
    },
    {
      name: "right in words long ago",
      reading: words(12, true),
      change: { asOf: dayOf(60) },
      state: "check again",
    },
    { name: "three occasions at 80 %", reading: met, change: { asOf: dayOf(3) }, state: "mastered" },
    {
      name: "the same, asked before the third",
      reading: met,
      change: { asOf: dayOf(1) },
      state: "growing",
    },
    {
      name: "the same, when its day to check has come",
      reading: met,
      change: { asOf: dayOf(4) },
      state: "check again",
    },
    {
      name: "the same, and an occasion under 80 % since",
      reading: trials([0, 9], [1, 8], [2, 10], [3, 6]),
      change: { asOf: dayOf(3) },
      state: "check again",
    },
  ])("$name: $state", ({ reading, change, state }) => {
    expect(stateOf(reading, change)).toBe(state);
  });

  it("is mastered by no number of words", () => {
    expect(stateOf(words(1000, true))).toBe("probably known");
  });

  it("stands apart in writing", () => {
    const { reading, writing } = standing({ evidence: { reading: NOTHING, writing: met }, asOf: dayOf(3) });
    expect(reading.state).toBe("taught");
    expect(writing).toMatchObject({ state: "mastered", masteredOn: dayOf(2), checkOn: dayOf(4) });
  });

  it("takes every letter as taught unless one is named", () => {
    expect(standing({}, "b")).toMatchObject({ taught: "earlier", reading: { state: "taught" } });
    expect(standing({ taught: [taught("c", 0)] }, "b").reading.state).toBe("not taught");
  });

  it("takes the earliest of several days, and earlier where one has none", () => {
    expect(standing({ taught: [taught("ch", 3), taught("CH", 1)] }).taught).toBe(dayOf(1));
    expect(standing({ taught: [taught("ch", 3), taught("ch")] }).taught).toBe("earlier");
  });

  it("takes every digit, mark and indicator as taught unless one of its kind is named", () => {
    expect(standing({}, "full stop")).toMatchObject({ taught: "earlier", isAssumed: true });
    const named = { taught: [taught("full stop", 0), taught("7")] };
    expect(standing(named, "full stop")).toMatchObject({ taught: dayOf(0), reading: { state: "taught" } });
    expect(standing(named, "full stop").isAssumed).toBeUndefined();
    expect(standing(named, "comma").reading.state).toBe("not taught");
    expect(standing(named, "3").reading.state).toBe("not taught");
    expect(standing(named, "number sign")).toMatchObject({ taught: "earlier", isAssumed: true });
  });

  it("judges a digit by its trials", () => {
    const { direct } = trials([0, 9], [1, 8], [2, 10]);
    const sevens = direct.map((trial) => ({ ...trial, sign: "7" }));
    const reading = { words: [], direct: sevens, trials: sevens };
    expect(standing({ evidence: { reading, writing: NOTHING }, asOf: dayOf(3) }, "7").reading).toMatchObject({
      state: "mastered",
      masteredOn: dayOf(2),
    });
  });

  it("leaves out what is no sign, and lists every sign of the inventory once", () => {
    const all = listSignStates({
      ...{ taught: [taught("nonsense")], evidence: { reading: NOTHING, writing: NOTHING }, asOf: dayOf(0) },
      nextCheck: inTwoWeeks,
    });
    expect(all).toHaveLength(PLAIN_SIGNS.length + CONTRACTIONS.length);
    expect(new Set(all.map(({ sign }) => sign.name)).size).toBe(all.length);
  });
});
