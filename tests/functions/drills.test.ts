import { afterEach, beforeAll, describe, expect, it } from "vitest";
import { cells, drill, next } from "../../functions/functions";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../src/adapters/liblouis/node-engine";
import { IndexedWordBank } from "../../src/adapters/word-bank/indexed-word-bank";
import type { FunctionHost } from "../../functions/function-host";
import { buildSmallBank } from "../adapters/word-bank/small-bank";
import { answerOfCall, CellErrorStandIn, standInForCustomFunctions } from "./cell-error-stand-in";

let host: FunctionHost;

beforeAll(async () => {
  standInForCustomFunctions();
  const translators = nodeTranslatorLibrary(PACKAGE_LAYOUT);
  await translators.translator("contracted");
  await translators.translator("uncontracted");
  const { bytes } = await buildSmallBank({
    chat: 50,
    rich: 40,
    ache: 30,
    chin: 20,
    Chip: 10,
    cat: 90,
    fence: 9,
  });
  const bank = new IndexedWordBank(bytes);
  host = { translators, wordBank: { load: () => Promise.resolve(bank), loaded: () => bank } };
  globalThis.cellwrightFunctionHost = host;
});
afterEach(() => {
  globalThis.cellwrightFunctionHost = host;
});

const NA = { error: "#N/A" };
const one = (cell: unknown): unknown[][] => [[cell]];
const error = (code: string, message: RegExp): unknown => ({
  code,
  message: expect.stringMatching(message) as string,
});

describe("DRILL", () => {
  it("gives words of the bank that use the sign and otherwise only taught ones, no names among them", () => {
    expect(drill(one("ch"), one("the"), 3).flat().sort()).toEqual(["ache", "chat", "rich"]);
  });

  it("adds lines of signs in Unicode braille where too few words fit", () => {
    const rows = drill(one("ch"), one("the"), 6).flat().map(String);
    expect(rows.slice(0, 3).sort()).toEqual(["ache", "chat", "rich"]);
    expect(rows.slice(3).every((row) => /^[⠀-⣿]+$/.test(row) && row.includes("⠡"))).toBe(true);
    // They pass through the functions on braille as they are.
    expect(cells(one(rows[3]))).toEqual(one(rows[3]?.length));
  });

  it("gives 10 rows unless told otherwise, the same for the same seed", () => {
    expect(drill(one("ch"), one("the"))).toHaveLength(10);
    expect(drill(one("ch"), one("the"), 8, undefined, undefined, 4)).toEqual(
      drill(one("ch"), one("the"), 8, undefined, undefined, 4),
    );
  });

  it("takes the teacher's own words, each once, without punctuation, in her capitals where they are names", () => {
    const words = [
      ["“Chad, teach: chop", "CHOP chop."],
      [null, "Chop cat"],
    ];
    expect(drill(one("ch"), one("ea"), 3, undefined, words).flat().sort()).toEqual(["Chad", "chop", "teach"]);
  });

  it("reads letters in uncontracted", () => {
    expect(drill(one("h"), [[..."cat"]], 1, undefined, undefined, 1, "uncontracted")).toEqual(one("chat"));
  });

  it.each<[string, Parameters<typeof drill>, unknown]>([
    ["no sign", [one(""), one("the")], error("#VALUE!", /Name at least one sign/)],
    ["an unknown sign", [one("zz"), one("the")], error("#VALUE!", /“zz” is not a sign/)],
    ["an unknown taught sign", [one("ch"), one("zz")], error("#VALUE!", /“zz” is not a sign/)],
    [
      "no rows",
      [one("ch"), one("the"), 0],
      error("#NUM!", /n is to be a whole number from 1 to 10,000, not 0/),
    ],
    ["more rows than anyone reads", [one("ch"), one("the"), 1e9], error("#NUM!", /from 1 to 10,000/)],
    ["no cells", [one("ch"), one("the"), 5, 0], error("#NUM!", /maxCells is to be a whole number/)],
    [
      "text for a seed",
      [one("ch"), one("the"), 5, 9, undefined, "x" as never],
      error("#VALUE!", /seed is to be/),
    ],
    [
      "another code",
      [one("ch"), one("the"), 5, 9, undefined, 1, "fr-bfu-g2.ctb"],
      error("#VALUE!", /Unified/),
    ],
    ["an error cell", [one("ch"), one(NA)], NA],
    ["an error among the words", [one("ch"), one("the"), 5, 9, [["chat", NA]]], NA],
    [
      "nothing that fits, not even a line",
      [one("ence"), one("h"), 5, 3],
      error("#N/A", /No word with “ence” fits: f blocks the only one short enough/),
    ],
    ["words without a word", [one("ence"), one("h"), 5, 3, one("– …")], error("#N/A", /No word uses “ence”/)],
    [
      "a character without braille",
      [one("ch"), one("the"), 5, 9, one("chat😀chat")],
      error("#VALUE!", /U\+1F600/),
    ],
  ])("with %s", async (_what, args, expected) => {
    expect(await answerOfCall(() => drill(...args))).toEqual(one(expected));
  });
});

describe("the word bank of the host", () => {
  it("is waited for where it is not loaded", async () => {
    const bank = await host.wordBank?.load();
    if (bank === undefined) throw new TypeError("no bank");
    globalThis.cellwrightFunctionHost = {
      ...host,
      wordBank: { load: () => Promise.resolve(bank), loaded: () => undefined },
    };
    const promised = drill(one("ch"), one("the"), 3);
    expect(promised).toBeInstanceOf(Promise);
    expect((await promised).flat().sort()).toEqual(["ache", "chat", "rich"]);
    expect(await next(one(""), one("ch"), 1)).toHaveLength(1);
  });

  it("is #N/A where it does not load, and given words still do", async () => {
    globalThis.cellwrightFunctionHost = {
      ...host,
      wordBank: { load: () => Promise.reject(new Error("404")), loaded: () => undefined },
    };
    await expect(drill(one("ch"), one("the"))).rejects.toMatchObject({ code: "#N/A" });
    expect(drill(one("ch"), one("the"), 1, undefined, one("chat"))).toEqual(one("chat"));
    globalThis.cellwrightFunctionHost = { translators: host.translators };
    expect(() => drill(one("ch"), one("the"))).toThrow(CellErrorStandIn);
  });
});
