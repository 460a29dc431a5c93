import { describe, expect, it } from "vitest";
import { formatAnswer, runCalc, type CalcHost } from "../../../src/cli/commands/calc";
import { Calculation, NO_FUNCTIONS } from "../../../src/spreadsheet/calculation";
import { OpenWorkbook } from "../../../src/spreadsheet/open-workbook";
import { refusal, success } from "../../../src/domain/result";
import { makeContents, makeSheet, makeTable } from "../../spreadsheet/workbook-contents";

/** Runs `calc` over a workbook with a table; the file `broken.xlsx` is refused. */
async function calc(args: readonly string[], lines: readonly string[] = []) {
  const printed = { out: "", err: "" };
  const tables = [makeTable("Probes", { top: 0, left: 0, bottom: 2, right: 0 }, ["Words"])];
  const host: CalcHost = {
    streams: { out: (text) => void (printed.out += text), err: (text) => void (printed.err += text) },
    files: {
      read: (path) =>
        path.startsWith("no")
          ? Promise.reject(Object.assign(new Error(path), { code: "ENOENT" }))
          : Promise.resolve(new TextEncoder().encode(path)),
      replace: () => Promise.resolve(),
    },
    openDesk: async (bytes) => {
      if (bytes && new TextDecoder().decode(bytes) === "broken.xlsx")
        return refusal("not-a-workbook", "This file is not an .xlsx workbook.");
      const sheet = bytes
        ? makeSheet("Log", { A1: "Words", A2: 40, A3: 2, B1: "=1/0" }, { tables })
        : makeSheet("Sheet1", {});
      const calculation = new Calculation(new OpenWorkbook(makeContents([sheet])), {
        library: NO_FUNCTIONS,
        now: () => 46_115,
      });
      return success({
        evaluate: (formula: string) =>
          calculation.evaluate(formula, { sheet: sheet.name, row: 0, column: 0 }),
      });
    },
    readLines: async function* () {
      yield* lines;
    },
  };
  return { code: await runCalc(args, host), ...printed };
}

describe("one formula", () => {
  it.each([
    ["=1+1", '{"value":2}'],
    ["1+1", '{"value":2}'],
    ['="a"&"b"', '{"value":"ab"}'],
    ["=TRUE", '{"value":true}'],
    ["={1,2;3,#N/A}", '{"value":[[1,2],[3,{"error":"#N/A"}]]}'],
    ["=A1:B1", '{"value":[[null,null]]}'],
    ["=A1", '{"value":null}'],
    ["=1/0", '{"error":"#DIV/0!"}'],
  ])("%s prints %s and exits 0", async (formula, printed) => {
    expect(await calc([formula])).toEqual({ code: 0, out: `${printed}\n`, err: "" });
  });
  it("names a function that is not on the list", async () => {
    const { code, out } = await calc(["=SUMM(1)"]);
    expect([code, JSON.parse(out)]).toEqual([
      0,
      { error: "#NAME?", message: expect.stringContaining("SUMM") },
    ]);
  });
  it("says where a formula cannot be read", async () => {
    expect(JSON.parse((await calc(["=SUM(1"])).out)).toMatchObject({
      error: "#NAME?",
      message: expect.stringContaining("parenthesis"),
    });
  });
  it("has no limit of 255 characters on text", async () => {
    expect((await calc([`=LEN("${"a".repeat(100_000)}")`])).out).toBe('{"value":100000}\n');
  });
  it("refers to the sheets and tables of --workbook", async () => {
    expect((await calc(["=SUM(Probes[Words])+Log!A2", "--workbook", "f.xlsx"])).out).toBe('{"value":82}\n');
  });
});

describe("--lines", () => {
  it("answers a formula a line and exits 0, errors included", async () => {
    const { code, out } = await calc(["--lines", "-"], ["=1+1", "", "=1/0", "=SUM(", "=SEQUENCE(2)"]);
    const answers = out
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(code).toBe(0);
    expect(answers.map((answer) => answer["value"] ?? answer["error"])).toEqual([
      2,
      "#NAME?",
      "#DIV/0!",
      "#NAME?",
      [[1], [2]],
    ]);
  });
});

describe("wrong usage and files that cannot be read", () => {
  it.each([
    ["no formula", [], 2, /Give a formula/],
    ["two formulas", ["=1", "=2"], 2, /one formula/],
    ["a formula and --lines", ["=1", "--lines", "-"], 2, /not both/],
    ["an unknown option", ["--frob"], 2, /frob/],
    ["a file that is not there", ["=1", "--workbook", "no.xlsx"], 1, /no such file/],
    ["a file that is no workbook", ["=1", "--workbook", "broken.xlsx"], 1, /not an .xlsx workbook/],
  ])("%s", async (_, args, code, message) => {
    const run = await calc(args);
    expect([run.code, run.out]).toEqual([code, ""]);
    expect(run.err).toMatch(message);
  });
});

it("an error inside a block has no message, one alone has", () => {
  expect(formatAnswer({ error: "#NUM!", message: "m" })).toBe('{"error":"#NUM!","message":"m"}');
  expect(formatAnswer([[{ error: "#NUM!", message: "m" }]])).toBe('{"value":[[{"error":"#NUM!"}]]}');
});
