import { describe, expect, it } from "vitest";
import {
  chanceToPass,
  checkCriterion,
  DEFAULT_CRITERION,
  findMastery,
  type Mastery,
  type MasteryCriterion,
} from "../../../src/domain/progress/mastery";
import { listMaintenanceChecks } from "../../../src/domain/progress/mastery-checks";
import type { Day } from "../../../src/domain/units";
import checks from "../../check-values/mastery.json";

/** Ten opportunities a day, on every seventh day from day 7 on. */
const weekly = (
  correct: readonly number[],
  step = 7,
): { day: Day; correct: number; opportunities: number }[] =>
  correct.map((right, i) => ({ day: (step * (i + 1)) as Day, correct: right, opportunities: 10 }));
const masteryOf = (correct: readonly number[], criterion: Partial<MasteryCriterion> = {}): Mastery => {
  const result = findMastery(weekly(correct), { ...DEFAULT_CRITERION, ...criterion });
  if (!result.ok) throw new Error(result.fault.message);
  return result.value;
};
const THREE_OF_FIVE = { met: 3, of: 5 };

// This project's rule: the page on probes and progress, "Mastery".
describe("mastery", () => {
  it.each([
    { about: "three in a row at 80 %", correct: [8, 8, 8], week: 3 },
    { about: "two in a row", correct: [8, 8], week: undefined },
    { about: "a miss in between starts again", correct: [8, 8, 7, 8, 8, 8], week: 6 },
    { about: "the first time counts, later misses or not", correct: [8, 9, 10, 2, 9, 9, 9], week: 3 },
    { about: "three of five with two misses", correct: [8, 7, 8, 7, 8], criterion: THREE_OF_FIVE, week: 5 },
    { about: "three of five by the third", correct: [8, 8, 8], criterion: THREE_OF_FIVE, week: 3 },
    {
      about: "three of six are not three of five",
      correct: [8, 7, 7, 8, 7, 8],
      criterion: THREE_OF_FIVE,
      week: undefined,
    },
    { about: "a share of 0.9", correct: [8, 9, 9, 9], criterion: { share: 0.9 }, week: 4 },
    {
      about: "a share of 0.7, though 0.7 × 10 is more than 7 in binary",
      correct: [7, 7, 7],
      criterion: { share: 0.7 },
      week: 3,
    },
    { about: "the best share", correct: [10, 10, 10], criterion: { share: 1 }, week: 3 },
    {
      about: "twenty opportunities pool two weeks",
      correct: [9, 7, 9, 7, 9, 7],
      criterion: { least: 20 },
      week: 6,
    },
    { about: "nothing tried", correct: [], week: undefined },
  ])("$about", ({ correct, criterion, week }) => {
    expect(masteryOf(correct, criterion).masteredOn).toBe(week === undefined ? undefined : 7 * week);
  });

  it("says how many of the last occasions reached the share", () => {
    expect(masteryOf([8, 7, 9, 10]).lately).toEqual({ reached: 2, of: 3 });
    expect(masteryOf([8]).lately).toEqual({ reached: 1, of: 1 });
  });

  it.each([
    { about: "a share of 0", bad: { share: 0 } },
    { about: "a share in percent", bad: { share: 80 } },
    { about: "no run", bad: { met: 0, of: 0 } },
    { about: "five of three", bad: { met: 5, of: 3 } },
    { about: "half an occasion", bad: { met: 2.5, of: 3 } },
    { about: "no opportunities", bad: { least: 0 } },
  ])("$about is no criterion", ({ bad }) => {
    expect(checkCriterion({ ...DEFAULT_CRITERION, ...bad })).toMatchObject({
      ok: false,
      fault: { code: "impossible-number" },
    });
  });
});

describe("the chance to pass a criterion at a true accuracy", () => {
  const CRITERIA = {
    "P(at least 8 of 10)": { share: 0.8, met: 1, of: 1, least: 10 },
    "P(at least 9 of 10)": { share: 0.9, met: 1, of: 1, least: 10 },
    "P(at least 4 of 5)": { share: 0.8, met: 1, of: 1, least: 5 },
    "P(at least 18 of 20)": { share: 0.9, met: 1, of: 1, least: 20 },
    "P(at least 19 of 20)": { share: 0.95, met: 1, of: 1, least: 20 },
    "3 consecutive sessions of 8/10": { share: 0.8, met: 3, of: 3, least: 10 },
    "3 of last 5 sessions of 8/10": { share: 0.8, met: 3, of: 5, least: 10 },
  } as const;

  it.each(Object.entries(checks.chances))("of %s", (accuracy, expected) => {
    for (const [name, criterion] of Object.entries(CRITERIA)) {
      expect(chanceToPass(criterion, Number(accuracy)), name).toBeCloseTo(
        expected[name as keyof typeof CRITERIA],
        12,
      );
    }
  });
});

describe("maintenance checks", () => {
  const listed = (correct: readonly number[]): unknown[] =>
    listMaintenanceChecks(masteryOf(correct)).map(({ weeks, due, occasion, kept }) => [
      weeks,
      due / 7,
      occasion && occasion.day / 7,
      kept,
    ]);

  it("fall due two and six weeks after mastery", () => {
    expect(listed([8, 8, 8])).toEqual([
      [2, 5, undefined, undefined],
      [6, 9, undefined, undefined],
    ]);
  });

  it("are the first occasions from then on", () => {
    expect(listed([8, 8, 8, 2, 9, 1, 1, 1, 7])).toEqual([
      [2, 5, 5, true],
      [6, 9, 9, false],
    ]);
  });

  it("do not share one late occasion", () => {
    const late = [...weekly([8, 8, 8]), { day: 70 as Day, correct: 9, opportunities: 10 }];
    const mastery = findMastery(late);
    if (!mastery.ok) throw new Error(mastery.fault.message);
    const [first, second] = listMaintenanceChecks(mastery.value);
    expect(first).toMatchObject({ kept: true, occasion: { day: 70 } });
    expect(second).not.toHaveProperty("occasion");
  });

  it("are none before mastery", () => expect(listed([8, 8])).toEqual([]));
});

/** Bayesian knowledge tracing (Corbett & Anderson 1995, from memory), which this project does not use. */
const trace = (
  { L0, T, S, G, F = 0 }: { L0: number; T: number; S: number; G: number; F?: number },
  answers: readonly number[],
): number[] => {
  let known = L0;
  return answers.map((right) => {
    const seen = right === 1 ? known * (1 - S) : known * S;
    const unseen = right === 1 ? (1 - known) * G : (1 - known) * (1 - G);
    const posterior = seen / (seen + unseen);
    known = posterior * (1 - F) + (1 - posterior) * T;
    return known;
  });
};

describe("knowledge tracing, the usual alternative", () => {
  const { bkt_baker_slide_params, bkt_yudelson_params, bkt_forget } = checks.knowledgeTracing;

  it("is understood: the public teaching example gives .28 .6188 .8653 .7360 .5600", () => {
    const steps = trace(bkt_baker_slide_params, [0, 1, 1, 0, 0]);
    bkt_baker_slide_params.rows.forEach(({ next }, i) => expect(steps[i]).toBeCloseTo(next, 12));
    const second = trace(
      { L0: 0.5, T: 0.4, S: 0.2, G: 0.2 },
      bkt_yudelson_params.rows.map(({ obs }) => obs),
    );
    bkt_yudelson_params.rows.forEach(({ next }, i) => expect(second[i]).toBeCloseTo(next, 12));
    const forgetting = trace(
      bkt_forget,
      bkt_forget.rows.map(([obs = NaN]) => obs),
    );
    bkt_forget.rows.forEach(([, , , next = NaN], i) => expect(forgetting[i]).toBeCloseTo(next, 12));
  });

  it.each(checks.streaks)(
    "claims mastery after $consecutive_correct_to_95 right answers (L0 $L0, T $T, S $S, G $G), where ours says not yet",
    ({ consecutive_correct_to_95: needed, ...parameters }) => {
      const steps = trace(parameters, new Array<number>(needed).fill(1));
      expect(steps.at(-1)).toBeGreaterThanOrEqual(0.95);
      expect(steps.at(-2)).toBeLessThan(0.95);
      const few = findMastery([{ day: 7 as Day, correct: needed, opportunities: needed }]);
      expect(few.ok && few.value.masteredOn).toBeUndefined();
    },
  );
});
