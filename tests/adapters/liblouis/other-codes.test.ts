import { readdirSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";

/** Tables of the build with more than characters: those that a teacher would name as a code. */
const TABLES = readdirSync(path.join(PACKAGE_LAYOUT.directory, "tables")).filter((name) =>
  /\.(?:ctb|utb|tbl)$/.test(name),
);

/** What the engine says of the tables that cannot be used. Source: this build, tried one by one. */
const REFUSED: Readonly<Record<string, RegExp>> = { "hu.tbl": /too large/ };

/** A few of each kind; all of them take a minute: set EVERY_TABLE=1. */
const tried =
  process.env["EVERY_TABLE"] === "1"
    ? TABLES
    : ["hu.tbl", "en-us-g2.ctb", "fr-bfu-g2.ctb", "de-de-g1.ctb", "es-g1.ctb"];

describe("other tables of the build", () => {
  it.each(tried)(
    "%s loads and writes a letter, or says why it cannot",
    async (name) => {
      const library = nodeTranslatorLibrary(PACKAGE_LAYOUT);
      const refused = REFUSED[name];
      if (refused !== undefined) await expect(library.translator(name)).rejects.toThrow(refused);
      else expect((await library.translator(name)).code).toBe(name);
    },
    60_000,
  );
});
