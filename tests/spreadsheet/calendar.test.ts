import { describe, expect, it } from "vitest";
import fc from "fast-check";
import { dateOfSerial, daysInMonth, serialOfDate } from "../../src/spreadsheet/calendar";

// ECMA-376 Part 1, 18.17.4.1: serial 1 is 1 January 1900; 60 is the day that never was; 2,958,465 is 31 December 9999.
describe("serial numbers of days", () => {
  it.each([
    [1900, 1, 1, 1],
    [1900, 2, 28, 59],
    [1900, 2, 29, 60],
    [1900, 3, 1, 61],
    [2000, 2, 29, 36585],
    [2023, 3, 15, 45000],
    [9999, 12, 31, 2_958_465],
  ])("%i-%i-%i is %i", (year, month, day, serial) => {
    expect(serialOfDate(year, month, day)).toBe(serial);
    expect(dateOfSerial(serial)).toEqual({ year, month, day });
  });
  it.each([
    ["month 13 is January of the next year", [2023, 13, 1], [2024, 1, 1]],
    ["month 0 is December of the year before", [2023, 0, 1], [2022, 12, 1]],
    ["day 0 is the last day of the month before", [2024, 3, 0], [2024, 2, 29]],
  ] as const)("%s", (_, [y, m, d], [year, month, day]) => {
    expect(serialOfDate(y, m, d)).toBe(serialOfDate(year, month, day));
  });
  it("has no day before 1900 or after 9999", () => {
    expect([serialOfDate(1899, 12, 31), serialOfDate(10_000, 1, 1)]).toEqual([undefined, undefined]);
  });
  it("comes back from every serial", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2_958_465 }), (serial) => {
        const { year, month, day } = dateOfSerial(serial);
        expect(serialOfDate(year, month, day)).toBe(serial);
        expect(day).toBeLessThanOrEqual(serial === 60 ? 29 : daysInMonth(year, month));
      }),
    );
  });
});
