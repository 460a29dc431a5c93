import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { makeAxis } from "../../../src/workbench/grid/axis";
import { scrollToShow, windowOf } from "../../../src/workbench/grid/virtual-window";

const rows = makeAxis(
  50_000,
  20,
  new Map([
    [10, 0],
    [12, 60],
  ]),
);

describe("windowOf", () => {
  it.each([
    ["at the top", 0, 0, { first: 0, last: 21 }],
    ["far down", 400_000, 0, { first: 19_997, last: 20_021 }],
    ["at the end", 1_000_000, 0, { first: 49_997, last: 49_999 }],
    ["beyond three frozen rows", 0, 3, { first: 3, last: 24 }],
  ])("%s", (_, scroll, frozen, wanted) => {
    expect(windowOf(rows, scroll, 400, frozen, 2)).toEqual(wanted);
  });

  it("holds every row that is in view, whatever the scroll", () => {
    fc.assert(
      fc.property(fc.nat(999_000), fc.nat(5), (scroll, frozen) => {
        const { first, last } = windowOf(rows, scroll, 400, frozen, 0);
        const frozenSize = rows.startOf(frozen);
        expect(rows.startOf(first) - frozenSize).toBeLessThanOrEqual(scroll);
        expect(Math.min(rows.total, scroll + frozenSize + 400)).toBeLessThanOrEqual(rows.startOf(last + 1));
      }),
    );
  });
});

describe("scrollToShow", () => {
  it.each([
    ["stays where the row is in view", 5, 0, 0],
    ["goes down just as far as needed", 30, 0, 240],
    ["goes up to a row above", 30, 4_000, 620],
    ["stays for a frozen row", 1, 4_000, 4_000],
  ])("%s", (_, row, scroll, wanted) => {
    expect(scrollToShow(rows, row, scroll, 400, row === 1 ? 3 : 0)).toBe(wanted);
  });

  it("leaves the row in view", () => {
    fc.assert(
      fc.property(fc.nat(49_999), fc.nat(900_000), (row, from) => {
        const scroll = scrollToShow(rows, row, from, 400, 0);
        expect(rows.startOf(row)).toBeGreaterThanOrEqual(scroll);
        expect(rows.startOf(row) + rows.sizeOf(row)).toBeLessThanOrEqual(scroll + 400);
      }),
    );
  });
});
