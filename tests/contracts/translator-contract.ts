import { describe, expect, it } from "vitest";
import { UnknownCodeError, UntranslatableError, type TranslatorLibrary } from "../../src/ports/translator";

/** What every translator library must do. `open` gives a library on which nothing is loaded yet. */
export const runTranslatorContract = (name: string, open: () => TranslatorLibrary): void => {
  describe(`the translator contract: ${name}`, () => {
    const library = open();

    it("has nothing loaded at first and gives what it has loaded without a promise", async () => {
      const fresh = open();
      expect(fresh.loaded("contracted")).toBeUndefined();
      const translator = await fresh.translator("contracted");
      expect(fresh.loaded("contracted")).toBe(translator);
      expect(translator.code).toBe("contracted");
    });

    it("gives the same translator to all who ask at once", async () => {
      const [one, other] = await Promise.all([
        library.translator("contracted"),
        library.translator("contracted"),
      ]);
      expect(one).toBe(other);
    });

    it.each([
      ["nothing", "", ""],
      ["a blank, always U+2800", "a a", "⠁⠀⠁"],
      ["two blanks stay two", "a  a", "⠁⠀⠀⠁"],
      ["a tab is a blank", "a\ta", "⠁⠀⠁"],
      ["a no-break space is a blank", "a\u00a0a", "⠁⠀⠁"],
      ["a line break stays one", "a\na", "⠁\n⠁"],
      ["CR LF is one line break", "a\r\na", "⠁\n⠁"],
      ["a line break at the end stays", "a\n", "⠁\n"],
      ["empty lines stay", "a\n\na", "⠁\n\n⠁"],
      ["a byte order mark has no cells", "\ufeffa", "⠁"],
      ["a letter and its combining accent", "e\u0301", "⠘⠌⠑"],
    ])("translates %s", async (_what, print, cells) => {
      const translator = await library.translator("contracted");
      expect(translator.translate(print)).toBe(cells);
    });

    it.each([
      ["a sentence", "The people can't go to the store, can they?"],
      ["capitals", "CAT AND DOG go UP"],
      ["lines", "one\r\ntwo\n\nthree\n"],
      ["accents and invisible characters", "\ufeffe\u0301te\u0301 so\u00adlo\u200b"],
      ["an empty text", ""],
      ["only invisible characters", "\ufeff\u200b"],
    ])("leaves no gap between the spans of %s", async (_what, print) => {
      const translator = await library.translator("contracted");
      const { cells, spans, print: same } = translator.transcribe(print);
      expect(same).toBe(print);
      expect(cells).toBe(translator.translate(print));
      let [printEnd, cellEnd] = [0, 0];
      for (const span of spans) {
        expect([span.printStart, span.cellStart]).toEqual([printEnd, cellEnd]);
        expect(span.printEnd).toBeGreaterThan(span.printStart);
        [printEnd, cellEnd] = [span.printEnd, span.cellEnd];
      }
      expect([printEnd, cellEnd]).toEqual([print.length, cells.length]);
    });

    it("says which print became which cells", async () => {
      const translator = await library.translator("contracted");
      const { spans } = translator.transcribe("the cat");
      expect(spans.map((span) => "the cat".slice(span.printStart, span.printEnd))).toEqual([
        "the",
        " ",
        "c",
        "a",
        "t",
      ]);
    });

    it("names each character that it has no cells for, with its place", async () => {
      const translator = await library.translator("contracted");
      const text = "a😀 שa";
      expect(translator.untranslatable(text)).toEqual([
        { character: "😀", index: 1 },
        { character: "ש", index: 4 },
      ]);
      for (const attempt of [() => translator.translate(text), () => translator.transcribe(text)]) {
        expect(attempt).toThrow(UntranslatableError);
        expect(attempt).toThrow(/😀 \(U\+1F600\) at position 2, ש \(U\+05E9\) at position 4/);
      }
    });

    it("finds nothing wrong with what it can translate", async () => {
      const translator = await library.translator("contracted");
      expect(translator.untranslatable("Every word, “even” this: 1 + 1 = 2.")).toEqual([]);
    });

    it.each(["no-such.ctb", "Contracted", "", "../package.json", "tables/en-ueb-g2.ctb", "constructor"])(
      'refuses the unknown code "%s" and says which can be used',
      async (code) => {
        await expect(library.translator(code)).rejects.toThrow(UnknownCodeError);
        await expect(library.translator(code)).rejects.toThrow(/"contracted", "uncontracted"/);
        expect(library.loaded(code)).toBeUndefined();
      },
    );
  });
};
