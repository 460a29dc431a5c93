import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { makeAxis } from "../../../src/workbench/grid/axis";

const sizes = fc.dictionary(fc.nat(60).map(String), fc.integer({ min: 0, max: 90 }));
const axisOf = (exceptions: Record<string, number>) =>
  makeAxis(60, 20, new Map(Object.entries(exceptions).map(([index, size]) => [Number(index), size])));

describe("makeAxis", () => {
  it("adds up sizes, exceptions in place of the usual", () => {
    const axis = makeAxis(
      4,
      20,
      new Map([
        [1, 50],
        [2, 0],
      ]),
    );
    expect([0, 1, 2, 3, 4].map((index) => axis.startOf(index))).toEqual([0, 20, 70, 70, 90]);
    expect(axis.total).toBe(90);
  });

  it.each([
    ["in the first", 0, 0],
    ["at the beginning of the second", 20, 1],
    ["in the enlarged one", 69, 1],
    ["past a hidden one", 70, 3],
    ["beyond the end", 500, 3],
    ["before the beginning", -5, 0],
  ])("finds the one that holds a distance %s", (_, offset, index) => {
    expect(
      makeAxis(
        4,
        20,
        new Map([
          [1, 50],
          [2, 0],
        ]),
      ).indexAt(offset),
    ).toBe(index);
  });

  it("each one ends where the next begins", () => {
    fc.assert(
      fc.property(sizes, fc.nat(58), (exceptions, index) => {
        const axis = axisOf(exceptions);
        expect(axis.startOf(index) + axis.sizeOf(index)).toBe(axis.startOf(index + 1));
      }),
    );
  });

  it("finds for each that is not hidden its own beginning", () => {
    fc.assert(
      fc.property(sizes, fc.nat(59), (exceptions, index) => {
        const axis = axisOf(exceptions);
        fc.pre(axis.sizeOf(index) > 0);
        expect(axis.indexAt(axis.startOf(index))).toBe(index);
      }),
    );
  });

  it("passes hidden ones and says where none is left", () => {
    const axis = makeAxis(
      4,
      20,
      new Map([
        [1, 0],
        [2, 0],
        [3, 0],
      ]),
    );
    expect(axis.visibleFrom(3, -1)).toBe(0);
    expect(axis.visibleFrom(1, 1)).toBeUndefined();
  });

  it("costs no more for a million rows than for their exceptions", () => {
    const axis = makeAxis(1_048_576, 20, new Map([[900_000, 40]]));
    expect(axis.startOf(1_000_000)).toBe(20_000_020);
    expect(axis.indexAt(20_000_020)).toBe(1_000_000);
  });
});
