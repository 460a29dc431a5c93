import { describe, expect, it } from "vitest";
import { makeLibrary } from "../../../src/adapters/custom-functions/bundle-library";
import {
  CustomFunctionError,
  makeRuntime,
  type AssociatedFunction,
} from "../../../src/adapters/custom-functions/custom-functions-runtime";
import { parseMetadata } from "../../../src/adapters/custom-functions/function-metadata";
import type { FunctionAnswer } from "../../../src/spreadsheet/function-library";

interface Declared {
  readonly name: string;
  readonly type?: string;
  readonly dimensionality?: string;
  readonly optional?: boolean;
}

/** One function with these parameters, through the whole way from functions.json to the call. */
const open = (called: AssociatedFunction, parameters: readonly Declared[], passesErrors = true) => {
  const { runtime, functions } = makeRuntime();
  runtime.associate("TRY", called);
  const metadata = {
    allowErrorForDataTypeAny: passesErrors,
    functions: [{ id: "TRY", name: "TRY", description: "d", parameters, result: {} }],
  };
  const found = makeLibrary(parseMetadata(JSON.stringify(metadata)), functions).find("braille.try");
  if (!found) throw new TypeError("not found");
  return (...args: FunctionAnswer[]) => found.call(args);
};
const echo: AssociatedFunction = (given) => given;
const scalar = (type: string): Declared[] => [{ name: "x", type }];
const matrix = (type: string): Declared[] => [{ name: "x", type, dimensionality: "matrix" }];

describe("the library", () => {
  it("has the namespace, in any case, and knows what it holds", () => {
    const { runtime, functions } = makeRuntime();
    runtime.associate({ ONE: () => 1 });
    const library = makeLibrary(parseMetadata('{"functions":[{"id":"ONE","parameters":[]}]}'), functions);
    expect(library.names).toEqual(["BRAILLE.ONE"]);
    expect(library.find("Braille.One")?.call([])).toBe(1);
    expect(library.find("ONE")).toBeUndefined();
  });
  it("refuses files that do not belong together", () => {
    expect(() => makeLibrary(parseMetadata('{"functions":[{"id":"GONE"}]}'), new Map())).toThrow(/GONE/);
    expect(() => parseMetadata("{}")).toThrow(TypeError);
  });
});

// How Excel hands arguments to custom functions (Microsoft's documentation, August 2026, as in excel-and-files.md).
describe("a scalar argument", () => {
  it.each([
    ["number", "12", 12],
    ["number", true, 1],
    ["string", 1.5, "1.5"],
    ["boolean", 1, true],
    ["any", "x", "x"],
    ["number", null, null],
  ] as const)("declared %s takes %j as %j", (type, given, passed) => {
    expect(open(echo, scalar(type))(given)).toEqual(passed);
  });
  it("that is no number is #VALUE! and never reaches the function", () => {
    let calls = 0;
    expect(open(() => ++calls, scalar("number"))("x")).toMatchObject({ error: "#VALUE!" });
    expect(calls).toBe(0);
  });
  it("given a block gives a block, one call a cell", () => {
    const add = open((a, b) => Number(a) + Number(b), [...scalar("number"), { name: "y", type: "number" }]);
    expect(
      add(
        [
          [1, 2],
          [3, 4],
        ],
        10,
      ),
    ).toEqual([
      [11, 12],
      [13, 14],
    ]);
    expect(add([[1], [2]], [[10, 20]])).toEqual([
      [11, 21],
      [12, 22],
    ]);
  });
  it("given a block waits for all promises", async () => {
    const later = open((x) => Promise.resolve(Number(x) * 2), scalar("number"));
    expect(await later([[1, 2]])).toEqual([[2, 4]]);
  });
});

describe("a matrix argument", () => {
  it("gets one value as a block, and an empty cell as null", () => {
    expect(open((x) => JSON.stringify(x), matrix("any"))("a")).toBe('[["a"]]');
    expect(open((x) => JSON.stringify(x), matrix("any"))([[1, null]])).toBe("[[1,null]]");
  });
  it("passes error cells to any, and takes them back", () => {
    const seen: unknown[] = [];
    const spy = open((x) => (seen.push(x), x), matrix("any"));
    expect(spy([[{ error: "#DIV/0!", message: "m" }, 1]])).toEqual([[{ error: "#DIV/0!", message: "m" }, 1]]);
    expect((seen[0] as unknown[][])[0]?.[0]).toBeInstanceOf(CustomFunctionError);
  });
  it("of numbers, or without the permission for errors, lets the error be the result", () => {
    expect(open(echo, matrix("number"))([[1, { error: "#N/A" }]])).toEqual({ error: "#N/A" });
    expect(open(echo, matrix("any"), false)([[{ error: "#N/A" }]])).toEqual({ error: "#N/A" });
  });
});

describe("what a function gives", () => {
  it("throws as an error meant for the cell arrives with its message", () => {
    const refuse = open(() => {
      throw new CustomFunctionError("#NUM!", "seconds must be above 0");
    }, []);
    expect(refuse()).toEqual({ error: "#NUM!", message: "seconds must be above 0" });
  });
  it("throws otherwise is #VALUE! and tells nothing of what went wrong inside", async () => {
    const fail = open(() => {
      throw new Error("Heron read 12 words");
    }, []);
    expect(fail()).toMatchObject({ error: "#VALUE!" });
    expect(JSON.stringify(fail())).not.toContain("Heron");
    const late = open(() => Promise.reject(new Error("Heron")), []);
    expect(JSON.stringify(await late())).not.toContain("Heron");
  });
  it.each([
    [NaN, { error: "#NUM!" }],
    [undefined, null],
    [
      [[1, 2], [3]],
      [
        [1, 2],
        [3, { error: "#N/A" }],
      ],
    ],
    [[["a", new CustomFunctionError("#N/A", "none")]], [["a", { error: "#N/A", message: "none" }]]],
    [new Date(0), { error: "#VALUE!" }],
  ])("%j arrives as %j", (given, arrived) => {
    const result = open(() => given, [])();
    if (given instanceof Date) expect(result).toMatchObject(arrived as object);
    else expect(result).toEqual(arrived);
  });
});
