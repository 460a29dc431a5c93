import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { estimateKnowledge, trackKnowledge } from "../../../src/domain/progress/knowledge";
import type { DirectEvidence, WordEvidence } from "../../../src/domain/progress/knowledge-evidence";
import { KNOWLEDGE_SETTINGS } from "../../../src/domain/progress/knowledge-settings";
import { estimateKnown } from "../../../src/domain/progress/mastery-estimate";
import type { SignBackground } from "../../../src/domain/progress/sign-prior";
import type { Day } from "../../../src/domain/units";

const FIRST = 46_000;
const dayOf = (week: number): Day => (FIRST + 7 * week) as Day;
const word = (week: number, signs: string, isRight: boolean): WordEvidence => ({
  day: dayOf(week),
  signs: signs.split(" "),
  isRight,
});
const right = (week: number, signs: string): WordEvidence => word(week, signs, true);
const missed = (week: number, signs: string): WordEvidence => word(week, signs, false);
const times = <T>(count: number, item: T): readonly T[] => Array.from({ length: count }, () => item);
const trial = (week: number, sign: string, correct: number, opportunities: number): DirectEvidence => ({
  day: dayOf(week),
  sign,
  correct,
  opportunities,
});

const LONG_TAUGHT: readonly SignBackground[] = ["ch", "a", "t", "ou"].map((sign) => ({
  sign,
  difficulty: 1,
  taught: "earlier",
}));
const FRESH: readonly SignBackground[] = LONG_TAUGHT.map((background) =>
  background.sign === "ch" ? { ...background, taught: dayOf(0) } : background,
);

const know = (
  words: readonly WordEvidence[],
  {
    direct = [] as readonly DirectEvidence[],
    week = 0,
    backgrounds = FRESH,
    settings = KNOWLEDGE_SETTINGS,
  } = {},
) => {
  const known = estimateKnowledge({ words, direct }, backgrounds, dayOf(week), settings);
  return (sign: string) => {
    const found = known.find((one) => one.sign === sign);
    if (found === undefined) throw new Error(`nothing said of ${sign}`);
    return found;
  };
};

describe("knowledge of signs from whole words", () => {
  it("blames a missed word on its shakiest sign", () => {
    const before = know([]);
    const after = know([missed(0, "ch a t")]);
    const fall = (sign: string): number => before(sign).expected - after(sign).expected;
    expect(fall("ch")).toBeGreaterThan(fall("a"));
    expect(fall("a")).toBeGreaterThan(0);
    expect(fall("ou")).toBe(0);
  });

  it("clears the signs that other words of the day show, whatever the order of the rows", () => {
    const rows = [missed(0, "ch a t"), ...times(6, right(0, "a t"))];
    const alone = know([missed(0, "ch a t")]);
    const cleared = know(rows);
    expect(cleared("ch").expected).toBeLessThan(alone("ch").expected);
    expect(cleared("a").expected).toBeGreaterThan(0.85);
    fc.assert(
      fc.property(fc.shuffledSubarray(rows, { minLength: rows.length }), (shuffled) => {
        expect(know(shuffled)("ch")).toEqual(cleared("ch"));
        expect(know(shuffled)("a")).toEqual(cleared("a"));
      }),
    );
  });

  it.each([
    { name: "ten words right", words: times(10, right(0, "ch a")), state: "probably known" },
    { name: "ten words missed", words: times(10, missed(0, "ch a")), state: "probably not known" },
    { name: "one word right", words: [right(0, "ch a")], state: "not settled" },
    { name: "words without it", words: [right(0, "a t")], state: "nothing seen" },
  ])("after $name says $state", ({ words, state }) => {
    expect(know(words)("ch").state).toBe(state);
  });

  it("never says mastered, however much is right", () => {
    expect(know(times(500, right(0, "ch")), { direct: [trial(0, "ch", 50, 50)] })("ch").state).toBe(
      "probably known",
    );
  });

  it("counts words and opportunities, and notes the last day with the sign", () => {
    const known = know([right(0, "ch a ch"), missed(1, "a t")], { direct: [trial(2, "ch", 3, 4)], week: 3 });
    expect(known("ch")).toMatchObject({ words: 1, opportunities: 4, lastSeen: dayOf(2) });
    expect(known("a")).toMatchObject({ words: 2, opportunities: 0, lastSeen: dayOf(1) });
    expect(known("ou")).toMatchObject({ words: 0, opportunities: 0, state: "nothing seen" });
    expect(known("ou")).not.toHaveProperty("lastSeen");
  });

  it("counts direct answers as KNOWN does, where the beliefs beforehand are the same", () => {
    const rows = [trial(0, "ch", 6, 10), trial(1, "ch", 8, 10), trial(4, "ch", 9, 10)];
    const settings = { ...KNOWLEDGE_SETTINGS, priorWeight: 2, settled: 0.5, hardestBelow: 0 };
    const { belief, low, high } = know([], { direct: rows, week: 6, backgrounds: LONG_TAUGHT, settings })(
      "ch",
    );
    const known = estimateKnown(rows, dayOf(6));
    if (!known.ok) throw new Error(known.fault.message);
    expect(belief.right).toBeCloseTo(known.value.belief.right, 10);
    expect(belief.wrong).toBeCloseTo(known.value.belief.wrong, 10);
    expect([low, high]).toEqual([known.value.low, known.value.high]);
  });

  it("forgets towards what is believed beforehand, and grows less sure", () => {
    const words = times(10, right(0, "ou a"));
    const [now, later, muchLater] = trackKnowledge({ words, direct: [] }, FRESH, [
      dayOf(0),
      dayOf(8),
      dayOf(300),
    ]);
    const [ou, ouLater, ouMuchLater] = [now, later, muchLater].map((known) => known?.[3]);
    expect(ouLater?.expected).toBeLessThan(ou?.expected ?? 0);
    expect((ouLater?.high ?? 0) - (ouLater?.low ?? 0)).toBeGreaterThan((ou?.high ?? 0) - (ou?.low ?? 0));
    expect(ouMuchLater?.expected).toBeCloseTo(know([], { week: 300 })("ou").expected, 6);
  });

  it("starts a sign anew on the day that it is taught, what was seen before kept", () => {
    const backgrounds = LONG_TAUGHT.map((one) => (one.sign === "ch" ? { ...one, taught: dayOf(1) } : one));
    const asked = { backgrounds, week: 1 };
    expect(know([], { ...asked, week: 0 })("ch").expected).toBeCloseTo(0.1, 12);
    const nothing = know([], asked)("ch").expected;
    expect(know([missed(0, "ch")], asked)("ch").expected).toBeLessThan(nothing);
    expect(know(times(8, right(0, "ch")), asked)("ch").expected).toBeGreaterThan(nothing);
  });

  it("leaves out what came after the day asked about", () => {
    expect(know([right(1, "ch a")])("ch")).toEqual(know([])("ch"));
  });

  it("is the same for every day, asked at once or one by one, in any order", () => {
    const words = [right(0, "ch a"), missed(1, "ch t"), right(3, "ou t")];
    const days = [dayOf(3), dayOf(0), dayOf(1), dayOf(0)];
    expect(trackKnowledge({ words, direct: [] }, FRESH, days)).toEqual(
      days.map((day) => estimateKnowledge({ words, direct: [] }, FRESH, day)),
    );
  });

  it("takes signs that nothing is asked about as known", () => {
    expect(know([missed(0, "ch capital")])("ch")).toEqual(know([missed(0, "ch")])("ch"));
  });

  it("keeps every figure a share, with the expected one inside its interval", () => {
    const rows = fc.array(
      fc.record({
        week: fc.integer({ min: 0, max: 60 }),
        signs: fc.subarray(["ch", "a", "t", "ou"], { minLength: 1 }),
        isRight: fc.boolean(),
      }),
      { maxLength: 60 },
    );
    fc.assert(
      fc.property(rows, (drawn) => {
        const words = drawn.map(({ week, signs, isRight }) => ({ day: dayOf(week), signs, isRight }));
        for (const { expected, low, high, chanceKnown } of estimateKnowledge(
          { words, direct: [] },
          FRESH,
          dayOf(60),
        )) {
          expect(low).toBeGreaterThanOrEqual(0);
          expect(high).toBeLessThanOrEqual(1);
          expect(expected).toBeGreaterThan(low);
          expect(expected).toBeLessThan(high);
          expect(chanceKnown).toBeGreaterThanOrEqual(0);
          expect(chanceKnown).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 50 },
    );
  });

  it.each([
    { name: "a day that is no number", words: [{ ...right(0, "ch"), day: Number.NaN as Day }], direct: [] },
    { name: "more right than asked", words: [], direct: [trial(0, "ch", 5, 4)] },
    { name: "a count below 0", words: [], direct: [trial(0, "ch", -1, 4)] },
  ])("throws for $name, which records never give", ({ words, direct }) => {
    expect(() => know(words, { direct })).toThrow(RangeError);
  });
});
