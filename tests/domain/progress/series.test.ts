import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { measureProbe, type CellSource } from "../../../src/domain/progress/measure";
import { buildSeries, describeSeries } from "../../../src/domain/progress/series";
import type { PerMinute, Seconds, Share } from "../../../src/domain/units";
import { probeOf, START, weeklyProbes } from "./probes";

const seconds = (value: number): Seconds => value as Seconds;

describe("the value of a measure", () => {
  it.each([
    {
      about: "words, errors and seconds",
      fields: { words: 84, errors: 3, seconds: seconds(60) },
      rate: 81,
      accuracy: 81 / 84,
    },
    {
      about: "her own columns win",
      fields: { words: 84, errors: 3, seconds: seconds(60), rate: 80, accuracy: 0.9 as Share },
      rate: 80,
      accuracy: 0.9,
    },
    {
      about: "correct of opportunities",
      fields: { correct: 8, opportunities: 10 },
      rate: undefined,
      accuracy: 0.8,
    },
    {
      about: "correct and seconds",
      fields: { correct: 15, seconds: seconds(30) },
      rate: 30,
      accuracy: undefined,
    },
    { about: "correct of words", fields: { correct: 45, words: 50 }, rate: undefined, accuracy: 0.9 },
    {
      about: "errors left blank",
      fields: { words: 84, seconds: seconds(60) },
      rate: undefined,
      accuracy: undefined,
    },
    { about: "untimed", fields: { words: 84, errors: 3 }, rate: undefined, accuracy: 81 / 84 },
    {
      about: "more errors than words",
      fields: { words: 3, errors: 4, seconds: seconds(60) },
      rate: undefined,
      accuracy: undefined,
    },
    {
      about: "opportunities 0",
      fields: { correct: 0, opportunities: 0 },
      rate: undefined,
      accuracy: undefined,
    },
    { about: "a rate that is no number", fields: { rate: NaN }, rate: undefined, accuracy: undefined },
  ])("$about", ({ fields, rate, accuracy }) => {
    const probe = probeOf(fields);
    expect(measureProbe(probe, "rate")).toBe(rate);
    expect(measureProbe(probe, "accuracy")).toBe(accuracy);
  });

  describe("cells a minute", () => {
    // A stand-in for a code in which every character takes one cell.
    const cells: CellSource = { cellsOf: (text) => text.length };
    it.each([
      {
        about: "from the passage read",
        fields: { expected: "ab ab ab", words: 3, errors: 0, seconds: seconds(60) },
        value: 8,
      },
      {
        about: "in half a minute",
        fields: { expected: "ab ab ab", words: 3, errors: 0, seconds: seconds(30) },
        value: 16,
      },
      {
        about: "less the words misread",
        fields: { expected: "ab ab ab ab", words: 4, errors: 2, seconds: seconds(60) },
        value: 5.5,
      },
      {
        about: "only the words reached",
        fields: { expected: "ab ab abcdefgh", words: 2, errors: 0, seconds: seconds(60) },
        value: 5,
      },
      { about: "from a rate column", fields: { expected: "abc abc", rate: 10 as PerMinute }, value: 35 },
      {
        about: "not without the text",
        fields: { material: "Lost", words: 3, errors: 0, seconds: seconds(60) },
        value: undefined,
      },
      {
        about: "not from the names of signs in a row",
        fields: { expected: "ch, full stop", unit: "Signs", rate: 10 as PerMinute },
        value: undefined,
      },
      { about: "not from an empty text", fields: { expected: " ", rate: 10 as PerMinute }, value: undefined },
    ])("$about", ({ fields, value }) => {
      expect(measureProbe(probeOf(fields), "cells a minute", cells)).toBe(value);
    });

    it("is not there without a way to count cells", () => {
      expect(measureProbe(probeOf({ expected: "ab", rate: 10 }), "cells a minute")).toBeUndefined();
    });
  });
});

describe("series", () => {
  it("part by pupil, task, unit, code, medium and sign, and by measure", () => {
    const probes = [
      probeOf({ rate: 20 }),
      probeOf({ rate: 21, pupil: "Plover" }),
      probeOf({ rate: 22, task: "copied" }),
      probeOf({ rate: 23, unit: "signs" }),
      probeOf({ rate: 24, code: "uncontracted" }),
      probeOf({ rate: 25, medium: "print" }),
      probeOf({ rate: 26, sign: "ea" }),
      probeOf({ words: 84, errors: 3, seconds: seconds(60) }),
    ];
    const series = buildSeries(probes);
    expect(series.map(({ key }) => `${key.pupil} ${key.measure} ${describeSeries(key)}`)).toEqual([
      "Heron rate read aloud, words, contracted, braille",
      "Heron accuracy read aloud, words, contracted, braille",
      "Heron rate read aloud, sign ea, words, contracted, braille",
      "Plover rate read aloud, words, contracted, braille",
      "Heron rate copied, words, contracted, braille",
      "Heron rate read aloud, signs, contracted, braille",
      "Heron rate read aloud, words, uncontracted, braille",
      "Heron rate read aloud, words, contracted, print",
    ]);
    expect(series[0]?.points.map(({ value }) => value)).toEqual([20, 81]);
  });

  it("do not part by case or spaces, and keep the first spelling", () => {
    const series = buildSeries([
      probeOf({ rate: 20 }),
      probeOf({ rate: 21, pupil: " HERON ", task: "Read  Aloud" }),
    ]);
    expect(series).toHaveLength(1);
    expect(series[0]?.key).toMatchObject({ pupil: "Heron", task: "read aloud" });
  });

  it("run from the oldest to the newest, rows within a day as they stand", () => {
    const rows = [
      probeOf({ rate: 3, day: START + 7, source: { sheet: "Probes", row: 9 } }),
      probeOf({ rate: 2, day: START + 7, source: { sheet: "Probes", row: 4 } }),
      probeOf({ rate: 1, day: START, source: { sheet: "Probes", row: 12 } }),
    ];
    fc.assert(
      fc.property(fc.shuffledSubarray(rows, { minLength: 3 }), (shuffled) => {
        expect(buildSeries(shuffled)[0]?.points.map(({ value }) => value)).toEqual([1, 2, 3]);
      }),
    );
  });

  it("mark supported probes", () => {
    const series = buildSeries([
      probeOf({ rate: 20, support: "verbal prompt" }),
      probeOf({ rate: 21, support: "none" }),
    ]);
    expect(series[0]?.points.map(({ supported }) => supported)).toEqual([true, false]);
  });

  it("lose no probe that has a value", () => {
    expect(buildSeries(weeklyProbes([1, 2, 3]))[0]?.points).toHaveLength(3);
    expect(buildSeries([probeOf({})])).toEqual([]);
    expect(buildSeries([])).toEqual([]);
  });

  it("have a name where the sheet says nothing", () => {
    const key = {
      pupil: "Heron",
      task: "",
      measure: "rate",
      unit: "",
      code: "",
      medium: "",
      sign: "",
    } as const;
    expect(describeSeries(key)).toBe("all probes");
  });

  it("keeps probes apart whose notes keep another wait than the usual one", () => {
    const fields = { words: 50, errors: 1, seconds: seconds(60) };
    const series = buildSeries([
      probeOf({ ...fields }),
      probeOf({ ...fields, note: "tired. Told after 5 s." }),
      probeOf({ ...fields, note: "told after 3 seconds" }),
    ]).filter(({ key }) => key.measure === "rate");
    expect(series.map(({ key, points }) => [key.wait, points.length])).toEqual([
      [undefined, 2],
      [5, 1],
    ]);
    expect(series.map(({ key }) => describeSeries(key).includes("told after 5 s"))).toEqual([false, true]);
  });

  describe("of signs", () => {
    const marked = (sign: string, day: number, correct: number, fields = {}) =>
      probeOf({
        task: "signs named",
        unit: "signs",
        sign,
        day: START + day,
        correct,
        opportunities: 1,
        ...fields,
      });

    it("have one for all signs together before those of each sign", () => {
      const probes = [
        marked("a", 0, 1),
        marked("b", 0, 0),
        marked("A", 0, 1),
        marked("a", 7, 1),
        marked("b", 7, 1),
      ];
      const series = buildSeries(probes);
      expect(
        series.map(
          ({ key, points }) => `${key.sign}: ${points.map(({ value }) => value.toFixed(2)).join(" ")}`,
        ),
      ).toEqual(["all signs: 0.67 1.00", "a: 1.00 1.00", "b: 0.00 1.00", "A: 1.00"]);
      expect(series.map(({ key }) => describeSeries(key))[0]).toBe(
        "signs named, all signs, signs, contracted, braille",
      );
    });

    it("keep phases and support apart when added up, and lead to the first row", () => {
      const probes = [
        marked("a", 0, 1, { phase: "A", source: { sheet: "Signs", row: 4 } }),
        marked("b", 0, 0, { phase: "A", source: { sheet: "Signs", row: 5 } }),
        marked("b", 0, 1, { phase: "B", source: { sheet: "Signs", row: 6 } }),
        marked("b", 0, 1, { phase: "A", support: "prompt", source: { sheet: "Signs", row: 7 } }),
      ];
      const points = buildSeries(probes)[0]?.points.map(({ probe, value, supported }) => [
        probe.source.row,
        value,
        supported,
      ]);
      expect(points).toEqual([
        [4, 0.5, false],
        [6, 1, false],
        [7, 1, true],
      ]);
    });

    it("have none for all where there is but one sign, or no counts", () => {
      expect(buildSeries([marked("a", 0, 1), marked("a", 7, 0)]).map(({ key }) => key.sign)).toEqual(["a"]);
      expect(
        buildSeries([probeOf({ sign: "a", rate: 1 }), probeOf({ sign: "b", rate: 2 })]).map(
          ({ key }) => key.sign,
        ),
      ).toEqual(["a", "b"]);
    });
  });
});
