import { beforeAll, describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { toAscii } from "../../../src/domain/braille/cell";
import type { Translator } from "../../../src/ports/translator";
import { CONTRACTED_ROWS, UNCONTRACTED_ROWS } from "./ueb-rows";

const library = nodeTranslatorLibrary(PACKAGE_LAYOUT);

/** Compared as ASCII braille, so that a difference can be read. */
const asciiOf = (translator: Translator, print: string): string => {
  const ascii = toAscii(translator.translate(print));
  return ascii.ok ? ascii.value : ascii.fault.message;
};

describe("contracted braille by The Rules of Unified English Braille 2013 (rows from memory)", () => {
  let contracted: Translator;
  beforeAll(async () => void (contracted = await library.translator("contracted")));

  it.each(CONTRACTED_ROWS)("%s: %s", (_section, print, ascii) => {
    expect(asciiOf(contracted, print)).toBe(ascii);
  });
});

describe("uncontracted braille by the same rules (rows from memory)", () => {
  let uncontracted: Translator;
  beforeAll(async () => void (uncontracted = await library.translator("uncontracted")));

  it.each(UNCONTRACTED_ROWS)("%s: %s", (_section, print, ascii) => {
    expect(asciiOf(uncontracted, print)).toBe(ascii);
  });
});
