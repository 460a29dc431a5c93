import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { wrapCells } from "../../../src/domain/braille/page";

const lines = (cells: string, most: number): readonly string[] => {
  const wrapped = wrapCells(cells, most);
  if (!wrapped.ok) throw new Error(wrapped.fault.message);
  return wrapped.value;
};

describe("lines of cells", () => {
  it.each([
    ["one line where all fits", "⠁⠀⠃", 3, ["⠁⠀⠃"]],
    ["words moved whole", "⠁⠁⠀⠃⠃⠀⠉", 4, ["⠁⠁", "⠃⠃⠀⠉"]],
    ["a word that fills the line", "⠁⠁⠁⠀⠃⠃⠃", 3, ["⠁⠁⠁", "⠃⠃⠃"]],
    ["a word longer than a line broken at its end", "⠁⠃⠉⠙⠑", 2, ["⠁⠃", "⠉⠙", "⠑"]],
    ["the rest of a broken word goes on with the next", "⠁⠃⠉⠀⠙", 2, ["⠁⠃", "⠉", "⠙"]],
    ["an indent kept", "⠀⠀⠁⠀⠃", 3, ["⠀⠀⠁", "⠃"]],
    ["blanks between words kept inside a line, dropped at its end", "⠁⠀⠀⠃⠀⠀⠉", 4, ["⠁⠀⠀⠃", "⠉"]],
    ["trailing blanks dropped", "⠁⠀⠀", 5, ["⠁"]],
    ["line breaks and empty lines of the text", "⠁\n\n⠃", 5, ["⠁", "", "⠃"]],
    ["one cell a line", "⠁⠃⠀⠉", 1, ["⠁", "⠃", "⠉"]],
  ])("%s", (_what, cells, most, expected) => {
    expect(lines(cells, most)).toEqual(expected);
  });

  it("gives none for an empty text", () => {
    expect(lines("", 40)).toEqual([]);
  });

  it.each([0, -1, 1.5, Number.NaN, Number.POSITIVE_INFINITY])("refuses %d cells a line", (most) => {
    const refused = wrapCells("⠁", most);
    expect(refused.ok ? undefined : refused.fault.code).toBe("not-a-line-length");
  });

  it("never gives a line longer than asked, nor loses or moves a cell", () => {
    const text = fc.array(fc.constantFrom("⠀", "⠀", "⠁", "⠃", "⠉", "⠙", "\n")).map((cells) => cells.join(""));
    fc.assert(
      fc.property(text, fc.integer({ min: 1, max: 12 }), (cells, most) => {
        const wrapped = lines(cells, most);
        for (const line of wrapped) {
          expect(line.length).toBeLessThanOrEqual(most);
          expect(line.endsWith("⠀")).toBe(false);
        }
        expect(wrapped.join("").replaceAll("⠀", "")).toBe(cells.replaceAll(/[⠀\n]/g, ""));
      }),
    );
  });
});
