import { describe, expect, it } from "vitest";
import { parseTyped } from "../../src/spreadsheet/cell-input";
import { displayText } from "../../src/spreadsheet/cell-display";

const settings = { dayOrder: "dmy", year: 2026 } as const;
const general = { numberFormat: "General", date1904: false };
const typed = (text: string, place = general, order: "dmy" | "mdy" = "dmy") => {
  const result = parseTyped(text, { ...settings, dayOrder: order }, place);
  return result.ok ? [result.value.content, result.value.numberFormat] : result.fault.code;
};

// What Excel makes of the same typing (common practice, from memory).
describe("what she typed", () => {
  it.each([
    ["", null, undefined],
    ["12", 12, undefined],
    ["-1.5", -1.5, undefined],
    [".5", 0.5, undefined],
    ["1,234", 1234, "#,##0"],
    ["1,23", "1,23", undefined],
    ["45%", 0.45, "0%"],
    ["45 %", 0.45, "0%"],
    ["£3.50", 3.5, '"£"#,##0.00'],
    ["1e3", 1000, "0.00E+00"],
    ["(5)", -5, undefined],
    ["true", true, undefined],
    ["#n/a", { error: "#N/A" }, undefined],
    ["'12", "12", undefined],
    ["'=1", "=1", undefined],
    ["=1+1", { formula: "1+1" }, undefined],
    ["=", "=", undefined],
    ["Heron", "Heron", undefined],
    ["+", "+", undefined],
    ["e5", "e5", undefined],
    ["3/4/2026", 46115, "dd/mm/yyyy"],
    ["3/4/26", 46115, "dd/mm/yyyy"],
    ["2026-04-03", 46115, "yyyy-mm-dd"],
    ["3 Apr 2026", 46115, "d-mmm-yy"],
    ["April 3, 2026", 46115, "d-mmm-yy"],
    ["3 April", 46115, "d-mmm"],
    ["7/10", 46302, "d-mmm"],
    ["45/50", "45/50", undefined],
    ["31/4/2026", "31/4/2026", undefined],
    ["29/2/2024", 45351, "dd/mm/yyyy"],
    ["29/2/2023", "29/2/2023", undefined],
    ["31/12/2026", 46387, "dd/mm/yyyy"],
    ["1/1/1899", "1/1/1899", undefined],
    ["1:30", 0.0625, "h:mm"],
    ["1:30 pm", 0.5625, "h:mm AM/PM"],
    ["25:00", 25 / 24, "[h]:mm:ss"],
    ["0:01:30", 90 / 86400, "h:mm:ss"],
    ["3/4/2026 12:00", 46115.5, "dd/mm/yyyy h:mm"],
  ])("%j", (text, content, format) => {
    expect(typed(text)).toEqual([content, format]);
  });
  it("reads the month first where that is the setting", () => {
    expect(typed("3/4/2026", general, "mdy")).toEqual([46085, "m/d/yyyy"]);
  });
  it("keeps text in a cell formatted as text", () => {
    expect(typed("007", { numberFormat: "@", date1904: false })).toEqual(["007", undefined]);
  });
  it.each([
    ["45", 0.45],
    [".45", 0.45],
  ])("%s in a percentage cell is 45 %%", (text, value) => {
    expect(typed(text, { numberFormat: "0%", date1904: false })).toEqual([value, undefined]);
  });
  it("counts days from 1904 where the workbook does", () => {
    expect(typed("3/4/2026", { numberFormat: "General", date1904: true })).toEqual([
      46115 - 1462,
      "dd/mm/yyyy",
    ]);
  });
  it.each(["=1+", "=SUM(1", '="a', "=)", "=1 2"])("refuses the formula %s", (text) => {
    expect(typed(text)).toBe("formula");
  });
});

// ECMA-376 Part 1, 18.8.31, worked by numfmt.
describe("what a cell shows", () => {
  it.each([
    [null, "General", ""],
    [{ error: "#N/A" } as const, "0", "#N/A"],
    [true, "General", "TRUE"],
    [0.1 + 0.2, "General", "0.3"],
    [1 / 3, "General", "0.333333333"],
    [123456789012, "General", "1.23457E+11"],
    [45000, "dd/mm/yyyy", "15/03/2023"],
    [45000, "mm-dd-yy", "15/03/2023"],
    [0.5, "0%", "50%"],
    [90 / 86400, "m:ss", "1:30"],
    [-1, "dd/mm/yyyy", "######"],
    ["Heron", '"Pupil "@', "Pupil Heron"],
    ["Heron", "0.00", "Heron"],
  ])("%j as %s is %j", (value, numberFormat, text) => {
    expect(displayText(value, numberFormat, { date1904: false, dayOrder: "dmy" })).toBe(text);
  });
  it("shows days of the 1904 system", () => {
    expect(displayText(45000 - 1462, "dd/mm/yyyy", { date1904: true, dayOrder: "dmy" })).toBe("15/03/2023");
  });
  it("rounds General to the width", () => {
    expect(displayText(1 / 3, "General", { date1904: false, dayOrder: "dmy" }, 5)).toBe("0.333");
  });
});
