import { describe, expect, it } from "vitest";
import type { CellFacts, EditOutcome } from "../../../src/workbench/grid/cell-speech";
import { countOf, describeEdit, explainCell, nameCell } from "../../../src/workbench/grid/cell-speech";

const cell: CellFacts = {
  address: "B5",
  shown: "84",
  value: 84,
  hasFormula: false,
  notRecalculated: false,
  choices: false,
};

describe("the name of a cell", () => {
  it.each<[string, Partial<CellFacts>, string]>([
    ["says value, then place", {}, "84, B5"],
    ["says that a formula is there", { hasFormula: true }, "84, formula, B5"],
    ["says that nothing is there", { shown: "", value: null }, "empty, B5"],
    ["says how far a merged cell reaches", { mergedTo: "D5" }, "84, B5 to D5, merged"],
    [
      "says an error by its code",
      { shown: "#DIV/0!", value: { error: "#DIV/0!" }, hasFormula: true },
      "#DIV/0!, formula, B5",
    ],
  ])("%s", (_, facts, name) => {
    expect(nameCell({ ...cell, ...facts })).toBe(name);
  });
});

describe("what is heard after the name", () => {
  it("is nothing for a plain cell", () => {
    expect(explainCell(cell)).toEqual([]);
  });

  it.each<[string, Partial<CellFacts>, string]>([
    ["an error's message", { value: { error: "#VALUE!", message: "Give a number" } }, "Give a number."],
    [
      "what an error means",
      { value: { error: "#DIV/0!" } },
      "The formula divides by zero or by an empty cell.",
    ],
    ["where a spilled value comes from", { spilledFrom: "B2" }, "Filled by the formula in B2."],
    ["a comment", { comment: "Read twice" }, "Comment: Read twice."],
    ["that a list is offered", { choices: true }, "Alt with Down arrow offers a list."],
    ["what lies over the cell", { under: "a chart" }, "Lies under a chart."],
  ])("%s", (_, facts, sentence) => {
    expect(explainCell({ ...cell, ...facts })).toEqual([sentence]);
  });

  it("says that a value was not recalculated", () => {
    expect(explainCell({ ...cell, notRecalculated: true })[0]).toMatch(/^Not recalculated/);
  });
});

describe("what an edit is answered with", () => {
  const edit: EditOutcome = {
    address: "B5",
    typed: "84",
    shown: "84",
    value: 84,
    hasFormula: false,
    calculated: [],
  };
  it.each<[string, Partial<EditOutcome>, string | undefined]>([
    ["nothing where it only repeats what was typed", {}, undefined],
    ["what a typed date shows", { typed: "20/11", shown: "20-Nov", value: 46346 }, "B5 shows 20-Nov."],
    ["the result of a formula", { typed: "=40+44", hasFormula: true }, "B5 gives 84."],
    [
      "the spill",
      { typed: "=X", hasFormula: true, spill: { range: "B5 to B16", cells: 12 } },
      "B5 gives 84. Filled 12 cells, B5 to B16.",
    ],
    [
      "an error with its message",
      { typed: "=1/0", hasFormula: true, value: { error: "#DIV/0!", message: "Divided by 0" } },
      "B5 #DIV/0!: Divided by 0.",
    ],
    [
      "that a result is awaited",
      { typed: "=X", hasFormula: true, value: { error: "#BUSY!" } },
      "B5 is being worked out.",
    ],
    ["a new row of a table", { newRow: "Probes" }, "Row added to table Probes."],
    [
      "calculated columns that changed",
      {
        calculated: [
          { column: "Rate", shown: "79.0" },
          { column: "Accuracy", shown: "94%" },
        ],
      },
      "Rate 79.0. Accuracy 94%.",
    ],
  ])("%s", (_, outcome, words) => {
    expect(describeEdit({ ...edit, ...outcome })).toBe(words);
  });

  it("counts in words that fit", () => {
    expect([countOf(1, "cell"), countOf(12_000, "cell")]).toEqual(["1 cell", "12,000 cells"]);
  });
});
