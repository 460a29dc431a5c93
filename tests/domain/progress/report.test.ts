import { describe, expect, it } from "vitest";
import type { Probe } from "../../../src/domain/probe/probe";
import { findContraction } from "../../../src/domain/contraction/inventory";
import type { SignStanding } from "../../../src/domain/progress/sign-states";
import type { Goal } from "../../../src/domain/progress/goal";
import {
  buildReport,
  findOtherPupils,
  formatReport,
  usualStart,
  type ReportSource,
} from "../../../src/domain/progress/report";
import { FAMILY_VERDICTS, joinNames } from "../../../src/domain/progress/report-words";
import type { Day, Seconds } from "../../../src/domain/units";

const START = 46_272 as Day; // 7 Sep 2026
const weekly = (scores: readonly number[], fields: Partial<Probe> = {}): Probe[] =>
  scores.map((correct, week) => ({
    ...{ pupil: "Dunlin", task: "read aloud", code: "contracted", medium: "braille", unit: "words" },
    ...{ day: (START + 7 * week) as Day, words: correct + 2, errors: 2, seconds: 60 as Seconds },
    source: { sheet: "Probes", row: week + 2 },
    ...fields,
  }));
const goal: Goal = {
  ...{ pupil: "Dunlin", text: "Dunlin will read 60 words correctly a minute.", task: "read aloud" },
  ...{ measure: "rate", startDay: START, startScore: 40, goalDay: (START + 70) as Day, goalScore: 60 },
};
const source: ReportSource = {
  ...{ pupil: "Dunlin", from: START, to: (START + 70) as Day, standings: [], own: "" },
  ...{
    probes: weekly([40, 43, 43, 46, 48, 51, 52, 54]),
    goals: [goal],
    minutes: { planned: 600, given: 540 },
  },
};
const sectionOf = (heading: string, changes: Partial<ReportSource> = {}): readonly string[] | undefined =>
  buildReport({ ...source, ...changes }).sections.find((section) => section.heading === heading)?.sentences;

describe("a report for a family", () => {
  it("leads with what the pupil can do, in the middle of the last three days", () => {
    const [first] = buildReport(source).sections;
    expect(first).toEqual({
      heading: "What Dunlin can do",
      sentences: ["Dunlin reads 52 words a minute correctly, in contracted braille."],
    });
  });

  it("gives the goal as written, start, now, aim and verdict", () => {
    expect(sectionOf("The goal")).toEqual([
      "As it is written: “Dunlin will read 60 words correctly a minute.”",
      "At the start, on 7 Sep 2026: 40 words a minute.",
      "Now: 52 words a minute, the middle value of the last days.",
      "The goal for 16 Nov 2026: 60 words a minute.",
      FAMILY_VERDICTS["on aim"],
    ]);
  });

  it.each([
    ["too few points", [40, 41, 42]],
    ["goal met", [50, 55, 58, 60, 61, 62, 63]],
    ["below aim", [40, 40, 41, 40, 41, 40, 41, 40]],
    ["above aim", [45, 48, 51, 53, 55, 57, 58, 59]],
    ["unclear", [30, 60, 25, 65, 35, 28, 62, 30]],
  ] as const)("says %s in plain words", (verdict, scores) => {
    expect(sectionOf("The goal", { probes: weekly(scores) })?.at(-1)).toBe(FAMILY_VERDICTS[verdict]);
  });

  it("uses no jargon and no levels, and holds its cautions", () => {
    const text = formatReport(buildReport(source));
    expect(text).not.toMatch(/interval|%|frustration|trend|median|verdict|aim\b/i);
    expect(text).toContain("not for deciding who may have support, and they are no diagnosis");
  });

  it("tells of no other pupil, nor of days after the period", () => {
    const plover = weekly([90, 91], { pupil: "Plover" });
    const later = weekly([99], { day: (START + 100) as Day });
    const report = buildReport({
      ...source,
      probes: [...source.probes, ...plover, ...later],
      goals: [goal, { ...goal, pupil: "Plover", text: "Plover will read." }],
    });
    expect(report.sections).toEqual(buildReport(source).sections);
    expect(report.chart?.series.points).toHaveLength(8);
  });

  it("draws the period without trend and interval", () => {
    const chart = buildReport({ ...source, from: (START + 14) as Day }).chart;
    expect(chart?.series.points).toHaveLength(6);
    expect(chart?.trend).toBeUndefined();
    expect(chart?.aimLine?.toValue).toBe(60);
  });

  it("stands without a goal, without a probe, without lessons", () => {
    expect(sectionOf("The goal", { goals: [] })).toEqual(["No goal is written down for this yet."]);
    const bare = buildReport({ ...source, probes: [], goals: [], minutes: { given: 0 } });
    expect(bare.chart).toBeUndefined();
    expect(bare.sections.map(({ heading }) => heading)).toEqual([
      "What Dunlin can do",
      "Please keep in mind",
    ]);
  });

  it("says that checks go on while a goal is still ahead", () => {
    const to = (START + 60) as Day;
    expect(sectionOf("What is next", { to })).toEqual([
      "Short checks go on until the day of the goal, 16 Nov 2026.",
    ]);
    expect(sectionOf("What is next")).toBeUndefined();
  });

  it("names signs mastered in the period, and what is still growing, reading and writing apart", () => {
    const knowledge = {} as SignStanding["reading"]["knowledge"];
    const wayOf = (state: SignStanding["reading"]["state"], masteredOn?: Day) => ({
      ...{ state, knowledge },
      ...(masteredOn === undefined ? {} : { masteredOn }),
    });
    const standing = (name: string, reading: SignStanding["reading"], writing: SignStanding["writing"]) => {
      const sign = findContraction(name);
      if (sign === undefined) throw new TypeError(name);
      return { sign, reading, writing, taught: (START - 30) as Day };
    };
    const standings = [
      standing("ch", wayOf("mastered", (START + 9) as Day), wayOf("growing")),
      standing("sh", wayOf("mastered", (START - 9) as Day), wayOf("mastered", (START + 20) as Day)),
      standing("ou", wayOf("check again", (START - 40) as Day), wayOf("taught")),
      standing("ow", wayOf("taught"), wayOf("taught")),
    ];
    expect(sectionOf("What Dunlin can do", { standings })?.at(-1)).toBe(
      "Dunlin has mastered 2 signs in reading and 1 sign in writing.",
    );
    expect(sectionOf("Signs mastered since 7 Sep 2026", { standings })).toEqual([
      "In reading: ch.",
      "In writing: sh.",
    ]);
    expect(sectionOf("What is next", { standings })).toEqual([
      "More practice with ch.",
      "A short check whether these are still known: ou.",
    ]);
  });

  it("says minutes, her own sentences, and shares as so many of a hundred", () => {
    expect(sectionOf("Lessons")).toEqual(["600 minutes of lessons were planned, and 540 were given."]);
    expect(sectionOf("From the teacher", { own: " =A fine term. " })).toEqual(["=A fine term."]);
    const [timed] = weekly([0], { words: 20, errors: 1 });
    const probes = timed === undefined ? [] : [{ ...timed, seconds: 0 as Seconds }];
    expect(sectionOf("What Dunlin can do", { probes, goals: [] })).toEqual([
      "Dunlin reads 95 of every 100 words right, in contracted braille.",
    ]);
  });
});

describe("the period of a report", () => {
  it("begins with the goal under way that began last, else ten weeks back", () => {
    const later = { ...goal, startDay: (START + 7) as Day };
    expect(usualStart([goal, later], (START + 30) as Day)).toBe(START + 7);
    expect(usualStart([goal], (START + 300) as Day)).toBe(START + 230);
  });
});

describe("names of other pupils", () => {
  it.each([
    ["She reads with Heron.", ["Heron"]],
    ["HERON's book", ["Heron"]],
    ["The heronry", []],
    ["Dunlin reads.", []],
  ])("are found in “%s” as whole words", (text, found) => {
    expect(findOtherPupils(text, ["Heron", "Dunlin"], "Dunlin")).toEqual(found);
  });
});

describe("names in a row", () => {
  it.each([
    [[], ""],
    [["ch"], "ch"],
    [["ch", "sh"], "ch and sh"],
    [["ch", "sh", "th"], "ch, sh and th"],
  ])("%j are joined as %s", (names, joined) => {
    expect(joinNames(names)).toBe(joined);
  });
});
