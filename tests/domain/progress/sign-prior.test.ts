import { describe, expect, it } from "vitest";
import { difficultyOf, HARDEST } from "../../../src/domain/contraction/difficulty";
import { CONTRACTIONS } from "../../../src/domain/contraction/inventory";
import { PLAIN_SIGNS } from "../../../src/domain/contraction/sign";
import { KNOWLEDGE_SETTINGS } from "../../../src/domain/progress/knowledge-settings";
import { expectedShare } from "../../../src/domain/progress/sign-belief";
import { priorOn, type SignBackground } from "../../../src/domain/progress/sign-prior";
import type { Day } from "../../../src/domain/units";

const DAY = 46_000 as Day;
const expected = (background: Partial<SignBackground>, days = 0): number =>
  expectedShare(priorOn({ sign: "ch", difficulty: 0, ...background }, DAY + days));

describe("what is expected of a sign before anything was seen (settings: our choice, no source)", () => {
  it.each([
    { name: "never taught", background: {}, days: 0, share: 0.1 },
    { name: "to be taught tomorrow", background: { taught: (DAY + 1) as Day }, days: 0, share: 0.1 },
    { name: "taught today", background: { taught: DAY }, days: 0, share: 0.5 },
    { name: "taught four weeks ago", background: { taught: DAY }, days: 28, share: 0.675 },
    { name: "taught long ago", background: { taught: "earlier" as const }, days: 0, share: 0.85 },
    {
      name: "of the hardest kind, taught long ago",
      background: { taught: "earlier" as const, difficulty: HARDEST },
      days: 0,
      share: 0.65,
    },
  ])("$name: $share", ({ background, days, share }) => {
    expect(expected(background, days)).toBeCloseTo(share, 12);
  });

  it("weighs as much as one direct answer", () => {
    const { right, wrong } = priorOn({ sign: "ch", difficulty: 2, taught: "earlier" }, DAY);
    expect(right + wrong).toBeCloseTo(KNOWLEDGE_SETTINGS.priorWeight, 12);
  });

  it("has no kind harder than the hardest", () => {
    const difficulties = [...CONTRACTIONS, ...PLAIN_SIGNS].map(difficultyOf);
    expect(Math.max(...difficulties)).toBe(HARDEST);
    expect(Math.min(...difficulties)).toBe(0);
  });
});
