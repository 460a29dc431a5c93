import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  computeLogRatio,
  percentOfRatio,
  type LogRatio,
} from "../../../src/domain/statistics/log-response-ratio";
import { shareBeyondBest } from "../../../src/domain/statistics/non-overlapping-data";
import { errorOfNap, intervalOfNap, measureOverlap } from "../../../src/domain/statistics/overlap";
import { standardiseDifference } from "../../../src/domain/statistics/standardised-difference";
import { computeCorrectedTau, computeTaus } from "../../../src/domain/statistics/tau";
import checks from "../../check-values/single-case.json";

const cases = Object.entries(checks.cases).map(([name, one]) => ({ name, ...one }));
const close = (value: number | null | undefined, expected: number, digits = 10): void =>
  expect(value ?? NaN, String(expected)).toBeCloseTo(expected, digits);
const ratioOf = (before: readonly number[], after: readonly number[]): LogRatio => {
  const ratio = computeLogRatio(before, after);
  if (!ratio.ok) throw new Error(ratio.fault.message);
  return ratio.value;
};

/**
 * Where the file and the R package differ from us: a straight trend makes some scores exactly equal, which binary
 * rounding there tells apart. These are worked out in exact fractions (Python): S = 12 and S = −10.
 */
const EXACT_CORRECTED: Readonly<Record<string, { readonly tauB: number; readonly nonOverlap: number }>> = {
  PVD2011: { tauB: 12 / Math.sqrt((78 - 36) * (78 - 1)), nonOverlap: 12 / 42 },
  PVDS2011_bob: { tauB: -10 / Math.sqrt((36 - 16) * (36 - 2)), nonOverlap: -10 / 20 },
};

describe.each(cases)("$name ($source)", ({ name, before, after, lowerIsBetter, computed, r }) => {
  it("NAP and its error, as by the R package", () => {
    const { nap } = measureOverlap(before, after, lowerIsBetter);
    close(nap, computed.NAP);
    close(nap, r.NAP);
    close(errorOfNap(before, after, lowerIsBetter), computed.NAP_SE_unbiased);
    close(errorOfNap(before, after, lowerIsBetter), r.NAP_SE);
  });

  it("the interval of NAP", () => {
    const { nap } = measureOverlap(before, after, lowerIsBetter);
    const { low, high } = intervalOfNap(nap, before.length, after.length);
    if (nap === 1) {
      // The file has the R package's trivial root [1, 1]; ours is the interior one.
      expect(computed.NAP_CI95).toEqual([1, 1]);
      // 0.642702823931043: the same equation solved by bisection in Python.
      expect([low.toFixed(4), high]).toEqual(["0.6427", 1]);
      return;
    }
    close(low, computed.NAP_CI95[0] ?? NaN);
    close(high, computed.NAP_CI95[1] ?? NaN);
    // The R package stops its search for the root at about 1e-4.
    close(low, r.NAP_lo, 3.9);
    close(high, r.NAP_hi, 3.9);
  });

  it("the variants of Tau with their denominators", () => {
    const [plain, less, lessOverBoth, withB, full] = computeTaus(before, after, lowerIsBetter);
    expect([plain?.s, plain?.denominator]).toEqual([computed.S_AB, computed.pairs_AB]);
    close(plain?.value, computed.Tau_AvsB);
    close(plain?.value, r.Tau);
    close(less?.value, computed.TauU_A_baseline_trend_denominator_mn);
    close(less?.value, r.TauU);
    close(lessOverBoth?.value, computed.TauU_A_baseline_trend_denominator_mn_plus_pairsA);
    close(withB?.value, computed.TauU_with_trendB_denominator_mn_plus_pairsB);
    close(full?.value, computed.TauU_full_A_vs_B_plus_trendB_minus_trendA_all_pairs);
    expect(full?.denominator).toBe(computed.pairs_AB + computed.pairs_A + computed.pairs_B);
  });

  it("Tau with the baseline's trend taken out", () => {
    const corrected = computeCorrectedTau(before, after, lowerIsBetter);
    close(corrected?.slope, computed.BC.slope);
    close(corrected?.intercept, computed.BC.intercept);
    close(corrected?.uncorrected, computed.BC.tau_b_uncorrected);
    const exact = EXACT_CORRECTED[name] ?? {
      tauB: computed.BC.tau_b_corrected,
      nonOverlap: computed.BC.corrected_nonoverlap_tau,
    };
    if (exact.tauB === null) expect(corrected).not.toHaveProperty("corrected");
    else close(corrected?.corrected, exact.tauB);
    close(Math.abs(corrected?.nonOverlap ?? NaN), Math.abs(exact.nonOverlap));
  });

  it("PND and the standardised difference", () => {
    close(shareBeyondBest(before, after, lowerIsBetter), computed.PND);
    const difference = standardiseDifference(before, after, lowerIsBetter);
    close(difference?.delta, computed.SMD_glass);
    close(difference?.g, computed.SMD_g_baselineSD);
    close(difference?.g, r.SMD);
  });

  it("the log response ratio and its error", () => {
    const ratio = ratioOf(before, after);
    close(ratio.raw, computed.LRR_raw_lnMB_over_MA);
    close(ratio.corrected, computed.LRR_bias_corrected);
    close(ratio.error, computed.LRR_SE);
    // The R package turns the sign where lower is better.
    close(lowerIsBetter ? -ratio.corrected : ratio.corrected, r.LRRi);
    close(100 * Math.expm1(ratio.raw), computed.pct_change);
  });
});

const published = checks.cases;

describe("answers as they are printed in the papers", () => {
  it("Parker, Vannest & Davis 2011: NAP 38.5/42, Tau 35/42, PND 5/7", () => {
    const { before, after } = published.PVD2011;
    const overlap = measureOverlap(before, after);
    expect([overlap.better + overlap.ties / 2, overlap.pairs]).toEqual([38.5, 42]);
    expect(computeTaus(before, after)[0]).toMatchObject({ s: 35, denominator: 42 });
    expect(7 * shareBeyondBest(before, after)).toBeCloseTo(5, 12);
  });

  it("Parker, Vannest, Davis & Sauber 2011, Bob: 17 better, 1 worse, 2 ties; 16/20, 13/20, 23/30, 20/36", () => {
    const { before, after } = published.PVDS2011_bob;
    expect(measureOverlap(before, after)).toMatchObject({ better: 17, worse: 1, ties: 2, pairs: 20 });
    const [plain, less, , withB, full] = computeTaus(before, after).map(({ s, denominator }) => [
      s,
      denominator,
    ]);
    expect([plain, less, withB, full]).toEqual([
      [16, 20],
      [13, 20],
      [23, 30],
      [20, 36],
    ]);
  });

  it("the same authors' second example: Tau 16/20, less trend in A 11/20", () => {
    const { before, after } = published.PVDS2011_ex2;
    expect(computeTaus(before, after).slice(0, 2)).toMatchObject([
      { s: 16, denominator: 20 },
      { s: 11, denominator: 20 },
    ]);
  });

  it("Parker & Vannest 2009: NAP .96", () => {
    const { before, after } = published.PV2009_NAP;
    expect(measureOverlap(before, after).nap.toFixed(2)).toBe("0.96");
  });

  it("Tarlow 2017, a straight line: Tau 1, less trend in A .6, baseline-corrected 0", () => {
    const { before, after } = published.Tarlow_lin;
    expect(computeTaus(before, after)[0]?.value).toBe(1);
    expect(computeTaus(before, after)[1]?.value).toBe(0.6);
    expect(computeCorrectedTau(before, after)?.nonOverlap).toBe(0);
  });

  it("the scan package's example: uncorrected τb −.57, corrected .70", () => {
    const { before, after } = published.scan_bctau_doc;
    const corrected = computeCorrectedTau(before, after, true);
    expect([corrected?.uncorrected?.toFixed(2), corrected?.corrected?.toFixed(2)]).toEqual(["-0.57", "0.70"]);
  });
});

const scores = fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 2, maxLength: 12 });

describe("identities", () => {
  it("NAP backwards, or with lower as better, is 1 − NAP", () => {
    fc.assert(
      fc.property(scores, scores, (before, after) => {
        const { nap } = measureOverlap(before, after);
        expect(measureOverlap(after, before).nap).toBeCloseTo(1 - nap, 12);
        expect(measureOverlap(before, after, true).nap).toBeCloseTo(1 - nap, 12);
      }),
    );
  });

  it("the interval of NAP holds it, stays in 0 to 1, mirrors, and has a width", () => {
    fc.assert(
      fc.property(scores, scores, (before, after) => {
        const { nap } = measureOverlap(before, after);
        const { low, high } = intervalOfNap(nap, before.length, after.length);
        const mirror = intervalOfNap(1 - nap, before.length, after.length);
        expect(0 <= low && low <= nap && nap <= high && high <= 1).toBe(true);
        expect(high - low).toBeGreaterThan(0.05);
        expect(mirror.low).toBeCloseTo(1 - high, 9);
      }),
    );
  });

  it("Tau is 2 NAP − 1", () => {
    fc.assert(
      fc.property(scores, scores, (before, after) => {
        const [tau] = computeTaus(before, after);
        expect(tau?.value).toBeCloseTo(2 * measureOverlap(before, after).nap - 1, 12);
      }),
    );
  });

  it("a percentage change is the same in another unit", () => {
    const positive = fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 2, maxLength: 12 });
    fc.assert(
      fc.property(positive, positive, (before, after) => {
        const scaled = (values: readonly number[]): number[] => values.map((value) => value / 10);
        const change = percentOfRatio(ratioOf(before, after));
        const same = percentOfRatio(ratioOf(scaled(before), scaled(after)));
        expect(same.percent).toBeCloseTo(change.percent, 8);
        if (change.interval === undefined) return;
        expect(change.interval.low).toBeLessThan(change.percent);
        expect(change.interval.high).toBeGreaterThan(change.percent);
      }),
    );
  });
});

describe("what cannot be said", () => {
  it.each([
    { about: "one score before", before: [3], after: [4, 5], code: "too-few-points" },
    { about: "all zeros before", before: [0, 0], after: [4, 5], code: "zero-mean" },
    { about: "all zeros after", before: [4, 5], after: [0, 0], code: "zero-mean" },
    { about: "a score below 0", before: [4, -5], after: [1, 2], code: "negative-score" },
  ])("$about: no percentage change", ({ before, after, code }) => {
    expect(computeLogRatio(before, after)).toMatchObject({ ok: false, fault: { code } });
  });

  it("scores that never vary have a change without an interval", () => {
    expect(percentOfRatio(ratioOf([20, 20], [30, 30]))).toEqual({
      percent: expect.closeTo(50, 10) as number,
    });
  });

  it("NAP of two single scores is as good as nothing", () => {
    const { low, high } = intervalOfNap(1, 1, 1);
    expect(low).toBeLessThan(0.3);
    expect(high).toBe(1);
  });

  it("throws for no scores at all", () => {
    expect(() => measureOverlap([], [1])).toThrow(RangeError);
    expect(() => shareBeyondBest([1], [])).toThrow(RangeError);
    expect(errorOfNap([1], [1, 2])).toBeUndefined();
    expect(standardiseDifference([3, 3], [4])).toBeUndefined();
  });
});
