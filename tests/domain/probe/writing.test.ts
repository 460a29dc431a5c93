import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { fromAscii } from "../../../src/domain/braille/cell";
import { parseSigns } from "../../../src/domain/contraction/taught";
import {
  dropBlanks,
  expectBraille,
  expectSigns,
  expectText,
  parseWritten,
  type ExpectedCells,
} from "../../../src/domain/probe/expected-cells";
import {
  cellAccuracy,
  dotAccuracy,
  poolWriting,
  scoreWriting,
  type WritingScore,
} from "../../../src/domain/probe/writing";

const translators = nodeTranslatorLibrary(PACKAGE_LAYOUT);
const contracted = await translators.translator("contracted");
const uncontracted = await translators.translator("uncontracted");

const inContracted = (print: string): ExpectedCells =>
  expectText(print, (text) => contracted.transcribe(text), true);
const inUncontracted = (print: string): ExpectedCells =>
  expectText(print, (text) => uncontracted.transcribe(text), true);
const written = (text: string): string => {
  const cells = parseWritten(text);
  if (!cells.ok) throw new Error(cells.fault.message);
  return cells.value;
};
const braille = (ascii: string): ExpectedCells => {
  const cells = fromAscii(ascii);
  const expected = cells.ok ? expectBraille(cells.value) : cells;
  if (!expected.ok) throw new Error(expected.fault.message);
  return expected.value;
};
const signs = (...names: string[]): ExpectedCells => {
  const read = parseSigns(names);
  if (!read.ok) throw new Error(read.fault.message);
  return expectSigns(read.value);
};

const counts = ({ cells, right, changed, leftOut, added }: WritingScore): readonly number[] => [
  cells,
  right,
  changed,
  leftOut,
  added,
];
const errorsOf = ({ aligned }: WritingScore): readonly (readonly unknown[])[] =>
  aligned.flatMap(({ position, expected, written: other, kind, sign }) =>
    kind === undefined ? [] : [[position, expected, other, kind, sign?.name]],
  );

/** Counts by hand: cells expected, right, changed, left out, added. ASCII braille is lower case here. */
describe("counting cells", () => {
  it.each([
    ["all right", "cat", "cat", [3, 3, 0, 0, 0]],
    ["one changed", "cat", "cit", [3, 2, 1, 0, 0]],
    ["one left out", "cat", "ct", [3, 2, 0, 1, 0]],
    ["one added", "cat", "caat", [3, 3, 0, 0, 1]],
    ["nothing came", "cat", " ", [3, 0, 0, 3, 0]],
    ["a swapped pair is two changed", "friend", "freind", [6, 4, 2, 0, 0]],
    ["a blank is a cell", "a cat", "acat", [5, 4, 0, 1, 0]],
    ["a word left out takes its blank along", "a fat cat", "a cat", [9, 5, 0, 4, 0]],
    ["a line break is a blank", "a cat", "a \n cat", [5, 5, 0, 0, 0]],
    ["blanks at both ends are none", "cat", "  cat ", [3, 3, 0, 0, 0]],
  ])("%s", (_name, print, ascii, expected) => {
    expect(counts(scoreWriting(braille(print), written(ascii)))).toEqual(expected);
  });

  it.each([
    ["Unicode braille", "⠉⠁⠞"],
    ["dot numbers", "14-1-2345"],
    ["ASCII braille", "CAT"],
  ])("reads %s", (_name, text) => {
    expect(counts(scoreWriting(inContracted("cat"), written(text)))).toEqual([3, 3, 0, 0, 0]);
  });

  it.each([
    ["neither notation", "ë", "not-ascii-braille"],
    ["dots that are none", "125-19", "not-dots"],
  ])("refuses %s", (_name, text, code) => {
    expect(parseWritten(text)).toMatchObject({ ok: false, fault: { code } });
  });
});

/** By hand: 1 − |XOR| / |union| over all pairs. */
describe("the share of dots that are right", () => {
  it.each([
    ["all right", "cat", "cat", 1],
    ["d (145) as f (124): two of four", "d", "f", 2 / 4],
    ["b (12) as a (1): one of two", "b", "a", 1 / 2],
    ["a added l: one of four", "a", "al", 1 / 4],
    ["l left out of al", "al", "a", 1 / 4],
    ["nothing came", "cat", " ", 0],
  ])("%s", (_name, print, ascii, share) => {
    expect(dotAccuracy(scoreWriting(braille(print), written(ascii)))).toBeCloseTo(share, 12);
  });

  it("is undefined where there are no dots, as is the share of cells of nothing", () => {
    const score = scoreWriting({ cells: "", pieces: [] }, "");
    expect([cellAccuracy(score), dotAccuracy(score)]).toEqual([undefined, undefined]);
  });
});

/** Cells of ASCII braille after the dots of the inventory; what each is named is worked out by hand. */
describe("errors with contractions and indicators", () => {
  it.each([
    ["a contraction spelled out", "the", "the", [[1, "⠮", "⠞⠓⠑", "contraction not used", "the"]]],
    [
      "a contraction spelled with a smaller one",
      "through",
      "?r|<",
      [[1, "⠐⠹", "⠹⠗⠳⠣", "contraction not used", "through"]],
    ],
    ["a wordsign spelled out", "but", "but", [[1, "⠃", "⠃⠥⠞", "contraction not used", "but"]]],
    ["a shortform spelled out", "him", "him", [[1, "⠓⠍", "⠓⠊⠍", "contraction not used", "him"]]],
    [
      "a groupsign spelled out between right cells",
      "bread",
      "bread",
      [[3, "⠂", "⠑⠁", "contraction not used", "ea"]],
    ],
    ["a capital sign left out", "Tom", "tom", [[1, "⠠", "", "indicator missing", "capital"]]],
    [
      "a capital word sign left out, once",
      "TOM",
      "tom",
      [[1, "⠠⠠", "", "indicator missing", "capital word"]],
    ],
    ["a number sign left out", "25", "be", [[1, "⠼", "", "indicator missing", "number sign"]]],
    ["a cell left out", "cat", "ct", [[2, "⠁", "", "cell left out", "a"]]],
    ["a cell added after the second", "cat", "caat", [[2, "", "⠁", "cell added", undefined]]],
    ["a contraction mirrored", "chat", "/at", [[1, "⠡", "⠌", "reversal", "ch"]]],
  ])("contracted: %s", (_name, print, ascii, errors) => {
    expect(errorsOf(scoreWriting(inContracted(print), written(ascii)))).toEqual(errors);
  });

  it.each([
    ["the", "!", [[1, "⠞⠓⠑", "⠮", "contraction wrongly used", "the"]]],
    ["people", "p", [[1, "⠏⠑⠕⠏⠇⠑", "⠏", "contraction wrongly used", "people"]]],
    ["The", ",!", [[2, "⠞⠓⠑", "⠮", "contraction wrongly used", "the"]]],
    ["sing", "s+", [[2, "⠊⠝⠛", "⠬", "contraction wrongly used", "ing"]]],
  ])("uncontracted: %s written %s", (print, ascii, errors) => {
    expect(errorsOf(scoreWriting(inUncontracted(print), written(ascii)))).toEqual(errors);
  });

  it("names a contraction where the rules forbid it: ea at the start (UEB 2013, section 10.6.5)", () => {
    expect(errorsOf(scoreWriting(inContracted("eat"), written("1t")))).toEqual([
      [1, "⠑⠁", "⠂", "contraction wrongly used", "ea"],
    ]);
  });

  it("counts the cells of a contraction spelled out one by one", () => {
    expect(counts(scoreWriting(inContracted("the"), written("the")))).toEqual([1, 0, 1, 0, 2]);
    expect(counts(scoreWriting(inContracted("him"), written("him")))).toEqual([2, 2, 0, 0, 1]);
    expect(counts(scoreWriting(inUncontracted("the"), written("!")))).toEqual([3, 0, 1, 2, 0]);
  });

  it("places errors after a contraction spelled out", () => {
    expect(errorsOf(scoreWriting(inContracted("the cat"), written("the kat")))).toEqual([
      [1, "⠮", "⠞⠓⠑", "contraction not used", "the"],
      [3, "⠉", "⠅", "one cell for another", "c"],
    ]);
  });

  it("knows no signs where the text is given in braille", () => {
    expect(errorsOf(scoreWriting(braille("!"), written("the"))).map(([, , , kind]) => kind)).toEqual([
      "one cell for another",
      "cell added",
      "cell added",
    ]);
  });
});

describe("items that are signs", () => {
  it("take their cells from the inventory", () => {
    expect(signs("ea", "ch", "ing").cells).toBe("⠂⠡⠬");
    expect(counts(scoreWriting(signs("ea", "ch", "ing"), dropBlanks(written("1 * +"))))).toEqual([
      3, 3, 0, 0, 0,
    ]);
  });

  it("are told apart: letters beside each other are no contraction, a contraction can be spelled out", () => {
    expect(errorsOf(scoreWriting(signs("c", "h"), written("*"))).map(([, , , kind]) => kind)).not.toContain(
      "contraction wrongly used",
    );
    expect(errorsOf(scoreWriting(signs("b", "ch"), written("bch")))).toEqual([
      [2, "⠡", "⠉⠓", "contraction not used", "ch"],
    ]);
  });
});

describe("what holds for any writing", () => {
  const cells = fc
    .array(fc.integer({ min: 0x2801, max: 0x283f }), { maxLength: 30 })
    .map((codes) => String.fromCharCode(...codes));
  const text = fc
    .array(
      fc.constantFrom("the", "children", "Heron", "saw", "about", "25", "STOP", "mother's", "eel", "can't"),
      {
        minLength: 1,
        maxLength: 12,
      },
    )
    .map((words) => words.join(" "));

  it("what was expected is all right", () => {
    fc.assert(
      fc.property(text, (print) => {
        const expected = inContracted(print);
        const score = scoreWriting(expected, written(expected.cells));
        expect(counts(score)).toEqual([expected.cells.length, expected.cells.length, 0, 0, 0]);
        expect([cellAccuracy(score), dotAccuracy(score), errorsOf(score)]).toEqual([1, 1, []]);
      }),
      { numRuns: 50 },
    );
  });

  it("what is written in uncontracted braille is right but for contractions not used", () => {
    fc.assert(
      fc.property(text, (print) => {
        // The two codes differ in indicators around single letters; none stand in these words.
        const score = scoreWriting(inContracted(print), inUncontracted(print).cells);
        expect(new Set(errorsOf(score).map(([, , , kind]) => kind))).toEqual(
          new Set(/the|children|about|mother|can't|STOP|Heron/.test(print) ? ["contraction not used"] : []),
        );
      }),
      { numRuns: 50 },
    );
  });

  it("every cell expected and every cell written is counted once, with signs known or not", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          text.map(inContracted),
          cells.map((line) => ({ cells: line, pieces: [] })),
        ),
        cells,
        (expected, other) => {
          const score = scoreWriting(expected, other);
          expect(score.right + score.changed + score.leftOut).toBe(expected.cells.length);
          expect(score.right + score.changed + score.added).toBe(other.length);
          expect(score.aligned.map((pair) => pair.expected).join("")).toBe(expected.cells);
          expect(score.aligned.map((pair) => pair.written).join("")).toBe(other);
          expect(score.dotsShared).toBeLessThanOrEqual(score.dotsUnion);
        },
      ),
    );
  });

  it("turned about, left out and added change places and all else stays", () => {
    fc.assert(
      fc.property(cells, cells, (one, other) => {
        const there = scoreWriting({ cells: one, pieces: [] }, other);
        const back = scoreWriting({ cells: other, pieces: [] }, one);
        const { right, changed, leftOut, added, dotsShared, dotsUnion } = there;
        expect(back).toMatchObject({ right, changed, leftOut: added, added: leftOut, dotsShared, dotsUnion });
      }),
    );
  });

  it("pools scores: sums, and positions that run on", () => {
    const pooled = poolWriting([
      scoreWriting(braille("cat"), written("cit")),
      scoreWriting(braille("dog"), written("fog")),
    ]);
    expect(counts(pooled)).toEqual([6, 4, 2, 0, 0]);
    expect(errorsOf(pooled)).toEqual([
      [2, "⠁", "⠊", "one cell for another", undefined],
      [4, "⠙", "⠋", "reversal", undefined],
    ]);
  });
});
