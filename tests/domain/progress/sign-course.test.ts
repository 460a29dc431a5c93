import { describe, expect, it } from "vitest";
import { buildSignCourses, type CourseSource } from "../../../src/domain/progress/sign-course";
import type { DirectEvidence } from "../../../src/domain/progress/knowledge-evidence";
import type { Day } from "../../../src/domain/units";

const trials = (...correct: readonly number[]): readonly DirectEvidence[] =>
  correct.map((right, i) => ({ day: (100 + 7 * i) as Day, sign: "ch", correct: right, opportunities: 10 }));
const sourceOf = (
  rows: readonly DirectEvidence[],
  taught: CourseSource["taught"] = new Map(),
): CourseSource => ({
  evidence: {
    reading: { words: [], direct: rows, trials: rows },
    writing: { words: [], direct: [], trials: [] },
  },
  taught,
});

describe("the course of a sign", () => {
  // The default criterion: three occasions in a row at 80 % with ten opportunities each.
  it.each([
    { about: "not met yet", correct: [5, 8, 8], met: [], lapses: [] },
    { about: "met with the third in a row", correct: [5, 8, 9, 8], met: [121], lapses: [] },
    { about: "lost again", correct: [8, 8, 8, 9, 5], met: [114], lapses: [128] },
    {
      about: "met anew by later occasions alone",
      correct: [8, 8, 8, 5, 8, 8, 8],
      met: [114, 142],
      lapses: [121],
    },
    { about: "not met anew by two", correct: [8, 8, 8, 5, 8, 8], met: [114], lapses: [121] },
  ])("$about", ({ correct, met, lapses }) => {
    expect(buildSignCourses(sourceOf(trials(...correct)))).toMatchObject([
      { sign: "ch", way: "reading", met, lapses },
    ]);
  });

  it("has its kind, the day introduced, and an estimate for each day with evidence", () => {
    const [course] = buildSignCourses(sourceOf(trials(6, 8), new Map([["ch", 93 as Day]])));
    expect(course).toMatchObject({ kind: "strong groupsign", introduced: 93 });
    expect(course?.known.map(({ day }) => day)).toEqual([100, 107]);
    for (const { low, expected, high } of course?.known ?? []) {
      expect(low).toBeLessThan(expected);
      expect(expected).toBeLessThan(high);
    }
  });

  it("is empty for a sign that was only taught", () => {
    expect(buildSignCourses(sourceOf([], new Map([["st", "earlier"]])))).toEqual([
      { sign: "st", kind: "strong groupsign", way: "reading", met: [], lapses: [], known: [] },
    ]);
  });
});
