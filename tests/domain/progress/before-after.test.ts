import { describe, expect, it } from "vitest";
import {
  compareFurther,
  comparePhases,
  compareScores,
  computeNap,
} from "../../../src/domain/progress/before-after";
import { splitPhases } from "../../../src/domain/progress/phases";
import { buildSeries } from "../../../src/domain/progress/series";
import checks from "../../check-values/single-case.json";
import { probeOf, START } from "./probes";

const { before, after, computed } = checks.cases.PVD2011;

describe("before and after a change", () => {
  it("is medians, ranges, NAP and percentage change: Parker, Vannest & Davis 2011", () => {
    const compared = compareScores(before, after);
    if (!compared.ok) throw new Error(compared.fault.message);
    expect(compared.value.before).toEqual({ count: 6, median: 22.5, lowest: 20, highest: 26 });
    expect(compared.value.after).toEqual({ count: 7, median: 28, lowest: 24, highest: 30 });
    const { nap, low, high } = compared.value.nap;
    expect(nap).toBeCloseTo(38.5 / 42, 12);
    expect([low, high].map((limit) => limit.toFixed(4))).toEqual(["0.5973", "0.9860"]);
    const { change } = compared.value;
    expect(change.ok && change.value.percent).toBeCloseTo(100 * Math.expm1(computed.LRR_bias_corrected), 8);
  });

  it("gives the variants of Tau with what they divide by, and PND, where asked for", () => {
    const { taus, pnd } = compareFurther(before, after);
    expect(taus.map(({ variant, s, denominator }) => [variant, s, denominator])).toEqual([
      ["A vs. B", 35, 42],
      ["A vs. B less trend in A", 31, 42],
      ["A vs. B less trend in A, over both kinds of pairs", 31, 57],
      ["A vs. B with trend in B", 43, 63],
      ["A vs. B with trend in B less trend in A", 39, 78],
    ]);
    expect(pnd).toBeCloseTo(5 / 7, 12);
  });

  it("keeps NAP where zeros leave no percentage", () => {
    const compared = compareScores([0, 0, 0], [3, 4]);
    expect(compared).toMatchObject({
      ok: true,
      value: { nap: { nap: 1 }, change: { ok: false, fault: { code: "zero-mean" } } },
    });
  });

  it("turns round where lower is better", () => {
    const errors = computeNap([9, 8, 7], [3, 2], true);
    expect(errors.ok && errors.value.nap).toBe(1);
    expect(computeNap([], [1])).toMatchObject({ ok: false, fault: { code: "too-few-points" } });
  });
});

describe("by phase", () => {
  const rows = [
    { phase: "Baseline", rate: 20 },
    { phase: "", rate: 22 },
    { phase: "Drill", rate: 30, support: "prompted" },
    { phase: "Card reading", rate: 26 },
    { phase: "card reading", rate: 28 },
    { phase: "Twice a week", rate: 31 },
  ].map((row, i) => probeOf({ ...row, day: START + 7 * i }));
  const stretches = splitPhases(buildSeries(rows)[0]?.points ?? []);

  it("compares each phase with the one before it, blank phases going on, supported probes left out", () => {
    const compared = comparePhases(stretches);
    expect(compared.map(({ beforeName, afterName }) => `${beforeName} → ${afterName}`)).toEqual([
      "Baseline → Card reading",
      "Card reading → Twice a week",
    ]);
    expect(compared[0]).toMatchObject({
      before: { count: 2, median: 21 },
      after: { count: 2, median: 27 },
      nap: { nap: 1 },
    });
    expect(compared[1]?.change).toMatchObject({ ok: false, fault: { code: "too-few-points" } });
  });

  it("has nothing to compare in one phase", () => expect(comparePhases(stretches.slice(0, 1))).toEqual([]));
});
