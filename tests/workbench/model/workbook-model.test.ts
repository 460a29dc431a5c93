import { beforeEach, describe, expect, it } from "vitest";
import type { Area } from "../../../src/domain/area";
import type { OpenWorkbook } from "../../../src/spreadsheet/open-workbook";
import { WorkbookModel } from "../../../src/workbench/model/workbook-model";
import { openDescription } from "../../adapters/embedded/open-description";
import { STARTING_WORKBOOK } from "../../contracts/starting-workbook";

const area = (top: number, left: number, bottom: number, right: number): Area => ({
  top,
  left,
  bottom,
  right,
});
const at = (row: number, column: number) => ({ row, column });

let workbook: OpenWorkbook;
let model: WorkbookModel;
const sheet = (name: string) => {
  const found = workbook.sheet(name);
  if (found === undefined) throw new RangeError(name);
  return found;
};
const cell = (name: string, row: number, column: number) => workbook.cell(name, row, column);

beforeEach(() => {
  workbook = openDescription(STARTING_WORKBOOK);
  model = new WorkbookModel(workbook, () => ({ dayOrder: "dmy", year: 2026, date1904: false }));
});

describe("typing into a cell", () => {
  it.each([
    ["a number", "84", 84],
    ["text", "th", "th"],
    ["text after an apostrophe", "'007", "007"],
    ["a truth value", "true", true],
    ["a date, day first", "20/11/2026", 46346],
    ["a share", "90%", 0.9],
    ["nothing", "", null],
  ])("%s", (_, text, value) => {
    expect(model.enter(sheet("Empty"), at(0, 0), [[text]]).ok).toBe(true);
    expect(cell("Empty", 0, 0)?.value ?? null).toEqual(value);
  });

  it("keeps a formula", () => {
    model.enter(sheet("Empty"), at(0, 0), [["=1+2"]]);
    expect(cell("Empty", 0, 0)?.formula).toBe("1+2");
  });

  it("refuses a formula that does not parse and changes nothing", () => {
    const refused = model.enter(sheet("Empty"), at(0, 0), [["=SUM(1"]]);
    expect(refused.ok).toBe(false);
    expect(cell("Empty", 0, 0)).toBeUndefined();
    expect(workbook.canUndo).toBe(false);
  });

  it("below a column of dates takes their format", () => {
    model.enter(sheet("Reading log"), at(5, 0), [["20/11/2026"]]);
    expect(model.shownText(sheet("Reading log"), at(5, 0))).toBe("20/11/2026");
    expect(workbook.styles[workbook.styleAt("Reading log", 5, 0)]?.numberFormat).toBe("dd/mm/yyyy");
  });
});

describe("typing below a table", () => {
  beforeEach(() => {
    workbook.clear("Stacked", area(3, 0, 3, 3));
  });

  it("extends it, with its formats, as one step", () => {
    model.enter(sheet("Stacked"), at(3, 1), [["20/11/2026"]]);
    expect(sheet("Stacked").tables[0]?.area).toEqual(area(0, 0, 3, 1));
    expect(model.shownText(sheet("Stacked"), at(3, 1))).toBe("20 Nov 2026");
    model.undo();
    expect(sheet("Stacked").tables[0]?.area).toEqual(area(0, 0, 2, 1));
    expect(cell("Stacked", 3, 1)?.value ?? null).toBeNull();
  });

  it("extends it by as many rows as are pasted", () => {
    model.enter(sheet("Stacked"), at(3, 0), [["th"], ["wh"], ["ou"]]);
    expect(sheet("Stacked").tables[0]?.area).toEqual(area(0, 0, 5, 1));
  });

  it("does not where the text is beside its columns, or only empties cells", () => {
    model.enter(sheet("Stacked"), at(3, 3), [["th"]]);
    model.enter(sheet("Stacked"), at(3, 0), [[""]]);
    expect(sheet("Stacked").tables[0]?.area).toEqual(area(0, 0, 2, 1));
  });

  it("does not where a totals row ends it", () => {
    model.enter(sheet("Probes"), at(4, 0), [["x"]]);
    expect(sheet("Probes").tables[0]?.area).toEqual(area(0, 0, 3, 4));
  });
});

describe("copying", () => {
  it("adjusts formulas where they are pasted", () => {
    const copied = model.copy(sheet("Reading log"), area(3, 4, 3, 4));
    model.paste(sheet("Reading log"), area(5, 4, 6, 4), copied);
    expect([cell("Reading log", 5, 4)?.formula, cell("Reading log", 6, 4)?.formula]).toEqual([
      "C6-D6",
      "C7-D7",
    ]);
  });

  it("brings number formats along", () => {
    model.paste(sheet("Empty"), area(0, 0, 0, 0), model.copy(sheet("Reading log"), area(3, 0, 3, 0)));
    expect(model.shownText(sheet("Empty"), at(0, 0))).toBe("05/10/2026");
  });

  it("moves cells as one step, their formulas as they were", () => {
    const copied = model.copy(sheet("Reading log"), area(3, 4, 3, 4));
    model.move(sheet("Reading log"), area(3, 6, 3, 6), copied);
    expect(cell("Reading log", 3, 6)?.formula).toBe("C4-D4");
    expect(cell("Reading log", 3, 4)?.formula).toBeUndefined();
    model.undo();
    expect(cell("Reading log", 3, 4)?.formula).toBe("C4-D4");
    expect(cell("Reading log", 3, 6)?.formula).toBeUndefined();
  });

  it("moves onto itself without loss", () => {
    const copied = model.copy(sheet("Reading log"), area(3, 2, 4, 2));
    model.move(sheet("Reading log"), area(4, 2, 4, 2), copied);
    expect([3, 4, 5].map((row) => cell("Reading log", row, 2)?.value ?? null)).toEqual([null, 62, 66]);
  });

  it("fills down from the first selected row, or from the row above a single one", () => {
    model.fillDown(sheet("Reading log"), area(4, 4, 6, 4));
    expect(cell("Reading log", 6, 4)?.formula).toBe("C7-D7");
    model.fillDown(sheet("Reading log"), area(5, 1, 5, 1));
    expect(cell("Reading log", 5, 1)?.value).toBe("Heron");
  });

  it("has nothing to fill from above the first row", () => {
    expect(model.fillDown(sheet("Empty"), area(0, 0, 0, 0)).ok).toBe(false);
  });
});

describe("undoing", () => {
  it("says where it happened", () => {
    model.enter(sheet("Empty"), at(2, 1), [["a"]]);
    expect(model.undo()).toEqual({ sheet: "Empty", area: area(2, 1, 2, 1) });
    expect(model.redo()).toEqual({ sheet: "Empty", area: area(2, 1, 2, 1) });
  });

  it("says where there is nothing to undo", () => {
    expect(model.undo()).toBeUndefined();
  });
});

describe("going to a name", () => {
  it.each([
    ["an address", "B3", { sheet: "Empty", area: area(2, 1, 2, 1) }],
    ["an address of another sheet", "'Reading log'!A1:B2", { sheet: "Reading log", area: area(0, 0, 1, 1) }],
    ["a table", "taught", { sheet: "Stacked", area: area(0, 0, 2, 1) }],
    ["a column of a table with totals", "Probes[Words]", { sheet: "Probes", area: area(1, 2, 2, 2) }],
    ["nothing of this workbook", "Nowhere", undefined],
    ["a sheet that is not there", "Nowhere!A1", undefined],
  ])("%s", (_, text, target) => {
    expect(model.findTarget(text, "Empty")).toEqual(target);
  });
});
