import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { formatAccentRules, joinAccent } from "../../../src/adapters/liblouis/letter-accents";
import { nodeEngineSource, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { collectTableFiles, isTableName } from "../../../src/adapters/liblouis/table-files";
import { trimTable } from "../../../src/adapters/liblouis/table-trim";

const source = nodeEngineSource(PACKAGE_LAYOUT);
const textOf = (name: string): string => readFileSync(`${PACKAGE_LAYOUT.directory}/tables/${name}`, "utf8");

describe("table files", () => {
  it("are collected with all that they include, each once", async () => {
    const files = await collectTableFiles(source, "en-ueb-g2.ctb");
    // The list of the project's notes on the engine, without the display table.
    expect(files.map(({ name }) => name).sort()).toEqual(
      [
        "en-ueb-g2.ctb",
        "en-ueb-g1.ctb",
        "en-ueb-chardefs.uti",
        "latinLetterDef8Dots.uti",
        "en-ueb-math.ctb",
        "braille-patterns.cti",
      ].sort(),
    );
  });

  it.each(["../secret.ctb", "/etc/passwd", "a/b.ctb", "x.js", ".ctb", "", "contracted"])(
    'are never looked for under "%s"',
    (name) => {
      expect(isTableName(name)).toBe(false);
    },
  );
});

describe("the trimmed tables", () => {
  it.each([
    ["en-ueb-g1.ctb", 102],
    ["en-ueb-chardefs.uti", 11],
    ["en-ueb-math.ctb", 4],
    ["en-ueb-g2.ctb", 0],
  ])("%s loses %i rules and nothing else", (name, count) => {
    const before = textOf(name).split("\n");
    const after = new Set(trimTable(name, before.join("\n")).split("\n"));
    const lost = before.filter((line) => !after.has(line));
    expect(lost).toHaveLength(count);
    for (const line of lost) expect(line).toMatch(/^noback (?:pass2|correct|context) /);
  });

  it("leave no correct or pass2 rule, each of which would make the engine go over every text again", () => {
    for (const name of ["en-ueb-g2.ctb", "en-ueb-g1.ctb", "en-ueb-chardefs.uti", "en-ueb-math.ctb"]) {
      expect(trimTable(name, textOf(name))).not.toMatch(/^(?:noback |nofor )?(?:correct|pass[234]) /m);
    }
  });
});

describe("rules for accented letters", () => {
  const rules = formatAccentRules(textOf("en-ueb-chardefs.uti"));

  it.each([
    ["Š š", "uplow \\x0160\\x0161 45-346-234"],
    ["Ř ř", "uplow \\x0158\\x0159 45-346-1235"],
    ["Ď ď", "uplow \\x010e\\x010f 45-346-145"],
    ["Ł ł", "uplow \\x0141\\x0142 4-16-123"],
  ])("give %s its modifier and its letter", (_letters, rule) => {
    expect(rules.split("\n")).toContain(rule);
  });

  it("leave alone what the table has", () => {
    expect(rules).not.toMatch(/\\x00e9/);
  });

  it("join a letter and its mark to one character", () => {
    expect(joinAccent("e\u0301")).toBe("é");
    expect(joinAccent("x\u0301")).toHaveLength(1);
    expect(joinAccent("x\u0323")).toBe("x\u0323");
  });
});
