import { describe, expect, it } from "vitest";
import { scoreReading } from "../../../src/domain/probe/reading";
import { LEVEL_CUTOFFS, levelOf } from "../../../src/domain/probe/reading-level";
import { computeReadingRates } from "../../../src/domain/probe/reading-rates";
import { summariseSitting } from "../../../src/domain/probe/sitting";
import { attemptedText, listOutcomes } from "../../../src/domain/probe/word-outcomes";
import type { Seconds, Share } from "../../../src/domain/units";
import scoring from "../../check-values/probe-scoring.json";

const seconds = (number: number): Seconds => number as Seconds;

describe("the level of a text for a reader", () => {
  /** Levels as the project's shared page gives them: 95/90, 98/95, and 99/95 with under 90 frustration. */
  it.each([
    [0.95, 0, "independent"],
    [0.949, 0, "instructional"],
    [0.9, 0, "instructional"],
    [0.899, 0, "frustration"],
    [0.97, 1, "instructional"],
    [0.98, 1, "independent"],
    [0.949, 1, "frustration"],
    [0.99, 2, "independent"],
    [0.95, 2, "instructional"],
    [0.92, 2, "between"],
    [0.89, 2, "frustration"],
    [1, 0, "independent"],
    [0, 0, "frustration"],
  ])("%f with cut-offs %i: %s", (accuracy, place, level) => {
    expect(levelOf(accuracy as Share, LEVEL_CUTOFFS[place])).toBe(level);
  });

  it("says where each set of cut-offs is from, and refuses what is none", () => {
    for (const { source } of LEVEL_CUTOFFS) expect(source).toMatch(/\w/);
    expect(() => levelOf(1.2 as Share)).toThrow(RangeError);
    expect(() =>
      levelOf(0.9 as Share, { independent: 0.9, instructional: 0.95, frustration: 0.9, source: "mine" }),
    ).toThrow(RangeError);
  });
});

describe("rates of a reading", () => {
  it.each(scoring.rates)("$attempted words, $errors errors, $seconds s", ({ attempted, errors, ...row }) => {
    const rates = computeReadingRates({
      words: attempted,
      correct: attempted - errors,
      characters: 5 * attempted,
      cells: 3 * attempted,
      seconds: seconds(row.seconds),
    });
    if (!rates.ok) throw new Error(rates.fault.message);
    expect(rates.value.words).toBeCloseTo(row.wcpm, 10);
    expect(rates.value.characters).toBeCloseTo(5 * row.wcpm, 10);
    expect(rates.value.cells).toBeCloseTo(3 * row.wcpm, 10);
  });

  it("are 0 where nothing was attempted, and refused without time", () => {
    const nothing = { words: 0, correct: 0, characters: 0, cells: 0 };
    expect(computeReadingRates({ ...nothing, seconds: seconds(60) })).toMatchObject({
      ok: true,
      value: { words: 0, characters: 0, cells: 0 },
    });
    expect(computeReadingRates({ ...nothing, seconds: seconds(0) })).toMatchObject({
      ok: false,
      fault: { code: "no-time" },
    });
  });
});

describe("a sitting of several passages", () => {
  it("is the median of the rates, and of the errors separately", () => {
    const { scores, median } = scoring.medianOfThree;
    const errors = [2, 7, 4];
    const passages = scores.map((rate, place) => ({
      words: rate + (errors[place] ?? 0),
      errors: errors[place] ?? 0,
      seconds: seconds(60),
    }));
    expect(summariseSitting(passages)).toEqual({ ok: true, value: { rate: median, errors: 4, passages: 3 } });
  });

  it.each([
    ["none", [], "no-passages"],
    ["more errors than words", [{ words: 3, errors: 4, seconds: seconds(60) }], "more-errors-than-words"],
    ["a clock time", [{ words: 30, errors: 4, seconds: seconds(0.001) }], "clock-time"],
  ])("of %s is refused", (_name, passages, code) => {
    expect(summariseSitting(passages)).toMatchObject({ ok: false, fault: { code } });
  });
});

describe("what became of each word", () => {
  it("is told for every word of the text", () => {
    const text = "The old otter swam home at dusk today";
    const score = scoreReading(text, "The big old utter swim (sc) swam at home dusk ]");
    expect(listOutcomes(text, score).map(({ word, outcome, heard }) => [word.shown, outcome, heard])).toEqual(
      [
        ["The", "correct", ""],
        ["old", "correct", ""],
        ["otter", "misread", "utter"],
        ["swam", "correct", ""],
        ["home", "swapped", "at"],
        ["at", "swapped", "home"],
        ["dusk", "correct", ""],
        ["today", "not attempted", ""],
      ],
    );
  });

  it("keeps each word's place in the text, hyphens and accents too", () => {
    const text = "“Well-made”  cafe\u0301s -- twenty-five";
    const composed = text.normalize("NFC");
    for (const { word } of listOutcomes(text, scoreReading(text, "")))
      expect(composed.slice(word.start, word.start + word.shown.length)).toBe(word.shown);
  });

  it("gives the text attempted", () => {
    expect(attemptedText("The otter,\n swam home.", 3)).toBe("The otter, swam");
    expect(attemptedText("The otter", 0)).toBe("");
    expect(attemptedText("a well-made boat", 2)).toBe("a well");
  });
});
