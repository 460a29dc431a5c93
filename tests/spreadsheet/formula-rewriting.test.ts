import { describe, expect, it } from "vitest";
import { copyFormula, growFormula, shiftFormula } from "../../src/spreadsheet/formula-rewriting";

// The rules are those that Excel documents for inserted, deleted and filled rows (common practice, from memory).
describe("a formula after rows were put in before row 5 (two of them)", () => {
  it.each([
    ["a cell above stays", "A4+1", "A4+1"],
    ["a cell at the place moves", "A5+1", "A7+1"],
    ["absolute references move too", "$A$5", "$A$7"],
    ["a range grows around the place", "SUM(A2:A9)", "SUM(A2:A11)"],
    ["a range that ends above does not grow", "SUM(A2:A4)", "SUM(A2:A4)"],
    ["whole rows move", "SUM(5:6)", "SUM(7:8)"],
    ["whole columns stay", "SUM(B:B)", "SUM(B:B)"],
    ["another sheet stays", "Other!A9", "Other!A9"],
    ["this sheet by its name moves", "'Log'!A9", "Log!A11"],
    ["text that looks like a cell stays", '"A9"&A9', '"A9"&A11'],
    ["a structured reference stays", "SUM(T[A9])+A9", "SUM(T[A9])+A11"],
    ["a spill reference moves", "SUM(D5#)", "SUM(D7#)"],
    ["functions with digits in the name stay", "LOG10(A9)", "LOG10(A11)"],
  ])("%s", (_, before, after) => {
    expect(shiftFormula(before, "Log", "Log", { kind: "insert-rows", at: 4, count: 2 })).toBe(after);
  });
});

describe("a formula after rows 5 and 6 were deleted", () => {
  it.each([
    ["a cell above stays", "A4", "A4"],
    ["a deleted cell", "A5+A9", "#REF!+A7"],
    ["a range loses rows inside", "SUM(A2:A9)", "SUM(A2:A7)"],
    ["a range loses its first rows", "SUM(A5:A9)", "SUM(A5:A7)"],
    ["a range loses its last rows", "SUM(A2:A6)", "SUM(A2:A4)"],
    ["a range wholly deleted", "SUM(A5:A6)", "SUM(#REF!)"],
  ])("%s", (_, before, after) => {
    expect(shiftFormula(before, "Log", "log", { kind: "delete-rows", at: 4, count: 2 })).toBe(after);
  });
});

describe("a formula after a table over A2:C9 got one row", () => {
  const data = { top: 1, left: 0, bottom: 8, right: 2 };
  it.each([
    ["a whole column grows", "SUM(B2:B9)", "SUM(B2:B10)"],
    ["absolute references grow", "SUM($B$2:$B$9)", "SUM($B$2:$B$10)"],
    ["part of a column stays", "SUM(B3:B9)", "SUM(B3:B9)"],
    ["a column beside the table stays", "SUM(D2:D9)", "SUM(D2:D9)"],
  ])("%s", (_, before, after) => {
    expect(growFormula(before, "Log", "Log", data, 1)).toBe(after);
  });
});

describe("a formula copied two rows down and one column right", () => {
  it.each([
    ["relative", "A1*B2", "B3*C4"],
    ["absolute and mixed", "$A$1+$A1+A$1", "$A$1+$A3+B$1"],
    ["range", "SUM(A1:$B$9)", "SUM(B3:$B$9)"],
    ["whole columns", "SUM(A:A)", "SUM(B:B)"],
    ["structured", "T[@Words]", "T[@Words]"],
  ])("%s", (_, before, after) => {
    expect(copyFormula(before, 2, 1)).toBe(after);
  });
  it("becomes #REF! where it leaves the sheet", () => {
    expect(copyFormula("A1", -1, 0)).toBe("#REF!");
  });
});
