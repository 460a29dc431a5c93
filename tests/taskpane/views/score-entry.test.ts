import { describe, expect, it } from "vitest";
import type { Day } from "../../../src/domain/units";
import { SCORE_FIELDS, readScore } from "../../../taskpane/views/score-entry";
import type { ScoreField, TypedScore } from "../../../taskpane/views/score-entry";

/** 25 Nov 2026 */
const TODAY = 46351 as Day;
const type = (fields: Partial<Record<ScoreField, string>>): TypedScore =>
  ({
    ...Object.fromEntries(SCORE_FIELDS.map((field) => [field, ""])),
    pupil: "Heron",
    date: "2026-11-20",
    ...fields,
  }) as TypedScore;

describe("a typed score as a probe", () => {
  it("counts words and errors over a time", () => {
    expect(
      readScore(type({ words: "84", errors: "3", seconds: "1:02.5", task: " read aloud " }), TODAY),
    ).toEqual({
      ok: true,
      value: {
        pupil: "Heron",
        day: 46346,
        task: "read aloud",
        unit: "words",
        words: 84,
        errors: 3,
        seconds: 62.5,
      },
    });
  });

  it("takes no errors for none, and a comma for a point", () => {
    expect(readScore(type({ words: "84", seconds: "60,5" }), TODAY)).toMatchObject({
      value: { errors: 0, seconds: 60.5 },
    });
  });

  it("counts answers out of those asked, in signs unless another word is given", () => {
    expect(readScore(type({ correct: "9", opportunities: "10" }), TODAY)).toMatchObject({
      value: { unit: "signs", correct: 9, opportunities: 10 },
    });
    expect(readScore(type({ correct: "9", unit: "cells" }), TODAY)).toMatchObject({
      value: { unit: "cells" },
    });
  });

  it("keeps a text as it is, whatever it begins with", () => {
    expect(readScore(type({ words: "1", note: "=1+1", pupil: "@<script>" }), TODAY)).toMatchObject({
      value: { note: "=1+1", pupil: "@<script>" },
    });
  });

  it.each<[string, Partial<Record<ScoreField, string>>, ScoreField]>([
    ["no pupil", { pupil: " ", words: "1" }, "pupil"],
    ["no date", { date: "", words: "1" }, "date"],
    ["a date that is none", { date: "2026-02-30", words: "1" }, "date"],
    ["a date after today", { date: "2026-11-26", words: "1" }, "date"],
    ["nothing that says how it went", {}, "words"],
    ["errors without words", { errors: "2", correct: "3" }, "words"],
    ["more errors than words", { words: "2", errors: "3" }, "errors"],
    ["half a word", { words: "2.5" }, "words"],
    ["a minus", { words: "-2" }, "words"],
    ["a word for a number", { words: "many" }, "words"],
    ["no time", { words: "2", seconds: "0" }, "seconds"],
    ["words and answers at once", { words: "2", correct: "1" }, "correct"],
    ["asked, but none counted", { opportunities: "10" }, "words"],
    ["more correct than asked", { correct: "11", opportunities: "10" }, "correct"],
  ])("refuses %s, and says at which field", (_, fields, field) => {
    const read = readScore(type(fields), TODAY);
    expect(read).toMatchObject({ ok: false, fault: { field } });
    expect(!read.ok && read.fault.message).toMatch(/[.]$/);
  });
});
