import { describe, expect, it } from "vitest";
import { dayOf } from "../../src/domain/calendar";
import { complainOfDate } from "../../src/records/cell-fault";
import { labelsSummary, saysNothing } from "../../src/records/cell-text";
import { parseDurationText, readClock } from "../../src/records/duration";
import { classifyFormat } from "../../src/records/number-format";
import { parseFraction, parseQuantity } from "../../src/records/quantity";

describe("parseDurationText", () => {
  it.each([
    ["1:30", 90, "m:ss"],
    ["01:05", 65, "m:ss"],
    ["0:58.5", 58.5, "m:ss"],
    ["1:02:30", 3750, "h:mm:ss"],
    ["1m 30s", 90, "units"],
    ["1 min 5 sec", 65, "units"],
    ["2 minutes", 120, "units"],
    ["45 sec", 45, "units"],
    ["90s", 90, "units"],
    ["1'30\"", 90, "units"],
    ["1.5 min", 90, "units"],
    ["1 minute and 5 seconds", 65, "units"],
    ["60", 60, "number"],
    ["62,5", 62.5, "number"],
    ["１:３０", 90, "m:ss"],
  ] as const)("%s is %s seconds (%s)", (text, value, form) => {
    expect(parseDurationText(text)).toEqual({ value, form });
  });

  it.each(["", "abc", "1:75", "1:2:3:4", "min", "9:30 am"])("%s is no duration", (text) => {
    expect(parseDurationText(text)).toBeUndefined();
  });
});

describe("readClock", () => {
  it.each([
    [0.0625, "m:ss", 90],
    [0.0625, "h:mm", 5400],
    [90 / 86400, "h:mm", 90],
  ] as const)("takes %s of a day as %s: %s seconds", (value, meaning, seconds) => {
    expect(readClock(value, meaning)).toBe(seconds);
  });
});

describe("parseQuantity", () => {
  it.each([
    ["62", 62, ""],
    ["62 wpm", 62, "wpm"],
    ["62,5", 62.5, ""],
    ["-3", -3, ""],
    ["−3", -3, ""],
    ["６２", 62, ""],
    ["90 %", 90, "%"],
    ["90%", 90, "%"],
    ["1,234.5", 1234.5, ""],
    ["1.234,5", 1234.5, ""],
    ["0,125", 0.125, ""],
    [".5", 0.5, ""],
    ["3 errors", 3, "errors"],
  ] as const)("%s is %s %s", (text, value, suffix) => {
    expect(parseQuantity(text)).toEqual({ value, suffix });
  });

  it("leaves a comma before three digits open", () => {
    expect(parseQuantity("1,234")).toBe("ambiguous");
  });

  it.each(["", "wpm", "62-65", "about 60", "6o"])("%s is no quantity", (text) => {
    expect(parseQuantity(text)).toBeUndefined();
  });
});

describe("parseFraction", () => {
  it.each([
    ["45/50", 45, 50],
    ["45 / 50", 45, 50],
    ["7 out of 10", 7, 10],
    ["7 of 10", 7, 10],
    ["45/50 (90%)", 45, 50],
  ] as const)("%s", (text, part, total) => {
    expect(parseFraction(text)).toEqual({ part, total });
  });
});

describe("complainOfDate", () => {
  const serial = (year: number, month: number, date: number): number => dayOf({ year, month, date }) ?? 0;
  it.each([
    [serial(2026, 10, 7), "d-mmm", "This is 7 October or 10 July: did you type 7/10?"],
    [serial(2026, 7, 10), "d-mmm", "This is 7 October or 10 July: did you type 7/10?"],
    [serial(2026, 9, 20), "d-mmm", "This is 20 September: did you type 9/20?"],
    [serial(1945, 9, 1), "mmm-yy", "This is September 1945: did you type 9/45?"],
    [serial(2026, 5, 5), "d-mmm", "This is 5 May: did you type 5/5?"],
  ])("%s under %s", (value, format, message) => {
    expect(complainOfDate(value, format).message).toContain(message);
  });
});

describe("classifyFormat", () => {
  it.each([
    ["General", "number"],
    ["0.00", "number"],
    ["#,##0", "number"],
    ["0.00E+00", "number"],
    ["0%", "percent"],
    ["dd/mm/yyyy", "date"],
    ["d-mmm", "date"],
    ["mmm-yy", "date"],
    ["[$-409]d\\-mmm\\-yyyy;@", "date"],
    ["m/d/yy h:mm", "date"],
    ["h:mm", "clock"],
    ["[h]:mm:ss", "clock"],
    ["h:mm:ss", "clock"],
    ["mm:ss", "minutes and seconds"],
    ["[m]:ss", "minutes and seconds"],
    ["mm:ss.0", "minutes and seconds"],
    ["h:mm AM/PM", "time of day"],
    ['0 "days"', "number"],
    ['0 "wpm"', "number"],
    ["@", "text"],
    ["# ?/?", "number"],
    ["[Red]0", "number"],
  ] as const)("%s shows a %s", (format, kind) => {
    expect(classifyFormat(format)).toBe(kind);
  });
});

describe("saysNothing", () => {
  it.each([
    "absent",
    "Absent",
    "ABS",
    "n/a",
    "N/A",
    "na",
    "-",
    "–",
    "—",
    "absent - ill",
    "not tested",
    "School closed",
    "holiday",
    "on holiday",
    "Half term",
    "snow day",
    "ill",
    "no data",
    "pupil absent",
    "N/T",
    "was absent",
  ])("%s", (text) => {
    expect(saysNothing(text)).toBe(true);
  });
  it.each(["Heron", "0", "tired", "eighty", "Abigail", "outside"])("not %s", (text) => {
    expect(saysNothing(text)).toBe(false);
  });
});

describe("labelsSummary", () => {
  it.each([
    "Total",
    "TOTALS",
    "Average",
    "Avg.",
    "Mean",
    "Mean:",
    "Class average",
    "Average WCPM",
    "Sub-total",
    "Grand total",
    "Median",
    "Goal",
    "Target: 60",
    "Mean (Oct)",
    "Std dev",
    "Max",
    "Average accuracy",
  ])("%s", (text) => {
    expect(labelsSummary(text)).toBe(true);
  });
  it.each(["Heron", "Minnow", "the meaning of it", "Maximilian", "Goalkeeper", "Read aloud", "7/10/2026"])(
    "not %s",
    (text) => {
      expect(labelsSummary(text)).toBe(false);
    },
  );
});
