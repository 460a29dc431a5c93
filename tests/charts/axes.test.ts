import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { roundTicks } from "../../src/charts/axis-scale";
import { calendarTicks } from "../../src/charts/calendar-ticks";
import { placeLabels } from "../../src/charts/label-placement";
import { dayOf } from "../../src/domain/calendar";

const day = (year: number, month: number, date: number): number => dayOf({ year, month, date }) ?? NaN;

describe("round ticks", () => {
  it.each([
    { low: 0, high: 60, ticks: [0, 20, 40, 60] },
    { low: 0, high: 61, ticks: [0, 20, 40, 60, 80] },
    { low: 0, high: 1, ticks: [0, 0.2, 0.4, 0.6, 0.8, 1] },
    { low: 0, high: 0.3, ticks: [0, 0.1, 0.2, 0.3] },
    { low: -7, high: 12, ticks: [-10, -5, 0, 5, 10, 15] },
    { low: 0, high: 1e9, ticks: [0, 2e8, 4e8, 6e8, 8e8, 1e9] },
  ])("from $low to $high: $ticks", ({ low, high, ticks }) => expect(roundTicks(low, high, 5)).toEqual(ticks));

  it("cover the span in at most so many steps", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e7, noNaN: true }), fc.integer({ min: 3, max: 8 }), (high, most) => {
        const ticks = roundTicks(0, high, most);
        expect(ticks[0]).toBe(0);
        expect(ticks.at(-1)).toBeGreaterThanOrEqual(high * (1 - 1e-8));
        expect(ticks.length).toBeLessThanOrEqual(most + 1);
      }),
    );
  });
});

describe("calendar ticks", () => {
  const labels = (from: number, to: number, most: number): string[] =>
    calendarTicks(from, to, most).map(({ label, year }) => (year === undefined ? label : `${label} ${year}`));

  it.each([
    { about: "months, the year where it changes", from: day(2026, 10, 20), to: day(2027, 2, 3), most: 8, expected: ["Nov 2026", "Dec", "Jan 2027", "Feb"] },
    { about: "quarters of the year", from: day(2026, 9, 2), to: day(2027, 8, 20), most: 5, expected: ["Oct 2026", "Jan 2027", "Apr", "Jul"] },
    { about: "years", from: day(2020, 5, 1), to: day(2026, 5, 1), most: 7, expected: ["Jan 2021", "Jan 2022", "Jan 2023", "Jan 2024", "Jan 2025", "Jan 2026"] },
    { about: "weeks", from: day(2026, 9, 2), to: day(2026, 9, 30), most: 6, expected: ["2 Sep 2026", "9 Sep", "16 Sep", "23 Sep", "30 Sep"] },
    { about: "days", from: day(2026, 12, 30), to: day(2027, 1, 2), most: 6, expected: ["30 Dec 2026", "31 Dec", "1 Jan 2027", "2 Jan"] },
  ])("$about", ({ from, to, most, expected }) => expect(labels(from, to, most)).toEqual(expected));

  it("are never more than there is room for", () => {
    fc.assert(
      fc.property(fc.integer({ min: 40_000, max: 60_000 }), fc.nat(8000), fc.integer({ min: 2, max: 12 }), (from, span, most) => {
        expect(calendarTicks(from, from + span, most).length).toBeLessThanOrEqual(most);
      }),
    );
  });
});

describe("label placement", () => {
  const bounds = { left: 0, top: 0, right: 200, bottom: 100 };

  it("takes the first place where nothing is in the way", () => {
    const [label] = placeLabels([{ text: "aim", places: [{ x: 50, y: 50, anchor: "start" }, { x: 90, y: 90, anchor: "start" }] }], [], bounds, 12);
    expect(label).toMatchObject({ x: 50, y: 50 });
  });

  it("goes round an obstacle and another label, and stays inside", () => {
    const places = [
      { x: 195, y: 20, anchor: "start" },
      { x: 50, y: 50, anchor: "start" },
      { x: 50, y: 80, anchor: "start" },
    ] as const;
    const obstacle = { left: 40, top: 40, right: 70, bottom: 55 };
    const placed = placeLabels([{ text: "aim", places }, { text: "trend", places: [...places, { x: 120, y: 50, anchor: "start" }] }], [obstacle], bounds, 12);
    expect(placed.map(({ x, y }) => [x, y])).toEqual([
      [50, 80],
      [120, 50],
    ]);
  });

  it("leaves out an optional label that would cover something", () => {
    const obstacle = { left: 0, top: 0, right: 200, bottom: 100 };
    const places = [{ x: 50, y: 50, anchor: "middle" }] as const;
    expect(placeLabels([{ text: "with support", places, optional: true }], [obstacle], bounds, 12)).toEqual([]);
  });
});
