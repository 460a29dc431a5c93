import { describe, expect, it } from "vitest";
import { CELL_HEIGHT, placeDots, placesOfCell, widthOfCells } from "../../../src/domain/braille/dimensions";

/** NLS Specification 800, section 3.2, as quoted by the Braille Authority of North America: millimetres. */
const SPECIFICATION = { dotToDot: 2.34, cellToCell: 6.2, dotBase: 1.44 };

describe("dots on paper", () => {
  it.each([
    ["dot 1 is the origin", "⠁", [[0, 0]]],
    [
      "dots 1, 2 and 3 stand under each other",
      "⠇",
      [
        [0, 0],
        [0, 2.34],
        [0, 4.68],
      ],
    ],
    [
      "dots 4, 5 and 6 stand to the right of them",
      "⠸",
      [
        [2.34, 0],
        [2.34, 2.34],
        [2.34, 4.68],
      ],
    ],
    [
      "the next cell begins 6.2 mm on",
      "⠁⠁",
      [
        [0, 0],
        [6.2, 0],
      ],
    ],
    [
      "a blank cell takes its room",
      "⠁⠀⠈",
      [
        [0, 0],
        [14.74, 0],
      ],
    ],
    ["nothing has no dots", "", []],
  ])("%s", (_what, cells, places) => {
    expect(placeDots(cells).map(({ x, y }) => [round(x), round(y)])).toEqual(places);
  });

  it("gives all six places of a cell, those of ⠿", () => {
    expect(placesOfCell(2)).toEqual(placeDots("⠀⠀⠿"));
  });

  it("measures from edge to edge", () => {
    const { dotBase, cellToCell, dotToDot } = SPECIFICATION;
    expect(widthOfCells(40)).toBeCloseTo(39 * cellToCell + dotToDot + dotBase, 10);
    expect(widthOfCells(1)).toBeCloseTo(3.78, 10);
    expect(widthOfCells(0)).toBe(0);
    expect(CELL_HEIGHT).toBeCloseTo(6.12, 10);
  });

  it.each(["⡀", "⢀", "a", "\n"])("has no place for %j", (cells) => {
    expect(() => placeDots(cells)).toThrow(RangeError);
  });
});

const round = (length: number): number => Number(length.toFixed(6));
