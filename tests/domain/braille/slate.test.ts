import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mirrorForSlate } from "../../../src/domain/braille/slate";

describe("braille for the slate", () => {
  // Dots 1-2-3 change places with 4-5-6 (common practice; cells written out by hand).
  it.each([
    ["⠃⠁⠙", "⠋⠈⠘"],
    ["⠿⠀⠇", "⠸⠀⠿"],
    ["⠁⠃\n⠉", "⠘⠈\n⠉"],
    ["", ""],
  ])("%j is punched as %j", (cells, punched) => {
    expect(mirrorForSlate(cells)).toBe(punched);
  });

  it("is itself again when done twice", () => {
    const cell = fc.integer({ min: 0x2800, max: 0x28ff }).map((code) => String.fromCharCode(code));
    fc.assert(
      fc.property(fc.string({ unit: fc.oneof(cell, fc.constant("\n")) }), (cells) => {
        expect(mirrorForSlate(mirrorForSlate(cells))).toBe(cells);
      }),
    );
  });
});
