import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { repeatInto } from "../../../src/workbench/grid/grid-clipboard";
import { formatTabSeparated, parseTabSeparated } from "../../../src/workbench/grid/tab-separated";

describe("parseTabSeparated", () => {
  it.each([
    ["one cell", "84", [["84"]]],
    [
      "rows and columns",
      "a\tb\nc\td",
      [
        ["a", "b"],
        ["c", "d"],
      ],
    ],
    ["the last line break that programs add", "a\tb\r\n", [["a", "b"]]],
    [
      "an empty cell at the end",
      "a\t\nb\tc",
      [
        ["a", ""],
        ["b", "c"],
      ],
    ],
    [
      "rows of unequal length",
      "a\nb\tc",
      [
        ["a", ""],
        ["b", "c"],
      ],
    ],
    ["a line break inside quotation marks", '"one\ntwo"\tb', [["one\ntwo", "b"]]],
    ["doubled quotation marks", '"say ""th"""\tb', [['say "th"', "b"]]],
    ["quotation marks that only begin a word", '"th" is said', [['"th" is said']]],
    ["a quotation mark never closed", '"open\tb', [['"open', "b"]]],
  ])("reads %s", (_, text, rows) => {
    expect(parseTabSeparated(text)).toEqual(rows);
  });

  it("reads back what was formatted", () => {
    const text = fc.string({ unit: fc.constantFrom("a", '"', "\t", "\n", " ", "⠓") });
    fc.assert(
      fc.property(
        fc
          .integer({ min: 1, max: 4 })
          .chain((width) =>
            fc.array(fc.array(text, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 4 }),
          ),
        (rows) => {
          // A lone last line that is empty cannot be told from the line break that programs add.
          fc.pre(rows.at(-1)?.join("") !== "" || (rows[0]?.length ?? 0) > 1);
          expect(parseTabSeparated(formatTabSeparated(rows))).toEqual(rows);
        },
      ),
    );
  });
});

describe("repeatInto", () => {
  const area = { top: 0, left: 0, bottom: 3, right: 1 };

  it("fills the selection with one text", () => {
    expect(repeatInto(area, [["x"]])).toEqual(Array.from({ length: 4 }, () => ["x", "x"]));
  });

  it("repeats a block that fits a whole number of times", () => {
    expect(
      repeatInto(area, [
        ["a", "b"],
        ["c", "d"],
      ]),
    ).toEqual([
      ["a", "b"],
      ["c", "d"],
      ["a", "b"],
      ["c", "d"],
    ]);
  });

  it("leaves a block that does not fit as it is", () => {
    const rows = [["a", "b", "c"]];
    expect(repeatInto(area, rows)).toBe(rows);
  });
});
