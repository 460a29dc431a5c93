import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { createPassageReader } from "../../../src/domain/contraction/passage";
import {
  overrideWords,
  spellTable,
  tabulateWords,
  type WordTable,
} from "../../../src/domain/contraction/word-table";
import { tableOf } from "./word-tables";

const library = nodeTranslatorLibrary(PACKAGE_LAYOUT);
const contracted = await library.translator("contracted");
const uncontracted = await library.translator("uncontracted");

const rowsOf = (table: WordTable): unknown[] =>
  Array.from({ length: table.size }, (_, word) => [
    table.word(word),
    table.counts[word],
    [...table.signs.subarray(table.starts[word], table.starts[word + 1])]
      .map((place) => table.palette[place]?.name)
      .join(" "),
    table.cells[word],
  ]);

describe("a table of words", () => {
  it("counts the words of a passage, each with its signs and cells", () => {
    const reader = createPassageReader((text) => contracted.transcribe(text));
    expect(rowsOf(tabulateWords(reader.read("the teacher and the Dunlin")))).toEqual([
      ["the", 2, "the", 1],
      ["teacher", 1, "t ea ch er", 4],
      ["and", 1, "and", 1],
      ["Dunlin", 1, "capital d u n l in groupsign", 6],
    ]);
  });

  it("spelled out has the letters, and the cells that uncontracted braille has", () => {
    const words = ["children", "teacher", "Dunlin", "go-between", "it's", "was"];
    const reader = createPassageReader((text) => contracted.transcribe(text));
    const spelled = spellTable(tabulateWords(reader.read(words.join(" "))));
    expect(rowsOf(spelled).slice(0, 3)).toEqual([
      ["children", 1, "c h i l d r e n", 8],
      ["teacher", 1, "t e a c h e r", 7],
      ["Dunlin", 1, "capital d u n l i n", 7],
    ]);
    expect([...spelled.cells]).toEqual(words.map((word) => uncontracted.translate(word).length));
  });

  it("takes other signs for some of its words", () => {
    const table = tableOf([
      ["it", 3, "it"],
      ["shed", 2, "sh ed"],
    ]);
    const reader = createPassageReader(() => uncontracted.transcribe("it"));
    const [read] = reader.read("it");
    if (read === undefined) throw new TypeError("it is a word");
    expect(rowsOf(overrideWords(table, new Map([[0, read]])))).toEqual([
      ["it", 3, "i t", 2],
      ["shed", 2, "sh ed", 2],
    ]);
  });
});
