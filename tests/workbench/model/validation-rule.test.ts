import { describe, expect, it } from "vitest";
import type { CellValue } from "../../../src/domain/cell-value";
import type { Validation } from "../../../src/spreadsheet/workbook";
import { findBreach } from "../../../src/workbench/model/validation-rule";

const rule = (type: string, operator?: string, formula1?: string, formula2?: string): Validation => ({
  areas: [],
  type,
  allowBlank: true,
  ...(operator === undefined ? {} : { operator }),
  ...(formula1 === undefined ? {} : { formula1 }),
  ...(formula2 === undefined ? {} : { formula2 }),
});

describe("findBreach", () => {
  const place = { row: 3, column: 3 };
  it.each<[string, Validation, CellValue, readonly string[] | undefined]>([
    ["an entry of the list in other letters", rule("list"), "heron", ["Heron", "Plover"]],
    ["anything where the list could not be found", rule("list"), "Dunlin", undefined],
    ["a whole number within bounds", rule("whole", "between", "0", "9"), 9, undefined],
    ["a number above a bound", rule("decimal", "greaterThan", "0"), 0.5, undefined],
    ["a number whose bound is a formula", rule("decimal", "greaterThan", "A1"), -1, undefined],
    ["an emptied cell", rule("whole", "between", "0", "9"), null, undefined],
    ["a short text", rule("textLength", "lessThanOrEqual", "2"), "th", undefined],
    ["what a rule by formula judges", rule("custom", undefined, "A1>0"), "x", undefined],
  ])("takes %s", (_, validation, value, choices) => {
    expect(findBreach(validation, value, choices, place)).toBeUndefined();
  });

  it.each<[string, Validation, CellValue, readonly string[] | undefined, RegExp]>([
    [
      "a text that is not in the list",
      rule("list"),
      "Dunlin",
      ["Heron", "Plover"],
      /^D4 does not take this: choose one of Heron, Plover/,
    ],
    [
      "a fraction for a whole number",
      rule("whole", "between", "0", "9"),
      1.5,
      undefined,
      /a whole number from 0 to 9/,
    ],
    ["text for a number", rule("decimal", "greaterThan", "0"), "many", undefined, /a number above 0/],
    ["a number below its bound", rule("whole", "greaterThanOrEqual", "0"), -1, undefined, /of at least 0/],
    ["a long text", rule("textLength", "lessThanOrEqual", "2"), "three", undefined, /D4/],
  ])("refuses %s", (_, validation, value, choices, message) => {
    expect(findBreach(validation, value, choices, place)).toMatch(message);
  });

  it("says the workbook's own message where it has one", () => {
    const own = { ...rule("whole", "greaterThanOrEqual", "0"), errorMessage: "Errors are counted from 0." };
    expect(findBreach(own, -1, undefined, place)).toBe("D4 does not take this: Errors are counted from 0.");
  });
});
