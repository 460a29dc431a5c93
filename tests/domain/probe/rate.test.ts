import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { computeAccuracy } from "../../../src/domain/probe/accuracy";
import { computeRate } from "../../../src/domain/probe/rate";
import type { Seconds } from "../../../src/domain/units";

const rate = (words: number, errors: number, seconds: number): ReturnType<typeof computeRate> =>
  computeRate(words, errors, seconds as Seconds);

describe("words read correctly a minute, and accuracy", () => {
  // worked out from the definition
  it.each([
    { words: 68, errors: 5, seconds: 60, wcpm: 63, accuracy: 0.9264705882352942 },
    { words: 95, errors: 3, seconds: 52, wcpm: 106.15384615384616, accuracy: 0.968421052631579 },
    { words: 120, errors: 7, seconds: 90, wcpm: 75.33333333333333, accuracy: 0.9416666666666667 },
    { words: 14, errors: 6, seconds: 60, wcpm: 8, accuracy: 0.5714285714285714 },
  ])("$words words, $errors errors, $seconds s: $wcpm", ({ words, errors, seconds, wcpm, accuracy }) => {
    const computedRate = rate(words, errors, seconds);
    const computedAccuracy = computeAccuracy(words, errors);
    expect(computedRate.ok && computedRate.value).toBeCloseTo(wcpm, 12);
    expect(computedAccuracy.ok && computedAccuracy.value).toBeCloseTo(accuracy, 12);
  });

  it("halves when the time doubles", () => {
    fc.assert(
      fc.property(fc.nat(500), fc.nat(500), fc.integer({ min: 1, max: 900 }), (right, errors, seconds) => {
        const once = rate(right + errors, errors, seconds);
        const twice = rate(right + errors, errors, 2 * seconds);
        expect(twice.ok && twice.value).toBeCloseTo((once.ok ? once.value : NaN) / 2, 9);
      }),
    );
  });

  it.each([
    { about: "no time", words: 9, errors: 1, seconds: 0, code: "no-time" },
    { about: "negative time", words: 9, errors: 1, seconds: -5, code: "no-time" },
    { about: "1:30 typed as a clock time", words: 9, errors: 1, seconds: 0.0625, code: "clock-time" },
    { about: "more errors than words", words: 9, errors: 10, seconds: 60, code: "more-errors-than-words" },
    { about: "negative words", words: -9, errors: 0, seconds: 60, code: "negative-count" },
    { about: "negative errors", words: 9, errors: -1, seconds: 60, code: "negative-count" },
  ])("refuses $about", ({ words, errors, seconds, code }) => {
    expect(rate(words, errors, seconds)).toMatchObject({ ok: false, fault: { code } });
  });

  it("is 0 words a minute, but no accuracy, where nothing was attempted", () => {
    expect(rate(0, 0, 60)).toEqual({ ok: true, value: 0 });
    expect(computeAccuracy(0, 0)).toMatchObject({ fault: { code: "no-words" } });
  });
});
