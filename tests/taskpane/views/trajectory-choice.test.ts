import { describe, expect, it } from "vitest";
import { buildSeries } from "../../../src/domain/progress/series";
import type { Share } from "../../../src/domain/units";
import { resolveChoice, type TrajectoryChoice } from "../../../taskpane/views/trajectory-choice";
import { goalOf, probeOf, START } from "../../domain/progress/probes";

const SERIES = buildSeries([
  probeOf({ rate: 20, accuracy: 0.9 as Share }),
  probeOf({ rate: 30, task: "copied", day: START + 70 }),
  probeOf({ rate: 40, pupil: "Plover" }),
  probeOf({ score: 3, pupil: "Plover", task: "hand use", day: START + 7 }),
]);
const READ_ALOUD = "read aloud, words, contracted, braille";
const COPIED = "copied, words, contracted, braille";
const HAND_USE = "hand use, words, contracted, braille";
const chosen = (choice: TrajectoryChoice, goals = [goalOf({ pupil: "Avocet" })]): unknown[] => {
  const lists = resolveChoice(SERIES, goals, choice);
  return [lists?.pupil, lists?.seriesName, lists?.measure];
};

describe("what the trajectory view shows", () => {
  it.each([
    {
      about: "nothing chosen: the first pupil, the series probed last",
      choice: {},
      expected: ["heron", COPIED, "rate"],
    },
    { about: "a pupil", choice: { pupil: "Plover" }, expected: ["plover", HAND_USE, "score"] },
    { about: "a series", choice: { series: READ_ALOUD }, expected: ["heron", READ_ALOUD, "rate"] },
    {
      about: "a measure",
      choice: { series: READ_ALOUD, measure: "accuracy" },
      expected: ["heron", READ_ALOUD, "accuracy"],
    },
    { about: "a pupil who is gone", choice: { pupil: "Dunlin" }, expected: ["heron", COPIED, "rate"] },
    {
      about: "a series that this pupil has not",
      choice: { pupil: "Plover", series: COPIED },
      expected: ["plover", HAND_USE, "score"],
    },
    {
      about: "a series that another pupil has too",
      choice: { pupil: "Plover", series: READ_ALOUD },
      expected: ["plover", READ_ALOUD, "rate"],
    },
    {
      about: "a measure that the series has not",
      choice: { pupil: "Plover", series: READ_ALOUD, measure: "score" },
      expected: ["plover", READ_ALOUD, "rate"],
    },
  ] as const)("$about", ({ choice, expected }) => expect(chosen(choice)).toEqual(expected));

  it("begins with a series that has a goal", () => {
    expect(chosen({}, [goalOf({ task: "read aloud" })])).toEqual(["heron", READ_ALOUD, "rate"]);
    expect(
      chosen({}, [goalOf({ task: "read aloud", measure: "accuracy", startScore: 0, goalScore: 1 })]),
    ).toEqual(["heron", READ_ALOUD, "accuracy"]);
  });

  it("offers each pupil, series and measure once", () => {
    const lists = resolveChoice(SERIES, [], { series: READ_ALOUD });
    expect(lists?.pupils.map(({ label }) => label)).toEqual(["Heron", "Plover"]);
    expect(lists?.series.map(({ label }) => label)).toEqual([READ_ALOUD, COPIED]);
    expect(lists?.measures.map(({ label }) => label)).toEqual(["Rate", "Accuracy"]);
  });

  it("offers nothing where there is nothing", () => expect(resolveChoice([], [], {})).toBeUndefined());
});
