import { describe, expect, it } from "vitest";
import type { CellValue } from "../../src/domain/cell-value";
import { parseArea, parseCell } from "../../src/spreadsheet/address";
import { Calculation, NO_FUNCTIONS } from "../../src/spreadsheet/calculation";
import type { FunctionAnswer, FunctionLibrary, SheetFunction } from "../../src/spreadsheet/function-library";
import { OpenWorkbook, type CellContent } from "../../src/spreadsheet/open-workbook";
import type { WorkbookContents, Worksheet } from "../../src/spreadsheet/workbook";
import { makeContents, makeSheet, makeTable, type TestCell } from "./workbook-contents";

const area = (address: string) => {
  const parsed = parseArea(address);
  if (!parsed) throw new RangeError(address);
  return parsed;
};

/** A custom function of any number of arguments. */
const custom = (
  name: string,
  call: SheetFunction["call"],
  result: "scalar" | "matrix" = "scalar",
): SheetFunction => ({
  name,
  description: "",
  parameters: [{ name: "values", type: "any", dimensionality: "matrix", optional: true, repeating: true }],
  result: { dimensionality: result },
  call,
});

const library = (...functions: SheetFunction[]): FunctionLibrary => ({
  find: (name) => functions.find((each) => each.name === name.toUpperCase()),
  names: functions.map(({ name }) => name),
});

class Bench {
  readonly workbook: OpenWorkbook;
  readonly calculation: Calculation;
  clock = 46000.5;
  constructor(
    cells: Record<string, TestCell>,
    more: Partial<Worksheet> = {},
    functions = NO_FUNCTIONS,
    contents: Partial<WorkbookContents> = {},
  ) {
    this.workbook = new OpenWorkbook(makeContents([makeSheet("S", cells, more)], contents));
    this.calculation = new Calculation(this.workbook, { library: functions, now: () => this.clock });
  }
  cell(address: string) {
    const place = parseCell(address);
    return place && this.workbook.cell("S", place.row, place.column);
  }
  value(address: string): CellValue | undefined {
    return this.cell(address)?.value;
  }
  values(addresses: string): unknown[] {
    return addresses.split(" ").map((each) => {
      const value = this.value(each);
      return typeof value === "object" && value !== null ? value.error : value;
    });
  }
  set(address: string, content: CellContent): void {
    const place = parseCell(address);
    if (place) this.workbook.setCell("S", place.row, place.column, content);
  }
}

const ask = async (formula: string, cells: Record<string, TestCell> = {}): Promise<FunctionAnswer> =>
  new Bench(cells).calculation.evaluate(formula, { sheet: "S", row: 20, column: 20 });

// Excel's rules for operators (Microsoft, "Calculation operators and precedence in Excel"; from memory).
describe("operators", () => {
  it.each([
    ["1+2*3", 7],
    ["-2^2", 4],
    ["2^-1", 0.5],
    ["10%", 0.1],
    ["1=1", true],
    ['"a"="A"', true],
    ['"2"+3', 5],
    ['"1:30"+0', 0.0625],
    ["TRUE+1", 2],
    ['1&2&"x"', "12x"],
    ['TRUE&""', "TRUE"],
    ['"a">5', true],
    ['TRUE>"z"', true],
    ["1/0", { error: "#DIV/0!" }],
    ["0^0", { error: "#NUM!" }],
    ["0.1+0.2-0.3", 0],
    ["1E+300*1E+300", { error: "#NUM!" }],
    ["A1=0", true],
    ['A1=""', true],
    ["A1+1", 1],
    [
      "{1,2;3,4}*10",
      [
        [10, 20],
        [30, 40],
      ],
    ],
    [
      "{1;2}+{10,20}",
      [
        [11, 21],
        [12, 22],
      ],
    ],
    ["SUM({1,2,3}*2)", 12],
    ['1/3&""', "0.333333333333333"],
  ])("%s", async (formula, value) => {
    expect(await ask(formula)).toEqual(value);
  });
  it("says what is wrong with text for a number", async () => {
    expect(await ask('"x"+1')).toMatchObject({ error: "#VALUE!", message: expect.stringContaining("x") });
  });
});

describe("names of the language", () => {
  it.each([
    ["LET(x,2,y,x*3,x+y)", 8],
    ["LAMBDA(a,b,a*b)(3,4)", 12],
    ["LET(twice,LAMBDA(x,x*2),twice(twice(5)))", 20],
    ["SUM(MAP({1,2,3},LAMBDA(x,x^2)))", 14],
    ["REDUCE(0,{1,2,3},LAMBDA(a,b,a+b))", 6],
  ])("%s", async (formula, value) => {
    expect(await ask(formula)).toEqual(value);
  });
  it.each([
    ["SUMM(1)", "#NAME?", "SUMM"],
    ["nonsense", "#NAME?", "nonsense"],
    ["1+", "#NAME?", "cannot be read"],
    ["[Book2.xlsx]Sheet1!A1", "#NAME?", "another workbook"],
    ["Nowhere!A1", "#REF!", "Nowhere"],
    ["Probes[Words]", "#REF!", "Probes"],
    ["SUM()", "#VALUE!", "too few"],
  ])("%s is %s and says why", async (formula, error, message) => {
    expect(await ask(formula)).toMatchObject({ error, message: expect.stringContaining(message) });
  });
});

describe("recalculation", () => {
  it("follows an edit through a chain, whatever the order of the cells", () => {
    const bench = new Bench({ A1: 1, C1: "=B1+1", B1: "=A1*10", D1: "=SUM(A1:C1)" });
    expect(bench.values("B1 C1 D1")).toEqual([10, 11, 22]);
    bench.set("A1", 2);
    expect(bench.values("B1 C1 D1")).toEqual([20, 21, 43]);
  });
  it("calculates only what depends on the edit", () => {
    let calls = 0;
    const counted = library(custom("T.COUNT", ([rows]) => (calls++, rows as CellValue)));
    const bench = new Bench({ A1: 1, A2: 2, B1: "=T.COUNT(A1)", B2: "=T.COUNT(A2)" }, {}, counted);
    calls = 0;
    bench.set("A1", 5);
    expect([bench.value("B1"), calls]).toEqual([5, 1]);
  });
  it("treats an empty cell as 0 and clears again", () => {
    const bench = new Bench({ B1: "=A1" });
    bench.set("A1", 7);
    expect(bench.value("B1")).toBe(7);
    bench.workbook.undo();
    expect(bench.value("B1")).toBe(0);
  });
  it("names the cells of a cycle, and recovers once it is broken", () => {
    const bench = new Bench({ A1: "=B1+1", B1: "=C1", C1: "=A1", D1: "=A1" });
    expect(bench.values("A1 B1 C1 D1")).toEqual(["#CALC!", "#CALC!", "#CALC!", "#CALC!"]);
    expect(bench.value("A1")).toMatchObject({ message: expect.stringContaining("A1 → B1") });
    bench.set("C1", 5);
    expect(bench.values("A1 B1 C1 D1")).toEqual([6, 5, 5, 6]);
  });
  it("finds a cell that refers to itself", () => {
    expect(new Bench({ A1: "=SUM(A1:A3)" }).values("A1")).toEqual(["#CALC!"]);
  });
  it("runs down a chain of 20,000 cells", () => {
    const cells: Record<string, TestCell> = { A1: 1 };
    for (let row = 2; row <= 20_000; row++) cells[`A${row}`] = `=A${row - 1}+1`;
    expect(new Bench(cells).value("A20000")).toBe(20_000);
  });
  it("takes TODAY from the clock it is given", () => {
    const bench = new Bench({ A1: "=TODAY()", B1: "=A1+1" });
    bench.clock = 46010.2;
    bench.set("C1", 1);
    expect(bench.values("A1 B1")).toEqual([46010, 46011]);
  });
  it("counts days from 1904 where the workbook does", () => {
    const bench = new Bench({ A1: "=DATE(2026,4,3)", B1: "=YEAR(A1)", C1: "=TODAY()" }, {}, NO_FUNCTIONS, {
      date1904: true,
    });
    expect(bench.values("A1 B1 C1")).toEqual([46115 - 1462, 2026, 46000 - 1462]);
  });
});

describe("spilled results", () => {
  it("fill the cells beside the formula, follow changes of size, and are cleared", () => {
    const bench = new Bench({ A1: 3, B1: "=SEQUENCE(A1)", D1: "=SUM(B1#)", E1: "=B3" });
    expect(bench.values("B1 B2 B3 D1 E1")).toEqual([1, 2, 3, 6, 3]);
    expect(bench.cell("B1")?.spill).toEqual(area("B1:B3"));
    expect(bench.cell("B2")?.spilledFrom).toEqual({ row: 0, column: 1 });
    bench.set("A1", 2);
    expect(bench.values("B2 B3 D1 E1")).toEqual([2, undefined, 3, 0]);
    bench.set("B1", null);
    expect(bench.values("B2 D1")).toEqual([undefined, "#REF!"]);
  });
  it("are #SPILL! while a cell is in the way, and say which", () => {
    const bench = new Bench({ B1: "=SEQUENCE(3)", B3: "mine", C1: "=B2" });
    expect(bench.values("B1 B2 B3 C1")).toEqual(["#SPILL!", undefined, "mine", 0]);
    expect(bench.value("B1")).toMatchObject({ message: expect.stringContaining("B3") });
    bench.workbook.clear("S", area("B3"));
    expect(bench.values("B1 B2 B3 C1")).toEqual([1, 2, 3, 2]);
  });
  it("give way to what is typed into them, and come back by undo", () => {
    const bench = new Bench({ B1: "=SEQUENCE(3)" });
    bench.set("B2", "mine");
    expect(bench.values("B1 B2 B3")).toEqual(["#SPILL!", "mine", undefined]);
    bench.workbook.undo();
    expect(bench.values("B1 B2 B3")).toEqual([1, 2, 3]);
  });
  it("of a formula further down depend on one above", () => {
    const bench = new Bench({ A1: "=SUM(C1:C5)", C1: "=SEQUENCE(B1)", B1: "=COUNT(E1:E9)", E1: 1, E2: 1 });
    expect(bench.value("A1")).toBe(3);
    bench.set("E3", 1);
    expect(bench.value("A1")).toBe(6);
  });
  it("are #SPILL! in a table and over merged cells", () => {
    const tables = [makeTable("T", area("A1:B3"), ["a", "b"])];
    expect(new Bench({ A1: "a", B1: "b", A2: "=SEQUENCE(2)" }, { tables }).values("A2")).toEqual(["#SPILL!"]);
    expect(new Bench({ A1: "=SEQUENCE(2)" }, { merges: [area("A2:B2")] }).values("A1")).toEqual(["#SPILL!"]);
  });
  it("of the file are known from the start", () => {
    const bench = new Bench({
      B1: { value: 1, formula: "SEQUENCE(2)", style: 0, array: "dynamic", spill: area("B1:B2") },
      B2: { value: 2, style: 0, spilledFrom: { row: 0, column: 1 } },
    });
    expect(bench.workbook.difference().changedCells.size).toBe(0);
    bench.set("B1", { formula: "SEQUENCE(1)" });
    expect(bench.values("B1 B2")).toEqual([1, undefined]);
  });
  it("fill exactly the area of an array formula of the file", () => {
    const bench = new Bench({
      A1: { value: null, formula: "{1;2}", style: 0, array: "fixed", spill: area("A1:A3") },
    });
    expect(bench.values("A1 A2 A3")).toEqual([1, 2, "#N/A"]);
  });
  it("mark only formulas that may fill cells as dynamic", () => {
    const bench = new Bench({});
    bench.set("A1", { formula: "1+1" });
    bench.set("B1", { formula: "=SEQUENCE(2)" });
    expect([bench.cell("A1")?.array, bench.cell("B1")?.array]).toEqual([undefined, "dynamic"]);
  });
});

describe("a formula of the file that is no array formula", () => {
  it("takes the cell in its own row from a range (ECMA-376, implicit intersection)", () => {
    const bench = new Bench({
      A1: 1,
      A2: 2,
      A3: 3,
      B2: { value: null, formula: "A1:A3*10", style: 0 },
      C9: { value: null, formula: "A1:A3", style: 0 },
    });
    expect(bench.values("B2 C9")).toEqual([20, "#VALUE!"]);
  });
  it("keeps the file's value, marked, where it uses a function that is not on the list", () => {
    const bench = new Bench({ A1: { value: 42, formula: "CUBEVALUE(1)", style: 0 }, B1: "=A1+1" });
    expect(bench.cell("A1")).toMatchObject({ value: 42, notRecalculated: true });
    expect(bench.value("B1")).toBe(43);
    expect(bench.workbook.difference().changedCells.get("S")).toEqual(new Set([1]));
  });
});

describe("tables", () => {
  const tables = [makeTable("Probes", area("A1:C4"), ["Words", "Errors", "Words right"], true)];
  const cells = { A1: "Words", B1: "Errors", C1: "Words right", A2: 10, B2: 1, A3: 20, B3: 2, A4: "Total" };
  it.each([
    ["SUM(Probes[Words])", 30],
    ["SUM(probes[words])", 30],
    ["ROWS(Probes[#All])", 4],
    ["Probes[[#Headers],[Errors]]", "Errors"],
    ["Probes[[#Totals],[Words]]", "Total"],
    ["SUM(Probes[[Words]:[Errors]])", 33],
    ["COUNTA(Probes[#Data])", 4],
  ])("%s", async (formula, value) => {
    expect(
      await new Bench(cells, { tables }).calculation.evaluate(formula, { sheet: "S", row: 9, column: 9 }),
    ).toEqual(value);
  });
  it("reads its own row, inside the table and beside it", () => {
    const bench = new Bench(
      {
        ...cells,
        C2: "=[@Words]-[@Errors]",
        C3: "=Probes[[#This Row],[Words]]-Probes[@Errors]",
        E3: "=Probes[@Words]",
        E9: "=Probes[@Words]",
      },
      { tables },
    );
    expect(bench.values("C2 C3 E3 E9")).toEqual([9, 18, 20, "#VALUE!"]);
  });
  it("grow, and with them what refers to their columns", () => {
    const own = [makeTable("Probes", area("A1:C3"), ["Words", "Errors", "Right=[@Words]-[@Errors]"])];
    const bench = new Bench(
      { ...cells, A4: null, E1: "=SUM(Probes[Words])", F1: "=SUM(A2:A3)", G1: "=ROWS(Probes)" },
      { tables: own },
    );
    bench.workbook.appendToTable("Probes", [[30, 4]]);
    expect(bench.values("E1 F1 G1 C4")).toEqual([60, 60, 3, 26]);
    bench.workbook.undo();
    expect(bench.values("E1 F1 G1 C4")).toEqual([30, 30, 2, undefined]);
  });
});

describe("defined names", () => {
  it("stand for cells, constants and formulas", () => {
    const names = [
      { name: "Goal", formula: "S!$A$1", hidden: false },
      { name: "Half", formula: "Goal/2", hidden: false },
    ];
    const bench = new Bench({ A1: 60, B1: "=Half+goal" }, {}, NO_FUNCTIONS, { names });
    expect(bench.value("B1")).toBe(90);
    bench.set("A1", 20);
    expect(bench.value("B1")).toBe(30);
  });
});

describe("a name over a whole column of a table", () => {
  it("grows with the table, and so do results", () => {
    const names = [{ name: "Scores", formula: "S!$A$2:$A$3", hidden: false }];
    const tables = [makeTable("T", area("A1:A3"), ["Words"])];
    const bench = new Bench(
      { A1: "Words", A2: 1, A3: 2, C1: "=SUM(Scores)", C2: "=SUM(S!Scores)" },
      { tables },
      NO_FUNCTIONS,
      { names },
    );
    bench.workbook.appendToTable("T", [[10]]);
    expect(bench.values("C1 C2")).toEqual([13, 13]);
    bench.set("A4", 20);
    expect(bench.values("C1 C2")).toEqual([23, 23]);
    bench.workbook.undo();
    bench.workbook.undo();
    expect(bench.values("C1 C2")).toEqual([3, 3]);
  });
});

describe("rows put in and deleted", () => {
  it("leave results right", () => {
    const bench = new Bench({
      A1: 1,
      A2: 2,
      A3: 3,
      B1: "=SUM(A1:A3)",
      C3: "=ROW()",
      D1: "=COUNTBLANK(A1:A3)",
    });
    bench.workbook.insertRows("S", 1, 2);
    expect(bench.values("B1 C5 D1")).toEqual([6, 5, 2]);
    bench.set("A2", 10);
    expect(bench.value("B1")).toBe(16);
    bench.workbook.deleteRows("S", 0, 2);
    bench.workbook.undo();
    expect(bench.values("B1 C5")).toEqual([16, 5]);
  });
  it("spill anew where rows went in between", () => {
    const bench = new Bench({ A1: "=SEQUENCE(3)", A9: "=SUM(A1#)" });
    bench.workbook.insertRows("S", 1, 1);
    expect(bench.values("A1 A2 A3 A4 A10")).toEqual([1, 2, 3, undefined, 6]);
  });
});

describe("custom functions", () => {
  it("that must load something show #BUSY! and then their result", async () => {
    const later = library(custom("T.LATER", ([rows]) => Promise.resolve(`${JSON.stringify(rows)}!`)));
    const bench = new Bench({ A1: 1, B1: "=T.LATER(A1)", C1: '=B1&"?"' }, {}, later);
    expect(bench.values("B1 C1")).toEqual(["#BUSY!", "#BUSY!"]);
    await bench.calculation.idle();
    expect(bench.values("B1 C1")).toEqual(["1!", "1!?"]);
    bench.set("A1", 2);
    bench.set("A1", 3);
    await bench.calculation.idle();
    expect(bench.value("C1")).toBe("3!?");
  });
  it("that fail to load give #VALUE! and tell nothing of what went wrong inside", async () => {
    const failing = library(custom("T.FAIL", () => Promise.reject(new Error("secret"))));
    const bench = new Bench({ B1: "=T.FAIL(1)" }, {}, failing);
    await bench.calculation.idle();
    expect(JSON.stringify(bench.value("B1"))).not.toContain("secret");
    expect(bench.values("B1")).toEqual(["#VALUE!"]);
  });
  it("get a block as rows, an empty cell as null and a missing argument as null", () => {
    const seen: unknown[] = [];
    const spy = library(custom("T.SPY", (args) => (seen.push(args), 1)));
    new Bench({ A1: 1, A2: "x", B9: "=T.SPY(A1:B2,,A1)" }, {}, spy);
    expect(seen).toEqual([
      [
        [
          [1, null],
          ["x", null],
        ],
        null,
        1,
      ],
    ]);
  });
  it("come with their error message into the cell", () => {
    const refusing = library(custom("T.NO", () => ({ error: "#NUM!", message: "seconds must be above 0" })));
    expect(new Bench({ A1: "=T.NO(1)" }, {}, refusing).value("A1")).toEqual({
      error: "#NUM!",
      message: "seconds must be above 0",
    });
  });
  it("may be added once they are loaded", () => {
    const bench = new Bench({ A1: "=T.ONE()" });
    expect(bench.values("A1")).toEqual(["#NAME?"]);
    bench.calculation.useLibrary(library(custom("T.ONE", () => 1)));
    expect(bench.value("A1")).toBe(1);
  });
});
