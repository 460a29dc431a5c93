import { beforeAll, describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { LONGEST_CALL, renderLongPiece } from "../../../src/adapters/liblouis/long-piece";
import type { Rendering } from "../../../src/adapters/liblouis/rendering";
import type { Translator } from "../../../src/ports/translator";

const repeat = (base: string, length: number): string =>
  base.repeat(Math.ceil(length / base.length)).slice(0, length);

const KINDS: readonly (readonly [string, string])[] = [
  ["prose", "The people can't go, can they? "],
  ["a capitals passage", "THE QUICK, BROWN 5 FOXES "],
  ["one word of letters", "knowledgeing"],
  ["one word in capitals", "MOTHER"],
  ["one number", "314159"],
  ["words joined by commas and hyphens", "the,and,knowledge-"],
  ["quotation marks", '"'],
  ["quotation marks apart", '" '],
  ["brackets and quotation marks", '("'],
];

describe("long texts", () => {
  let translator: Translator;
  let french: Translator;
  beforeAll(async () => {
    const library = nodeTranslatorLibrary(PACKAGE_LAYOUT);
    translator = await library.translator("contracted");
    french = await library.translator("fr-bfu-g2.ctb");
  });

  it.each(KINDS.flatMap(([kind, base]) => [5000, 100_000].map((length) => [length, kind, base] as const)))(
    "translates %i characters of %s, and the spans leave no gap",
    (length, _kind, base) => {
      for (const each of [translator, french]) {
        const print = repeat(base, length);
        const { cells, spans } = each.transcribe(print);
        expect(cells).toMatch(/^[\u2800-\u28ff]+$/);
        expect(spans.map((span) => print.slice(span.printStart, span.printEnd)).join("")).toBe(print);
        expect(spans.map((span) => cells.slice(span.cellStart, span.cellEnd)).join("")).toBe(cells);
      }
    },
  );

  it("names the emoji of a long text one by one", () => {
    const found = translator.untranslatable("a😀 ".repeat(2000));
    expect(found).toHaveLength(2000);
    expect(found[1999]).toEqual({ character: "😀", index: 1999 * 4 + 1 });
  });
});

describe("pieces of a long text", () => {
  let render: (text: string) => Rendering;
  beforeAll(async () => {
    const translator = await nodeTranslatorLibrary(PACKAGE_LAYOUT, { memoCapacity: 0 }).translator(
      "contracted",
    );
    render = (text) => {
      const { cells, spans } = translator.transcribe(text);
      return { cells, starts: spans.flatMap((span) => [span.printStart, span.cellStart]), unknown: [] };
    };
  });

  // In reach of one call, so that both ways can be compared.
  it.each(KINDS.filter(([, base]) => !base.includes('"')))(
    "of %s give what one call gives",
    (_kind, base) => {
      const text = repeat(base, LONGEST_CALL - 50);
      const whole = render(text);
      for (const longest of [300, 471, 1000]) {
        expect(renderLongPiece(text, render, longest, true)).toEqual(whole);
      }
    },
  );
});
