import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dateOf, dayOf, formatDay } from "../../src/domain/calendar";
import type { Day } from "../../src/domain/units";

describe("days as serial numbers", () => {
  it.each([
    { serial: 1, year: 1900, month: 1, date: 1, source: "ECMA-376 part 1, 18.17.4.1" },
    { serial: 59, year: 1900, month: 2, date: 28, source: "before the day that never was" },
    { serial: 61, year: 1900, month: 3, date: 1, source: "after it" },
    { serial: 25_569, year: 1970, month: 1, date: 1, source: "any spreadsheet program" },
    { serial: 36_584, year: 2000, month: 2, date: 28, source: "any spreadsheet program" },
    { serial: 36_585, year: 2000, month: 2, date: 29, source: "leap year of a 400" },
    { serial: 46_302, year: 2026, month: 10, date: 7, source: "25569 + 20733 days" },
  ])("$serial is $date.$month.$year ($source)", ({ serial, year, month, date }) => {
    expect(dateOf(serial as Day)).toEqual({ year, month, date });
    expect(dayOf({ year, month, date })).toBe(serial);
  });

  it("agrees with the clock of JavaScript on every day from 1 March 1900", () => {
    fc.assert(
      fc.property(fc.integer({ min: 61, max: 150_000 }), (serial) => {
        const clock = new Date(Date.UTC(1970, 0, 1) + (serial - 25_569) * 86_400_000);
        const date = dateOf(serial as Day);
        expect(date).toEqual({
          year: clock.getUTCFullYear(),
          month: clock.getUTCMonth() + 1,
          date: clock.getUTCDate(),
        });
        expect(dayOf(date)).toBe(serial);
      }),
    );
  });

  it.each([
    { year: 1900, month: 2, date: 29 },
    { year: 2026, month: 2, date: 29 },
    { year: 2026, month: 13, date: 1 },
    { year: 2026, month: 4, date: 31 },
    { year: 1899, month: 12, date: 31 },
    { year: 2026, month: 0, date: 1 },
  ])("there is no $date.$month.$year", (date) => expect(dayOf(date)).toBeUndefined());

  it("writes the month as a word and ignores the time of day", () => {
    expect(formatDay(46_302.75 as Day)).toBe("7 Oct 2026");
    expect(() => dateOf(0 as Day)).toThrow(RangeError);
  });
});
