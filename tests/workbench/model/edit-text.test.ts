import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseTyped } from "../../../src/spreadsheet/cell-input";
import { formatEditText } from "../../../src/workbench/model/edit-text";

const settings = { dayOrder: "dmy", year: 2026, date1904: false } as const;
const textOf = (value: string | number | boolean, numberFormat = "General") =>
  formatEditText({ value, style: 0 }, { numberFormat }, settings);

describe("the text that editing starts with", () => {
  it.each([
    ["a number in full", 1234.5, "#,##0", "1234.5"],
    ["a share in per cent", 0.9, "0%", "90%"],
    ["a date in the order it is typed in", 46346, "d mmm yyyy", "20/11/2026"],
    ["a time of day", 0.0625, "h:mm", "1:30:00"],
    ["a duration", 1.5, "[h]:mm", "36:00:00"],
    ["a number where the format only colours it", 5, "[Red]General", "5"],
    ["text", "th", "General", "th"],
    ["text that looks like a number", "007", "General", "'007"],
    ["text that looks like a formula", "=1", "General", "'=1"],
    ["text that begins with an apostrophe", "'twas", "General", "''twas"],
    ["text in a cell for text", "007", "@", "007"],
    ["a truth value", true, "General", "TRUE"],
  ])("%s", (_, value, format, text) => {
    expect(textOf(value, format)).toBe(text);
  });

  it("entered again gives the same text", () => {
    fc.assert(
      fc.property(fc.string(), fc.constantFrom("General", "@", "0%", "dd/mm/yyyy"), (value, numberFormat) => {
        fc.pre(value !== "");
        const again = parseTyped(textOf(value, numberFormat), settings, { numberFormat, date1904: false });
        expect(again.ok && again.value.content).toBe(value);
      }),
    );
  });

  it("entered again gives the same day, number or share", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 80_000 }),
        fc.constantFrom("General", "0%", "dd/mm/yyyy", "0.0"),
        (value, numberFormat) => {
          const again = parseTyped(textOf(value, numberFormat), settings, { numberFormat, date1904: false });
          expect(again.ok && again.value.content).toBe(value);
        },
      ),
    );
  });
});
