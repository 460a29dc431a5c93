import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitLine, valueAt, type LineFit } from "../../../src/domain/statistics/least-squares";
import checks from "../../check-values/trend.json";

const fitOf = (xs: readonly number[], ys: readonly number[]): LineFit => {
  const fit = fitLine(xs, ys);
  if (!fit.ok) throw new Error(fit.fault.message);
  return fit.value;
};

describe("least squares", () => {
  it.each([
    { name: "NIST Norris", data: checks.norris, digits: 12 },
    { name: "R women", data: checks.women, digits: 12 },
    { name: "the worked set of ten weeks", data: checks.weeks, digits: 12 },
  ])("$name agrees to $digits digits", ({ data, digits }) => {
    const fit = fitOf(data.x, data.y);
    const close = (actual: number | undefined, expected: number): void =>
      expect(Math.abs((actual ?? NaN) / expected - 1)).toBeLessThan(10 ** -digits);
    close(fit.slope, data.slope);
    close(fit.slopeError, data.slopeError);
    close(fit.intercept, data.intercept);
    close(fit.scatter, data.scatter);
    if ("interceptError" in data) close(fit.interceptError, data.interceptError);
  });

  // slope-standard-error table of the shared reference: weekly points, scatter 10
  it.each([
    [6, 2.39],
    [8, 1.543],
    [10, 1.101],
    [14, 0.663],
    [20, 0.388],
  ])("%i weekly points at a scatter of 10 leave a standard error of %f a week", (weeks, error) => {
    const xs = Array.from({ length: weeks }, (_, week) => week);
    const fit = fitOf(xs, xs);
    expect(10 / Math.sqrt(fit.spreadX)).toBeCloseTo(error, 3);
  });

  it("gives the fitted value at the mean the error scatter / √n", () => {
    const fit = fitOf(checks.women.x, checks.women.y);
    const { value, error } = valueAt(fit, fit.meanX);
    expect(value).toBe(fit.meanY);
    expect(error).toBeCloseTo(checks.women.scatter / Math.sqrt(15), 12);
  });

  it("at 0 is the intercept with its error", () => {
    const fit = fitOf(checks.norris.x, checks.norris.y);
    const { value, error } = valueAt(fit, 0);
    expect(value).toBeCloseTo(checks.norris.intercept, 12);
    expect(error).toBeCloseTo(checks.norris.interceptError, 12);
  });

  it("doubles its slope and error when the scores double", () => {
    const points = fc.array(fc.tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 200 })), {
      minLength: 3,
    });
    fc.assert(
      fc.property(points, (pairs) => {
        const xs = pairs.map(([x]) => x);
        fc.pre(new Set(xs).size > 1);
        const single = fitOf(
          xs,
          pairs.map(([, y]) => y),
        );
        const double = fitOf(
          xs,
          pairs.map(([, y]) => 2 * y),
        );
        expect(double.slope).toBeCloseTo(2 * single.slope, 8);
        expect(double.slopeError).toBeCloseTo(2 * (single.slopeError ?? NaN), 8);
      }),
    );
  });

  it.each([
    { about: "no points", xs: [], code: "too-few-points" },
    { about: "one point", xs: [3], code: "too-few-points" },
    { about: "all on one day", xs: [3, 3, 3], code: "one-day" },
  ])("refuses $about", ({ xs, code }) => {
    expect(fitLine(xs, xs)).toMatchObject({ ok: false, fault: { code } });
  });

  it("gives two points a line without an error, and throws at unequal lengths", () => {
    const fit = fitOf([1, 2], [5, 7]);
    expect(fit).toMatchObject({ slope: 2, intercept: 3 });
    expect(fit.slopeError).toBeUndefined();
    expect(() => fitLine([1], [])).toThrow(RangeError);
  });
});
