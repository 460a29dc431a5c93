import { beforeAll, describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { fromAscii } from "../../../src/domain/braille/cell";
import { createLexicon } from "../../../src/domain/reading-back/lexicon";
import { readPrint, type PrintReading } from "../../../src/domain/reading-back/print";
import type { Translator } from "../../../src/ports/translator";

let contracted: Translator;
let uncontracted: Translator;

beforeAll(async () => {
  const library = nodeTranslatorLibrary(PACKAGE_LAYOUT);
  contracted = await library.translator("contracted");
  uncontracted = await library.translator("uncontracted");
});

const write = (print: string): string => contracted.translate(print);
const read = (cells: string, words: readonly string[] = []): PrintReading =>
  readPrint(cells, {
    code: "contracted",
    lexicon: createLexicon(words.map((word) => [word, write(word)])),
    write,
  });
const cellsOf = (ascii: string): string => {
  const cells = fromAscii(ascii);
  if (!cells.ok) throw new TypeError(cells.fault.message);
  return cells.value;
};

describe("braille read back without a list of words", () => {
  // Cells by UEB 2013, the sections named, written out by hand in ASCII braille.
  it.each([
    ["wordsigns and capitals (10.1, 8.3)", ",Y C G", "You can go"],
    ["groupsigns (10.4)", "*UR*Y", "churchy"],
    ["final-letter groupsigns (10.8)", "KIND;S", "kindness"],
    ["initial-letter contractions (10.7)", '"M', "mother"],
    ["shortforms (10.9)", "AB", "about"],
    ["numbers (6.1)", "#AI PUPILS", "19 pupils"],
    ["a decimal point (6.2)", "#C4E", "3.5"],
    ["letters behind a number (6.5)", "#C;B", "3b"],
    ["quotation marks (7.6)", "8,HELP60", '"Help!"'],
    ["a capitals word (8.4)", ",,HELLO", "HELLO"],
    ["a capitals passage (8.5)", ",,,! CAT SAT,'", "THE CAT SAT"],
    ["an accent (4.2)", "CAF^/E", "café"],
  ])("%s", (_name, ascii, print) => {
    expect(read(cellsOf(ascii)).print).toBe(print);
  });

  it("keeps a cell that cannot be read as a cell, and all around it", () => {
    expect(read(`${cellsOf("CAT")}⠀⣿⠀${cellsOf("DOG")}`).print).toBe("cat ⣿ dog");
  });

  it("keeps blanks and line breaks, and gives nothing for nothing", () => {
    expect(read(`${write("a")}\n⠀${write("b")}`).print).toBe("a\n b");
    expect(read("")).toEqual({ print: "", doubtful: [] });
  });

  it("ends on long rows of cells", () => {
    expect(read("⠠".repeat(5000)).print.length).toBeGreaterThan(0);
  });
});

describe("braille read back with a list of words", () => {
  it.each([
    "her",
    "king",
    "bed",
    "children",
    "cannot",
    "don't",
    "mother-in-law",
    "o'clock",
    "Heron",
    "which",
    "2 birds",
  ])("%s comes back", (print) => {
    expect(
      read(write(print), ["her", "king", "bed", "children", "cannot", "mother", "clock", "law", "which"])
        .print,
    ).toBe(print);
  });

  it("names both readings where two words have the same cells, the first of the list first", () => {
    expect(read(write("friends"), ["friends", "frs"])).toEqual({
      print: "friends",
      doubtful: [{ cells: write("friends"), readings: ["friends", "frs"] }],
    });
  });
});

describe("uncontracted braille read back", () => {
  it.each(["children", "The cat sat.", "3 pupils, 4 books!", '"Yes," said Plover.'])(
    "%s comes back",
    (print) => {
      const back = readPrint(uncontracted.translate(print), {
        code: "uncontracted",
        write: (text) => uncontracted.translate(text),
      });
      expect(back.print).toBe(print);
    },
  );
});
