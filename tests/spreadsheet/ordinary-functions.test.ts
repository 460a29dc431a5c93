import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { CellValue } from "../../src/domain/cell-value";
import { Calculation, NO_FUNCTIONS } from "../../src/spreadsheet/calculation";
import { OpenWorkbook } from "../../src/spreadsheet/open-workbook";
import { ordinaryFunctionNames } from "../../src/spreadsheet/ordinary/ordinary-library";
import { makeContents, makeSheet, type TestCell } from "./workbook-contents";

/** Values that LibreOffice computed: tests/check-values/make_ordinary_values.py. */
interface CheckValues {
  readonly source: string;
  readonly data: Record<string, readonly (number | string | boolean | null)[]>;
  readonly rows: readonly (readonly [string, CellValue])[];
}
const checks = JSON.parse(
  readFileSync(new URL("../check-values/ordinary-functions.json", import.meta.url), "utf8"),
) as CheckValues;

/** The data on the sheet: text that begins with = is a formula. */
const cells: Record<string, TestCell> = {};
for (const [letter, values] of Object.entries(checks.data)) {
  values.forEach((value, row) => {
    if (value !== null) cells[`${letter}${row + 1}`] = value;
  });
}
const calculation = new Calculation(new OpenWorkbook(makeContents([makeSheet("Data", cells)])), {
  library: NO_FUNCTIONS,
  now: () => 46115.25,
});
const evaluate = (formula: string) => calculation.evaluate(formula, { sheet: "Data", row: 0, column: 25 });

/**
 * Where LibreOffice and Excel differ, what Excel gives (from memory of its documentation): truth values in cells and
 * in text are no numbers, text written as an argument is one, the codes of some errors, and CHAR in code page 1252.
 */
const AS_EXCEL: Readonly<Record<string, CellValue>> = {
  "TRUE&1": "TRUE1",
  'TRUE>"z"': true,
  'CONCATENATE("a",1,TRUE)': "a1TRUE",
  'SUM(A1:A8,3,"4",TRUE)': 29.5,
  "SUM(D1:D8)": 1,
  'PRODUCT(2,"3")': 6,
  "COUNT(A1:D8)": 16,
  "COUNTIF(D1:D8,TRUE)": 2,
  "TYPE(D1)": 4,
  "CODE(CHAR(149))": 149,
  "MODE.SNGL(E1:E8)": { error: "#N/A" },
  "LARGE(F1:F8,9)": { error: "#NUM!" },
  "SMALL(F1:F8,0)": { error: "#NUM!" },
  "SQRT(-1)": { error: "#NUM!" },
  "LN(0)": { error: "#NUM!" },
  "INDEX(E1:E8,9)": { error: "#REF!" },
  'CHOOSE(4,"a","b")': { error: "#VALUE!" },
  'VALUE("x")': { error: "#VALUE!" },
  'MID("Heron",0,2)': { error: "#VALUE!" },
};

const expectValue = (result: unknown, value: unknown): void => {
  if (typeof value === "number" && typeof result === "number") {
    expect(Math.abs(result - value)).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(value)));
  } else if (typeof value === "object" && value !== null && "error" in value) {
    expect(result).toMatchObject({ error: value.error });
  } else {
    expect(result).toEqual(value);
  }
};

describe(`ordinary functions give what ${checks.source} gives`, () => {
  it.each(checks.rows.filter(([formula]) => !(formula in AS_EXCEL)))("%s", async (formula, value) => {
    expectValue(await evaluate(formula.replace(/^\{/, "")), value);
  });
});

describe("where LibreOffice differs, ordinary functions give what Excel gives", () => {
  it.each(Object.entries(AS_EXCEL))("%s", async (formula, value) => {
    expectValue(await evaluate(formula), value);
  });
  it("and LibreOffice does differ there", () => {
    const same = checks.rows.filter(
      ([formula, value]) => JSON.stringify(AS_EXCEL[formula]) === JSON.stringify(value),
    );
    expect(same).toEqual([]);
  });
});

// Functions that LibreOffice 7.4 lacks: Microsoft's documentation of each (from memory).
const DYNAMIC: readonly (readonly [string, unknown])[] = [
  ["XLOOKUP(30,E1:E8,F1:F8)", 4],
  ['XLOOKUP(35,E1:E8,F1:F8,"none")', "none"],
  ["XLOOKUP(35,E1:E8,F1:F8)", { error: "#N/A" }],
  ["XLOOKUP(35,E1:E8,F1:F8,,-1)", 4],
  ["XLOOKUP(35,E1:E8,F1:F8,,1)", 4.5],
  ['XLOOKUP("d*",B1:B8,E1:E8,,2)', 30],
  ['XLOOKUP("heron",B1:B8,E1:E8,,0,-1)', 50],
  ["XLOOKUP(20,E1:E8,E1:F8)", [[20, 2]]],
  ["XLOOKUP({10;30},E1:E8,F1:F8)", [[1], [4]]],
  ["XMATCH(30,E1:E8)", 3],
  ["ROWS(1/0)", { error: "#DIV/0!" }],
  ["COLUMNS(NA())", { error: "#N/A" }],
  ["ROWS({1,2;3,4})", 2],
  ["XMATCH(35,E1:E8,1)", 4],
  [
    "FILTER(E1:F8,F1:F8>8)",
    [
      [70, 8.5],
      [80, 9],
    ],
  ],
  ['FILTER(E1:E8,F1:F8>80,"none")', "none"],
  ["FILTER(E1:E8,F1:F8>80)", { error: "#CALC!" }],
  ["SORT({3;1;2})", [[1], [2], [3]]],
  ["SORT({3;1;2},,-1)", [[3], [2], [1]]],
  [
    'SORT({1,"b";2,"a"},2)',
    [
      [2, "a"],
      [1, "b"],
    ],
  ],
  ["SORT({3,1,2},1,1,TRUE)", [[1, 2, 3]]],
  ['SORTBY({"a";"b";"c"},{2;3;1})', [["c"], ["a"], ["b"]]],
  ['SORTBY({"a";"b";"c"},{1;1;2},-1,{1;2;3},-1)', [["c"], ["b"], ["a"]]],
  ['UNIQUE({"a";"A";"b"})', [["a"], ["b"]]],
  ["UNIQUE({1;2;1},FALSE,TRUE)", 2],
  ["UNIQUE({1,2,1},TRUE)", [[1, 2]]],
  [
    "SEQUENCE(2,3)",
    [
      [1, 2, 3],
      [4, 5, 6],
    ],
  ],
  ["SEQUENCE(3,1,10,-5)", [[10], [5], [0]]],
  ["TAKE(E1:E8,2)", [[10], [20]]],
  ["TAKE(E1:E8,-1)", 80],
  ["DROP(E1:E8,6)", [[70], [80]]],
  [
    "VSTACK({1,2},{3,4})",
    [
      [1, 2],
      [3, 4],
    ],
  ],
  [
    "HSTACK({1;2},{3;4})",
    [
      [1, 3],
      [2, 4],
    ],
  ],
  ["TOCOL({1,2;3,4})", [[1], [2], [3], [4]]],
  ["TOROW({1;2})", [[1, 2]]],
  ["CHOOSECOLS({1,2,3},3,1)", [[3, 1]]],
  ['TEXTBEFORE("a-b-c","-")', "a"],
  ['TEXTBEFORE("a-b-c","-",-1)', "a-b"],
  ['TEXTAFTER("a-b-c","-",2)', "c"],
  ['TEXTAFTER("abc","-")', { error: "#N/A" }],
  [
    'TEXTSPLIT("a,b;c",",",";")',
    [
      ["a", "b"],
      ["c", { error: "#N/A" }],
    ],
  ],
  ["MAP({1,2},LAMBDA(x,x*10))", [[10, 20]]],
  ["BYROW({1,2;3,4},LAMBDA(r,SUM(r)))", [[3], [7]]],
  ["BYCOL({1,2;3,4},LAMBDA(c,SUM(c)))", [[4, 6]]],
  ["REDUCE(1,{2,3},LAMBDA(a,b,a*b))", 6],
  ["SCAN(0,{1,2,3},LAMBDA(a,b,a+b))", [[1, 3, 6]]],
  [
    "MAKEARRAY(2,2,LAMBDA(r,c,r*c))",
    [
      [1, 2],
      [2, 4],
    ],
  ],
  ["TODAY()", 46115],
  ["NOW()", 46115.25],
  [
    "TRANSPOSE({1,2;3,4})",
    [
      [1, 3],
      [2, 4],
    ],
  ],
];

describe("functions that give blocks (Microsoft's documentation, from memory)", () => {
  it.each(DYNAMIC)("%s", async (formula, value) => {
    const result = await evaluate(formula);
    const plain = Array.isArray(result)
      ? result.map((row) =>
          (row as CellValue[]).map((cell) =>
            typeof cell === "object" && cell ? { error: cell.error } : cell,
          ),
        )
      : result;
    expectValue(plain, value);
  });
});

it("every function on the list is checked here", () => {
  const formulas = [...checks.rows.map(([formula]) => formula), ...DYNAMIC.map(([formula]) => formula)];
  const called = new Set(
    formulas.flatMap((formula) => [...formula.matchAll(/([A-Z][A-Z0-9.]*)\(/g)].map(([, name]) => name)),
  );
  expect(ordinaryFunctionNames().filter((name) => !called.has(name))).toEqual([]);
});
