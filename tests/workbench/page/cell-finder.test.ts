import { describe, expect, it } from "vitest";
import { WorkbookModel } from "../../../src/workbench/model/workbook-model";
import { findCells, nextMatch } from "../../../src/workbench/page/cell-finder";
import { openDescription } from "../../adapters/embedded/open-description";
import { STARTING_WORKBOOK } from "../../contracts/starting-workbook";

const workbook = openDescription(STARTING_WORKBOOK);
const model = new WorkbookModel(workbook, () => ({ dayOrder: "dmy", year: 2026, date1904: false }));
const find = (sheet: string, text: string): string[] => {
  const found = workbook.sheet(sheet);
  return found === undefined
    ? []
    : findCells(model, found, text).map(({ row, column }) => `${String(row)},${String(column)}`);
};

describe("findCells", () => {
  it.each([
    ["text in any case, in reading order", "Reading log", "heron", ["3,1", "4,1"]],
    ["a date as it is shown", "Reading log", "12/10/2026", ["4,0"]],
    ["a piece of a formula", "Reading log", "c4-", ["3,4"]],
    ["braille", "Kept", "⠗⠕", ["1,2"]],
    ["nothing for nothing", "Kept", "", []],
    ["nothing where nothing is", "Empty", "a", []],
  ])("finds %s", (_, sheet, text, places) => {
    expect(find(sheet, text)).toEqual(places);
  });
});

describe("nextMatch", () => {
  const found = [
    { row: 1, column: 1 },
    { row: 1, column: 4 },
    { row: 5, column: 0 },
  ];
  it.each([
    ["the next in the same row", { row: 1, column: 1 }, 1, 1],
    ["the next row", { row: 2, column: 9 }, 1, 2],
    ["round to the first", { row: 5, column: 0 }, 1, 0],
    ["the one before", { row: 1, column: 4 }, -1, 0],
    ["round to the last", { row: 0, column: 0 }, -1, 2],
  ] as const)("%s", (_, from, step, at) => {
    expect(nextMatch(found, from, step)).toBe(at);
  });
});
