import { describe, expect, it } from "vitest";
import { dayOf } from "../../../src/domain/calendar";
import { buildCaseload, type CaseloadRecords } from "../../../src/domain/caseload/caseload";
import { countByVerdict, SUPPRESSED, tabulateCaseload } from "../../../src/domain/caseload/coordinator";
import { HELD, parseHeld, type Held, type Lesson } from "../../../src/domain/caseload/lesson";
import { sumMinutes } from "../../../src/domain/caseload/minutes";
import { mondayOf } from "../../../src/domain/caseload/week";
import type { Verdict } from "../../../src/domain/progress/verdict";
import type { Day } from "../../../src/domain/units";
import { goalOf, probeOf, START, weeklyProbes } from "../progress/probes";

const source = { sheet: "S", row: 2 };
const NOTHING: CaseloadRecords = { probes: [], goals: [], taught: [], pupils: [], lessons: [] };
const day = (offset: number): Day => (START + offset) as Day;

const lesson = (offset: number, minutes: number, held: Held = "yes", pupil = "Heron"): Lesson => ({
  day: day(offset),
  pupil,
  minutes,
  held,
  source,
});

describe("one line a pupil", () => {
  it("of every record, whatever the spelling, and nothing after the day", () => {
    const lines = buildCaseload(
      {
        ...NOTHING,
        pupils: [{ pupil: "Heron", teacher: "Tern", code: "contracted", source }],
        probes: [probeOf({ pupil: " heron", rate: 40 }), probeOf({ rate: 90, day: START + 30 })],
        goals: [goalOf({ pupil: "Plover" })],
        lessons: [lesson(0, 30, "yes", "Dunlin")],
      },
      day(3),
    );
    expect(lines.map(({ pupil }) => pupil).sort()).toEqual(["Dunlin", "Heron", "Plover"]);
    const heron = lines.find(({ pupil }) => pupil === "Heron");
    expect(heron).toMatchObject({ teacher: "Tern", code: "contracted", lastProbe: START, daysSince: 3 });
    expect(heron?.spark).toEqual([{ day: START, value: 40 }]);
  });

  it("leaves supported probes out of the small chart, one value a day", () => {
    const probes = [
      probeOf({ rate: 40 }),
      probeOf({ rate: 44 }),
      probeOf({ rate: 90, day: START + 1, support: "prompted" }),
    ];
    expect(buildCaseload({ ...NOTHING, probes }, day(3))[0]?.spark).toEqual([{ day: START, value: 42 }]);
  });
});

describe("needs", () => {
  const needsOf = (records: Partial<CaseloadRecords>, asOf: Day): (string | undefined)[] =>
    buildCaseload({ ...NOTHING, ...records }, asOf)[0]?.needs.map(({ kind }) => kind) ?? [];
  const flat = weeklyProbes(Array.from({ length: 10 }, (_, week) => 20 + (week % 2)));
  const growing = weeklyProbes(Array.from({ length: 10 }, (_, week) => 22 + 2 * week));

  it.each([
    ["below the aim line", { probes: flat, goals: [goalOf()] }, day(71), ["below aim"]],
    ["on the aim line, probed this week", { probes: growing, goals: [goalOf()] }, day(71), []],
    ["a week without a probe", { probes: growing, goals: [goalOf()] }, day(77), ["probe due"]],
    ["two weeks without a probe", { probes: growing, goals: [goalOf()] }, day(84), ["no probe", "probe due"]],
    ["no goal", { probes: growing }, day(71), ["no goal"]],
    ["few probes", { probes: growing.slice(0, 3), goals: [goalOf()] }, day(22), ["unclear"]],
    [
      "a goal whose date is past",
      { probes: growing, goals: [goalOf({ goalDay: day(60) })] },
      day(71),
      undefined,
    ],
  ] as const)("%s", (_, records, asOf, expected) => {
    const needs = needsOf(records, asOf);
    if (expected) expect(needs).toEqual(expected);
    else expect(needs).toContain("goal over");
  });

  it("name the signs that are due for a check, the longest waiting first", () => {
    const sign = (name: string, offset: number) => ({
      pupil: "Heron",
      sign: name,
      checkAgain: day(offset),
      source,
    });
    const [line] = buildCaseload(
      {
        ...NOTHING,
        probes: growing,
        goals: [goalOf()],
        taught: [sign("ea", 70), sign("ch", 60), sign("st", 90)],
      },
      day(71),
    );
    expect(line?.checksDue.map(({ sign: name }) => name)).toEqual(["ch", "ea"]);
    expect(line?.needs).toEqual([{ kind: "checks due", sentence: "2 signs due for a check: ch, ea." }]);
  });

  it("order the pupils, the most pressing first", () => {
    const named = (pupil: string, probes: typeof flat) => probes.map((probe) => ({ ...probe, pupil }));
    const lines = buildCaseload(
      {
        ...NOTHING,
        probes: [
          ...named("Avocet", growing),
          ...named("Plover", growing.slice(0, 8)),
          ...named("Dunlin", flat),
        ],
        goals: ["Avocet", "Plover", "Dunlin"].map((pupil) => goalOf({ pupil })),
      },
      day(71),
    );
    expect(lines.map(({ pupil }) => pupil)).toEqual(["Dunlin", "Plover", "Avocet"]);
  });
});

describe("minutes", () => {
  it("are given where the lesson was held, planned for each week with a lesson noted", () => {
    // 2 September 2026 is a Wednesday: the days belong to three weeks, one of them closed.
    const lessons = [
      lesson(0, 45),
      lesson(1, 30, "pupil absent"),
      lesson(7, 40),
      lesson(14, 0, "school closed"),
    ];
    expect(sumMinutes(lessons, 60, day(0), day(20))).toEqual({ planned: 120, given: 85 });
    expect(sumMinutes(lessons, undefined, day(0), day(6))).toEqual({ given: 45 });
  });

  it("of this week stand beside the plan, and too few in the period are a need", () => {
    const [line] = buildCaseload(
      {
        ...NOTHING,
        pupils: [{ pupil: "Heron", minutesPlanned: 60, source }],
        lessons: [lesson(0, 45), lesson(7, 20)],
      },
      day(8),
    );
    expect(line?.week).toEqual({ planned: 60, given: 20 });
    expect(line?.needs.at(-1)).toEqual({
      kind: "minutes short",
      sentence: "65 of 120 planned minutes were given in the period.",
    });
  });

  it.each([
    [2026, 11, 22, 16],
    [2026, 11, 23, 23],
    [2026, 11, 25, 23],
  ])("the week of %i-%i-%i begins on Monday the %i", (year, month, date, monday) => {
    const at = dayOf({ year, month, date });
    expect(at && mondayOf(at)).toBe(dayOf({ year, month, date: monday }));
  });

  it.each([
    ["Yes", "yes"],
    ["✓", "yes"],
    ["absent - ill", "pupil absent"],
    ["pupil absent", "pupil absent"],
    ["Teacher absent", "teacher absent"],
    ["snow day", "school closed"],
    ["n", "no"],
    ["perhaps", undefined],
  ])("held %s is %s", (text, held) => {
    expect(parseHeld(text)).toBe(held);
  });

  it("every answer is understood as itself", () => {
    expect(HELD.map(parseHeld)).toEqual(HELD);
  });
});

describe("for a coordinator", () => {
  const lines = (verdicts: readonly Verdict[]) =>
    verdicts.map((verdict, place) => ({
      ...(buildCaseload({ ...NOTHING, probes: [probeOf({ pupil: `P${place}`, rate: 40 })] }, day(1))[0] ??
        never()),
      verdict,
    }));
  const never = (): never => {
    throw new Error("no line");
  };
  const times = (count: number, verdict: Verdict): Verdict[] => Array.from({ length: count }, () => verdict);

  it.each([
    ["groups of five or more are counted", [...times(6, "on aim"), ...times(5, "below aim")], [6, 5, 11]],
    [
      "groups under five are not",
      [...times(6, "on aim"), ...times(2, "unclear"), ...times(3, "below aim")],
      [6, SUPPRESSED, SUPPRESSED, 11],
    ],
    [
      "one small group hides the next, or it could be told from the total",
      [...times(9, "on aim"), ...times(6, "goal met"), ...times(2, "unclear")],
      [9, SUPPRESSED, SUPPRESSED, 17],
    ],
    ["nor is a caseload under five", times(4, "on aim"), [SUPPRESSED, SUPPRESSED]],
  ])("%s", (_, verdicts, expected) => {
    expect(countByVerdict(lines(verdicts)).map(({ pupils }) => pupils)).toEqual(expected);
  });

  it("a row a pupil, and no row for all", () => {
    const caseload = buildCaseload(
      {
        ...NOTHING,
        probes: weeklyProbes([20, 21, 22]),
        goals: [goalOf({ text: "Reads" })],
        pupils: [{ pupil: "Heron", teacher: "Tern", minutesPlanned: 60, source }],
      },
      day(22),
    );
    expect(tabulateCaseload(caseload, day(10))).toEqual([
      ["Heron", "Tern", "Reads", "20", "22", "60", "20 Jan 2027", "too few points", 2, 0, 0, "23 Sep 2026"],
    ]);
  });
});
