import { describe, expect, it } from "vitest";
import { findMeeting } from "../../../src/domain/statistics/fieller";
import {
  exactAgreementChance,
  measureAgreement,
  normalAgreementChance,
} from "../../../src/domain/statistics/kendall";
import { fitLine, valueAt, type LineFit } from "../../../src/domain/statistics/least-squares";
import { measureOverlap } from "../../../src/domain/statistics/overlap";
import { exactOrderChance, normalOrderChance } from "../../../src/domain/statistics/rank-sum";
import { fitRepeatedMedians } from "../../../src/domain/statistics/repeated-medians";
import { measureDependence } from "../../../src/domain/statistics/residuals";
import { fitSplitMiddle } from "../../../src/domain/statistics/split-middle";
import { studentQuantile, studentShare } from "../../../src/domain/statistics/student-t";
import trend from "../../check-values/trend.json";
import checks from "../../check-values/worked-trend.json";

const lineOf = (xs: readonly number[], ys: readonly number[]): LineFit => {
  const fit = fitLine(xs, ys);
  if (!fit.ok) throw new Error(fit.fault.message);
  return fit.value;
};
const valueOf = <T>(result: { ok: true; value: T } | { ok: false; fault: { message: string } }): T => {
  if (!result.ok) throw new Error(result.fault.message);
  return result.value;
};
const close = (value: number | undefined, expected: number, digits = 10): void =>
  expect(value ?? NaN, String(expected)).toBeCloseTo(expected, digits);

const { weeks, norris, women, tarlow } = trend;
const worked = checks.worked;

describe("the worked set of ten weeks", () => {
  const line = lineOf(weeks.x, weeks.y);

  it("meets the goal of 45 at week 23.2, Fieller 95 % 20.4 to 27.9", () => {
    const meeting = findMeeting(line, worked.goal);
    close(meeting?.x, worked.projected_week);
    close(meeting?.low, worked.fieller95_week[0] ?? NaN);
    close(meeting?.high, worked.fieller95_week[1] ?? NaN);
  });

  it("has Fieller's limits where the interval of the fitted value begins to hold the goal", () => {
    const meeting = findMeeting(line, worked.goal);
    for (const x of [meeting?.low ?? NaN, meeting?.high ?? NaN]) {
      const { value, error = NaN } = valueAt(line, x);
      close(Math.abs(worked.goal - value), studentQuantile(0.975, 8) * error);
    }
  });

  it("splits at the middle: slope 1.4 through (7, 23) and (12, 30), then equal counts above and below", () => {
    const split = valueOf(fitSplitMiddle(weeks.x, weeks.y));
    expect(split.middles).toEqual([worked.split_middle.mid1, worked.split_middle.mid2]);
    close(split.slope, worked.split_middle.slope);
    close(split.interceptBefore, worked.split_middle.intercept_before_shift);
    close(split.intercept, worked.split_middle.intercept_after_shift_to_equal_counts);
  });

  it("agrees in order: τ .822, exact chance .000358", () => {
    const agreement = measureAgreement(weeks.x, weeks.y);
    close(agreement.tauB, worked.kendall.tau);
    close(exactAgreementChance(agreement, 10), worked.kendall.p);
  });

  it("has residuals that change sides: lag one −.732", () => {
    close(measureDependence(line, weeks.x, weeks.y)?.lagOne, worked.lag1_resid);
    // n⁻¹ is the usual correction for its bias.
    close(
      (measureDependence(line, weeks.x, weeks.y)?.lagOne ?? NaN) + 1 / 10,
      worked.lag1_bias_adjusted_plus_1_over_n,
    );
  });
});

describe("regression checks", () => {
  it.each([
    { name: "NIST Norris", data: norris, expected: checks.regression.norris },
    { name: "R women", data: women, expected: checks.regression.women },
  ])("$name: t, chance, interval, r², lag one, Durbin–Watson", ({ data, expected }) => {
    const line = lineOf(data.x, data.y);
    const { slope, slopeError = NaN, scatter = NaN, points, meanY } = line;
    const t = slope / slopeError;
    const freedom = points - 2;
    expect(t / expected.t).toBeCloseTo(1, 9);
    expect((2 * studentShare(-t, freedom)) / expected.p).toBeCloseTo(1, 8);
    const reach = studentQuantile(0.975, freedom) * slopeError;
    close(slope - reach, expected.ci95[0] ?? NaN);
    close(slope + reach, expected.ci95[1] ?? NaN);
    const total = data.y.reduce((sum, y) => sum + (y - meanY) ** 2, 0);
    close(1 - (scatter ** 2 * freedom) / total, expected.r2);
    const dependence = measureDependence(line, data.x, data.y);
    close(dependence?.lagOne, expected.lag1_residual_autocorr, 9);
    close(dependence?.durbinWatson, expected.durbin_watson, 9);
  });

  it("says nothing about neighbours on a line without residuals", () => {
    const line = lineOf([1, 2, 3], [2, 4, 6]);
    expect(measureDependence(line, [1, 2, 3], [2, 4, 6])).toBeUndefined();
  });
});

describe("repeated medians", () => {
  it.each([
    { name: "women", data: women, expected: checks.siegel.women },
    { name: "baseline of C in Tarlow's example", data: tarlow, expected: checks.siegel.tarlow },
  ])("$name: slope $expected.slope as by SciPy siegelslopes", ({ data, expected }) => {
    const line = valueOf(fitRepeatedMedians(data.x, data.y));
    close(line.slope, expected.slope);
    close(line.intercept, expected.intercept);
  });

  it("refuses one point and one day", () => {
    expect(fitRepeatedMedians([1], [1])).toMatchObject({ fault: { code: "too-few-points" } });
    expect(fitRepeatedMedians([1, 1], [1, 2])).toMatchObject({ fault: { code: "one-day" } });
  });
});

describe("Kendall's τb", () => {
  it("Kendall 1970, example 3.1: S = 33, τb = 33/√(41·36) = .859", () => {
    const { x, y, recomputed } = checks["Kendall_1970_ex3.1"];
    const agreement = measureAgreement(x, y);
    expect(agreement.s).toBe(33);
    expect([agreement.pairs - agreement.tiesX, agreement.pairs - agreement.tiesY].sort()).toEqual([36, 41]);
    close(agreement.tauB, recomputed.tau_b);
    close(normalAgreementChance(x, y), recomputed.p_asymptotic);
    expect(exactAgreementChance(agreement, 10)).toBeUndefined();
  });

  it("SciPy's documentation: −.47140452079103173, chance .2827454599327748", () => {
    const { x, y } = checks.Kendall_scipy_doc;
    close(measureAgreement(x, y).tauB, -0.47140452079103173, 12);
    close(normalAgreementChance(x, y), 0.2827454599327748, 12);
  });

  it("Hollander & Wolfe 1973, tuna: τ .4444444, exact chance .1194", () => {
    const { x, y, recomputed } = checks.Kendall_HollanderWolfe_tuna;
    const agreement = measureAgreement(x, y);
    close(agreement.tauB, recomputed.tau_b);
    close(exactAgreementChance(agreement, 9), recomputed.p_auto);
    close(normalAgreementChance(x, y), recomputed.p_asymptotic);
  });

  it("is not defined where one side does not vary", () => {
    expect(measureAgreement([1, 2, 3], [5, 5, 5])).not.toHaveProperty("tauB");
  });
});

describe("the chance of an order between two groups", () => {
  it("SciPy's documentation: U 17, exact .1111, normal .11134688653314041, probability of superiority .85", () => {
    const { a, b, recomputed } = checks.MannWhitney;
    const overlap = measureOverlap(b, a);
    expect(overlap.better + overlap.ties / 2).toBe(recomputed.U1);
    close(overlap.nap, recomputed.prob_superiority);
    close(exactOrderChance(b, a), recomputed.p_exact);
    close(normalOrderChance(b, a), recomputed.p_asymp_cc, 12);
    close(exactOrderChance(a, b), recomputed.p_exact);
  });

  it("is exact without ties only", () => {
    expect(exactOrderChance([1, 2], [2, 3])).toBeUndefined();
  });
});

describe("the split middle", () => {
  it("leaves the middle point of an odd number out of the middles", () => {
    const split = valueOf(fitSplitMiddle([1, 2, 3, 4, 5], [10, 12, 99, 20, 22]));
    expect(split.middles).toEqual([
      [1.5, 11],
      [4.5, 21],
    ]);
  });
  it("does not mind the order of the rows", () => {
    expect(fitSplitMiddle([4, 1, 3, 2], [8, 2, 6, 4])).toEqual(fitSplitMiddle([1, 2, 3, 4], [2, 4, 6, 8]));
  });
  it("refuses under four points, and two middles on one day", () => {
    expect(fitSplitMiddle([1, 2, 3], [1, 2, 3])).toMatchObject({ fault: { code: "too-few-points" } });
    expect(fitSplitMiddle([1, 1, 1, 1], [1, 2, 3, 4])).toMatchObject({ fault: { code: "one-day" } });
  });
});

describe("Fieller's interval", () => {
  it("is not given where the interval of the slope includes 0, nor for two points", () => {
    expect(findMeeting(lineOf([1, 2, 3, 4, 5, 6], [5, 9, 4, 8, 5, 7]), 20)).toBeUndefined();
    expect(findMeeting(lineOf([1, 2], [5, 9]), 20)).toBeUndefined();
  });
  it("has no width on a line without scatter", () => {
    const meeting = findMeeting(lineOf([0, 1, 2, 3], [0, 2, 4, 6]), 20);
    expect(meeting).toEqual({ x: 10, low: 10, high: 10 });
  });
});
