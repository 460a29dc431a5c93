import { afterEach, beforeAll, describe, expect, it } from "vitest";
import { ascii, cells, dots, lines, translate } from "../../functions/functions";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../src/adapters/liblouis/node-engine";
import { answerOfCall, standInForCustomFunctions } from "./cell-error-stand-in";

const library = nodeTranslatorLibrary(PACKAGE_LAYOUT);

beforeAll(async () => {
  standInForCustomFunctions();
  await library.translator("contracted");
  await library.translator("uncontracted");
  globalThis.cellwrightFunctionHost = { translators: library };
});

const NA = { error: "#N/A" };
const one = (cell: unknown): unknown[][] => [[cell]];
const valueError = (message: RegExp): unknown => ({
  code: "#VALUE!",
  message: expect.stringMatching(message) as string,
});

describe("TRANSLATE", () => {
  it("keeps the shape of a range, blanks, and errors at their own place", () => {
    expect(
      translate([
        ["children", null],
        ["", NA],
        ["Go!", 42],
      ]),
    ).toEqual([
      ["⠡⠝", ""],
      ["", NA],
      ["⠠⠛⠖", "⠼⠙⠃"],
    ]);
  });

  it("of an empty cell is an empty text, also where the host hands it over as null", () => {
    expect(translate(null as never)).toEqual(one(""));
    expect(lines(null as never)).toEqual(one(""));
  });

  it.each([
    [undefined, "⠡⠝"],
    ["contracted", "⠡⠝"],
    [" Contracted ", "⠡⠝"],
    ["", "⠡⠝"],
    ["en-ueb-g2.ctb", "⠡⠝"],
    ["uncontracted", "⠉⠓⠊⠇⠙⠗⠑⠝"],
    ["en-ueb-g1.ctb", "⠉⠓⠊⠇⠙⠗⠑⠝"],
  ])("writes the code %j", (code, expected) => {
    expect(translate(one("children"), code)).toEqual(one(expected));
  });

  it("answers at once where the translator is loaded, else by a promise", async () => {
    expect(Array.isArray(translate(one("a")))).toBe(true);
    const promised = translate(one("children"), "fr-bfu-comp6.utb");
    expect(promised).toBeInstanceOf(Promise);
    expect(await promised).toEqual(one("⠉⠓⠊⠇⠙⠗⠑⠝"));
  });

  it("refuses an unknown code for the whole range, and says what to write", async () => {
    expect(await answerOfCall(() => translate([["a", "b"]], "klingon"))).toEqual([
      [valueError(/klingon.*Write "contracted", "uncontracted"/)],
    ]);
  });

  it("names each character that has no braille, in its own cell", async () => {
    expect(await answerOfCall(() => translate([["go 😀", "go"]]))).toEqual([
      [valueError(/😀 \(U\+1F600\) at position 4/), "⠛"],
    ]);
  });

  it("spells out what is not taught; an empty list is a pupil who knows no contraction yet", () => {
    expect(translate(one("the child"), undefined, one("the"))).toEqual(one("⠮⠀⠉⠓⠊⠇⠙"));
    expect(translate(one("the child"), undefined, [[null], [""]])).toEqual(one("⠞⠓⠑⠀⠉⠓⠊⠇⠙"));
    expect(translate(one("the child"), undefined, null as never)).toEqual(one("⠮⠀⠡"));
  });

  it("takes lists of any size beside texts of any shape", () => {
    expect(translate([["the", "and"]], undefined, [["the"], ["ing"], [null], ["the"]])).toEqual([
      ["⠮", "⠁⠝⠙"],
    ]);
  });

  it("lets exceptions win, also over taught", () => {
    const exceptions = [
      ["US", "⠠⠠⠥⠎"],
      ["Andy", ",(&y)"],
    ];
    expect(translate(one("US"), undefined, undefined, exceptions)).toEqual(one("⠠⠠⠥⠎"));
    expect(translate(one("Andy and"), undefined, [], exceptions)).toEqual(one("⠠⠷⠯⠽⠾⠀⠁⠝⠙"));
  });

  it.each([
    ["a taught list with unknown signs", one("xq"), undefined, /“xq” is not a sign/],
    ["exceptions of three columns", undefined, [["US", "⠥", ""]], /two columns/],
    ["exceptions that are not braille", undefined, [["US", "☃"]], /Row 1 .*not braille/],
  ])("refuses %s", async (_what, taught, exceptions, message) => {
    expect(await answerOfCall(() => translate(one("a"), undefined, taught, exceptions))).toEqual(
      one(valueError(message)),
    );
  });

  it("refuses taught signs of another code", async () => {
    expect(await answerOfCall(() => translate(one("a"), "fr-bfu-comp6.utb", one("the")))).toEqual(
      one(valueError(/Unified English Braille/)),
    );
  });

  it("becomes the error of an error cell in a list", () => {
    expect(translate([["a", "b"]], undefined, one(NA))).toEqual(one(NA));
  });

  it("refuses a result that no cell can hold and names LINES", async () => {
    expect(await answerOfCall(() => translate(one("a b ".repeat(10_000))))).toEqual(
      one(valueError(/32,767.*LINES/)),
    );
    expect(String(translate(one("a".repeat(32_767)))[0]?.[0]).length).toBe(32_767);
  });
});

describe("ASCII", () => {
  it.each([
    ["children", "*N"],
    ["⠡⠝⠀⠡", "*N *"],
    ["⠡⠝ ⠡", "*N *"],
    ["The end.", ",! 5D4"],
  ])("%j is %j", (text, expected) => {
    expect(ascii(one(text))).toEqual(one(expected));
  });

  it("refuses dots 7 and 8", async () => {
    expect(await answerOfCall(() => ascii([["⣿", "a"]]))).toEqual([[valueError(/dot 7 or 8/), "A"]]);
  });
});

describe("DOTS", () => {
  it.each([
    ["he a'", "125-15-0-1-3"],
    ["⠓⠑⠀⠄", "125-15-0-3"],
    ["children\nchild", "16-1345\n16"],
  ])("%j is %j", (text, expected) => {
    expect(dots(one(text))).toEqual(one(expected));
  });
});

describe("CELLS", () => {
  it.each([
    ["children", 2],
    ["the child", 3],
    ["a\nb", 3], // the letter b standing alone takes a grade 1 sign
    ["⠡⠝", 2],
    [7, 2],
    [true, 6],
  ])("%j has %d", (text, expected) => {
    expect(cells(one(text))).toEqual(one(expected));
  });

  it("counts exceptions and uncontracted braille", () => {
    expect(cells(one("children"), "uncontracted")).toEqual(one(8));
    expect(cells(one("US"), undefined, [["US", "⠠⠠⠥⠎"]])).toEqual(one(4));
  });
});

describe("LINES", () => {
  it("gives rows of at most 40 cells", () => {
    const rows = lines(one("the quick brown fox jumps over the lazy dog and runs into the garden again"));
    expect(rows.length).toBeGreaterThan(1);
    for (const [line] of rows) expect(String(line).length).toBeLessThanOrEqual(40);
  });

  it("pools a range, each text on a new line, blanks left out", () => {
    expect(
      lines(
        [
          ["the child", null],
          ["", "of"],
        ],
        3,
      ),
    ).toEqual([["⠮⠀⠡"], ["⠷"]]);
  });

  it("of nothing is an empty text", () => {
    expect(lines([[null], [""]])).toEqual(one(""));
  });

  it("becomes the error of an error cell", () => {
    expect(lines([["a"], [NA]])).toEqual(one(NA));
  });

  it.each([0, -1, 2.5])("refuses %d cells", async (most) => {
    expect(await answerOfCall(() => lines(one("a"), most))).toEqual([
      [{ code: "#NUM!", message: expect.stringMatching(/whole number/) as string }],
    ]);
  });
});

describe("without a loaded engine", () => {
  afterEach(() => {
    globalThis.cellwrightFunctionHost = { translators: library };
  });

  it("says #N/A and what to do where the engine does not load", async () => {
    globalThis.cellwrightFunctionHost = {
      translators: { loaded: () => undefined, translator: () => Promise.reject(new Error("offline")) },
    };
    expect(await answerOfCall(() => translate(one("a")))).toEqual([
      [{ code: "#N/A", message: expect.stringMatching(/could not be loaded/) as string }],
    ]);
  });

  it("tells the host's builder that no host was set", () => {
    globalThis.cellwrightFunctionHost = undefined;
    expect(() => translate(one("a"))).toThrow(TypeError);
  });
});
