import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { isErrorCell, toCellError } from "../../functions/cell-error";
import { numberOf, pooledText, readSeries, textOf } from "../../functions/cell-reading";
import { giveRows, mapCells } from "../../functions/shape";
import { answerOfCall, CellErrorStandIn, standInForCustomFunctions } from "./cell-error-stand-in";

beforeAll(standInForCustomFunctions);

const sum = (...cells: unknown[]): number => cells.reduce<number>((total, cell) => total + Number(cell), 0);
const UNEQUAL = [[{ code: "#VALUE!", message: expect.stringMatching(/differ in size/) as string }]];

describe("a map over several arguments", () => {
  it("repeats single cells to the shape of the ranges", () => {
    expect(mapCells([[[1]], [[1, 2, 3]], [[10]]], sum)).toEqual([[12, 13, 14]]);
    expect(mapCells([[[1]], [[2]]], sum)).toEqual([[3]]);
  });

  it.each([
    ["a row and a column", [[1, 2]], [[1], [2]]],
    ["different heights", [[1], [2]], [[1], [2], [3]]],
    [
      "a row and a block",
      [[1, 2]],
      [
        [1, 2],
        [3, 4],
      ],
    ],
  ])("refuses %s", async (_what, one, other) => {
    expect(await answerOfCall(() => mapCells([one, other], sum))).toEqual(UNEQUAL);
  });

  it("gives the shape of the range, whatever it is", () => {
    const block = fc
      .tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 6 }))
      .chain(([height, width]) =>
        fc.array(fc.array(fc.integer(), { minLength: width, maxLength: width }), {
          minLength: height,
          maxLength: height,
        }),
      );
    fc.assert(
      fc.property(block, (rows) => {
        expect(mapCells([rows, [[0]]], sum)).toEqual(rows.map((row) => row.map((cell) => cell + 0)));
      }),
    );
  });

  it("takes null, which a host hands over for an empty cell, as one blank", () => {
    expect(mapCells([null, [[1, 2]]], sum)).toEqual([["", ""]]);
    expect(mapCells([undefined], sum)).toEqual([[""]]);
    expect(pooledText(null)).toBe("");
  });

  it("never computes on blanks or errors, and passes the first error on", () => {
    const [first, second] = [{ error: "#REF!" }, { error: "#N/A" }];
    const refuse = (): number => {
      throw new TypeError("computed");
    };
    expect(mapCells([[[null, first, ""]], [[second, second, 1]]], refuse)).toEqual([[second, first, ""]]);
  });
});

describe("one answer from all cells", () => {
  it("keeps a fault inside its row, and throws the fault of the whole", async () => {
    const fault = { code: "nothing-to-give", message: "none" };
    const [row] = giveRows([[[1]]], () => [[1, fault]]);
    expect(row?.[0]).toBe(1);
    expect(row?.[1]).toMatchObject({ code: "#N/A", message: "none" });
    expect(await answerOfCall(() => giveRows([[[1]]], () => fault))).toEqual([
      [{ code: "#N/A", message: "none" }],
    ]);
  });

  it("becomes the first error cell of its arguments, missing ones skipped", () => {
    expect(giveRows([null, [[1, { error: "#REF!" }]], undefined], () => 1)).toEqual([[{ error: "#REF!" }]]);
  });
});

describe("an error cell", () => {
  it.each([
    ["Excel's error object", new CellErrorStandIn("#N/A"), true],
    ["Excel's data type", { type: "Error", basicType: "Error", basicValue: "#REF!" }, true],
    ["the spreadsheet model", { error: "#DIV/0!" }, true],
    ["a fault of ours", { code: "no-time", message: "" }, false],
    ["a text that looks like one", "#N/A", false],
    ["nothing", null, false],
  ])("is told in %s", (_form, cell, expected) => {
    expect(isErrorCell(cell)).toBe(expected);
  });

  it.each([
    ["no-time", "#NUM!"],
    ["nothing-to-give", "#N/A"],
    ["anything-else", "#VALUE!"],
  ])("shows the fault %s as %s", (code, shown) => {
    expect(toCellError({ code, message: "m" })).toMatchObject({ code: shown, message: "m" });
  });
});

describe("cells", () => {
  it.each([
    [42, "42"],
    [0.5, "0.5"],
    [true, "TRUE"],
    [null, ""],
    ["a", "a"],
  ])("%j reads as the text %j", (cell, text) => {
    expect(textOf(cell)).toBe(text);
  });

  it.each(["12", true, null, Number.NaN])("%j is no number", (cell) => {
    expect(numberOf(cell, "seconds")).toMatchObject({ ok: false, fault: { code: "not-a-number" } });
  });

  it("pair up with blanks skipped, and refuse unequal lengths by name", () => {
    expect(
      readSeries(
        [
          [[1], [null], [3]],
          [[10], [20], [30]],
        ],
        ["dates", "scores"],
      ),
    ).toEqual({
      ok: true,
      value: [
        [1, 10],
        [3, 30],
      ],
    });
    const refused = readSeries([[[1, 2]], [[1]]], ["dates", "scores"]);
    expect(refused.ok ? "" : refused.fault.message).toBe(
      "dates has 2 cells, scores has 1 cells: give ranges of the same length.",
    );
  });

  it("pool into lines, blanks left out", () => {
    expect(
      pooledText([
        ["a", null],
        ["", 7],
      ]),
    ).toBe("a\n7");
  });
});
