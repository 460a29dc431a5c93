import { beforeAll, describe, expect, it } from "vitest";
import * as functions from "../../functions/functions";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../src/adapters/liblouis/node-engine";
import { answerOfCall, standInForCustomFunctions } from "./cell-error-stand-in";

const GERMAN = "de-de-g0.utb";
const translators = nodeTranslatorLibrary(PACKAGE_LAYOUT);

beforeAll(async () => {
  standInForCustomFunctions();
  await translators.translator(GERMAN);
  globalThis.cellwrightFunctionHost = {
    translators,
    wordBank: { load: () => Promise.reject(new Error("not needed")), loaded: () => undefined },
  };
});

const one = (cell: unknown): unknown[][] => [[cell]];

describe("with a code that is not Unified English Braille", () => {
  it.each<[string, () => unknown, unknown]>([
    ["TRANSLATE", () => functions.translate(one("ab"), GERMAN), one("⠁⠃")],
    ["ASCII", () => functions.ascii(one("ab"), GERMAN), one("AB")],
    ["DOTS", () => functions.dots(one("ab"), GERMAN), one("1-12")],
    ["CELLS", () => functions.cells(one("ab"), GERMAN), one(2)],
    ["LINES", () => functions.lines(one("ab ba"), 3, GERMAN), [["⠁⠃"], ["⠃⠁"]]],
    ["SLATE", () => functions.slate(one("ab"), GERMAN), one("⠘⠈")],
    ["WRITING", () => functions.writing(one("ab"), one("⠁⠃"), GERMAN), [[2, 2, 0, 0, 0, 1, 1]]],
    [
      "CELLERRORS",
      () => functions.cellerrors(one("ab"), one("⠁⠁"), GERMAN),
      [[2, "⠃", "⠁", "12", "1", "missed dot"]],
    ],
    [
      "READING",
      () => functions.reading(one("ab ba"), one("ab ba"), 60, GERMAN),
      [[2, 2, 0, 0, 0, 0, 1, 2, 5]],
    ],
  ])("%s works", (_, call, answer) => {
    expect(call()).toEqual(answer);
  });

  it.each<[string, () => unknown]>([
    ["PRINT", () => functions.print(one("⠁"), GERMAN)],
    ["COVERAGE of words", () => functions.coverage(one("ab"), one("a"), "words", GERMAN)],
    ["COVERAGE of signs", () => functions.coverage(one("ab"), one("a"), "signs", GERMAN)],
    ["UNTAUGHT", () => functions.untaught(one("ab"), one("a"), GERMAN)],
    ["NEXT", () => functions.next(one("ab"), one("a"), 3, GERMAN)],
    ["DRILL", () => functions.drill(one("ch"), one("a"), 3, undefined, undefined, undefined, GERMAN)],
    ["MISCUES", () => functions.miscues(one("ab"), one("ba"), GERMAN)],
    ["TRANSLATE with taught signs", () => functions.translate(one("ab"), GERMAN, one("a"))],
  ])("%s says that it is for Unified English Braille", async (_, call) => {
    expect(await answerOfCall(call)).toMatchObject([
      [{ code: "#VALUE!", message: expect.stringContaining("Unified English Braille") as string }],
    ]);
  });
});

/**
 * Letters of other alphabets, one by one: the tables are checked no further. Values from memory after World Braille
 * Usage, 3rd edition 2013 (Perkins, ICEB, NLS).
 */
describe("letters of other languages", () => {
  it.each([
    [GERMAN, "äöüß", "345 246 1256 2346"],
    ["da-dk-g16.ctb", "æøå", "345 246 16"],
    ["sv-1996.ctb", "åäö", "16 345 246"],
    ["fr-bfu-comp6.utb", "éèçàù", "123456 2346 12346 12356 23456"],
    ["es-g1.ctb", "ñáéíóú", "12456 12356 2346 34 346 23456"],
  ])("%s: %s", async (code, letters, dots) => {
    await translators.translator(code);
    expect([...letters].map((letter) => functions.dots(one(letter), code)[0]?.[0]).join(" ")).toBe(dots);
  });

  it.each([GERMAN, "da-dk-g16.ctb", "sv-1996.ctb", "fr-bfu-comp6.utb", "es-g1.ctb"])(
    "%s has the letters a to z of six dots",
    async (code) => {
      await translators.translator(code);
      const alphabet = "abcdefghijklmnopqrstuvwxyz";
      // Louis Braille's letters a to z as all of these languages have them.
      expect(functions.translate(one(alphabet), code)).toEqual(one("⠁⠃⠉⠙⠑⠋⠛⠓⠊⠚⠅⠇⠍⠝⠕⠏⠟⠗⠎⠞⠥⠧⠺⠭⠽⠵"));
    },
  );
});
