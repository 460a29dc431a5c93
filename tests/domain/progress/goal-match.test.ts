import { describe, expect, it } from "vitest";
import { findGoal, measuresOfGoal, parseCriterion } from "../../../src/domain/progress/goal-match";
import type { SeriesKey } from "../../../src/domain/progress/series";
import type { Day } from "../../../src/domain/units";
import { goalOf, START } from "./probes";

const KEY: SeriesKey = {
  pupil: "Heron",
  task: "read aloud",
  measure: "rate",
  unit: "words",
  code: "contracted",
  medium: "braille",
  sign: "",
};

describe("the goal of a series", () => {
  it.each([
    { about: "the same pupil in another spelling", goal: goalOf({ pupil: " heron" }), found: true },
    { about: "another pupil", goal: goalOf({ pupil: "Plover" }), found: false },
    { about: "another task", goal: goalOf({ task: "copied" }), found: false },
    { about: "the same task", goal: goalOf({ task: "Read aloud" }), found: true },
    { about: "another code", goal: goalOf({ code: "uncontracted" }), found: false },
    { about: "another measure", goal: goalOf({ measure: "accuracy" }), found: false },
    { about: "her own words for the measure", goal: goalOf({ measure: "WCPM" }), found: true },
    { about: "no measure, scores of words", goal: goalOf({ measure: "" }), found: true },
    {
      about: "no measure, scores of shares",
      goal: goalOf({ measure: "", startScore: 0.4, goalScore: 0.9 }),
      found: false,
    },
  ])("$about: found is $found", ({ goal, found }) => {
    expect(findGoal(KEY, [goal], START + 70) !== undefined).toBe(found);
  });

  it.each([
    { sign: "ea", text: "names ea in words", found: true },
    { sign: "ea", text: "names each letter", found: false },
    { sign: "all signs", text: "names each letter", found: true },
    { sign: "ea", text: "", found: true },
  ])("for the sign $sign with the text '$text': found is $found", ({ sign, text, found }) => {
    expect(findGoal({ ...KEY, sign }, [goalOf({ text })], START) !== undefined).toBe(found);
  });

  it("of two is the one that names more", () => {
    const general = goalOf({ goalScore: 50 });
    const exact = goalOf({ task: "read aloud", code: "contracted", goalScore: 70 });
    expect(findGoal(KEY, [general, exact], START)?.goalScore).toBe(70);
  });

  it("of two years is the later that has begun", () => {
    const years = [START - 365, START, START + 365].map((startDay, i) =>
      goalOf({ startDay: startDay as Day, goalDay: (startDay + 300) as Day, goalScore: 40 + i }),
    );
    expect(findGoal(KEY, years, START + 70)?.goalScore).toBe(41);
    expect(findGoal(KEY, years, START - 400)?.goalScore).toBe(40);
  });

  it("for accuracy takes 40 and 90 for 40 % and 90 %", () => {
    const goal = goalOf({ measure: "accuracy", startScore: 40, goalScore: 90 });
    expect(findGoal({ ...KEY, measure: "accuracy" }, [goal], START)).toMatchObject({
      startScore: 0.4,
      goalScore: 0.9,
    });
    const share = goalOf({ measure: "% correct", startScore: 0.4, goalScore: 1 });
    expect(findGoal({ ...KEY, measure: "accuracy" }, [share], START)).toMatchObject({
      startScore: 0.4,
      goalScore: 1,
    });
  });
});

describe("the measure of a goal", () => {
  it.each([
    ["rate", ["rate"]],
    ["words correct a minute", ["rate"]],
    ["CWPM", ["rate"]],
    ["cells per minute", ["cells a minute"]],
    ["Accuracy (%)", ["accuracy"]],
    ["score", ["score"]],
    ["hand use", []],
  ])("%j is %j", (measure, expected) => expect(measuresOfGoal(goalOf({ measure }))).toEqual(expected));
});

describe("a criterion", () => {
  it.each([
    ["90 %", "accuracy", 0.9],
    ["at least 92,5% on three days", "accuracy", 0.925],
    ["0.9", "accuracy", 0.9],
    ["95", "accuracy", 0.95],
    ["8 of 10", "accuracy", 0.8],
    ["18/20 trials", "accuracy", 0.9],
    ["90 % accuracy", "rate", undefined],
    ["3 of 4 points", "score", 3],
    ["4", "score", 4],
    ["", "accuracy", undefined],
    ["most of the time", "accuracy", undefined],
  ] as const)("%j for %s is %j", (text, measure, level) => expect(parseCriterion(text, measure)).toBe(level));
});
