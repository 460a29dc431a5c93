import { describe, expect, it } from "vitest";
import { LouisLibrary } from "../../../src/adapters/liblouis/louis-library";
import {
  nodeEngineSource,
  nodeTranslatorLibrary,
  PACKAGE_LAYOUT,
} from "../../../src/adapters/liblouis/node-engine";
import { UnknownCodeError } from "../../../src/ports/translator";
import { runTranslatorContract } from "../../contracts/translator-contract";

runTranslatorContract("liblouis in Node", () => nodeTranslatorLibrary(PACKAGE_LAYOUT));

describe("the engine in Node", () => {
  const library = nodeTranslatorLibrary(PACKAGE_LAYOUT);

  it("leaves no listener for uncaught exceptions behind", async () => {
    const before = process.listeners("uncaughtException");
    await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("contracted");
    expect(process.listeners("uncaughtException")).toEqual(before);
  });

  it.each([
    ["A B C D E F G H", "⠠⠠⠠⠁⠀⠰⠃⠀⠰⠉⠀⠰⠙⠀⠰⠑⠀⠰⠋⠀⠰⠛⠀⠰⠓⠠⠄"],
    ["½½½½½½½½", "⠼⠁⠌⠃".repeat(8)],
    ["1) 2) 3)", "⠼⠁⠐⠜⠀⠼⠃⠐⠜⠀⠼⠉⠐⠜"],
  ])("gives output longer than its input without harm: %s", async (print, cells) => {
    const translator = await library.translator("contracted");
    for (let time = 0; time < 50; time += 1) {
      translator.forget();
      expect(translator.translate(print)).toBe(cells);
    }
    expect(translator.translate("Hello")).toBe("⠠⠓⠑⠇⠇⠕");
  });

  it("loads any other table of the build by its file name", async () => {
    const french = await library.translator("fr-bfu-g2.ctb");
    // Source: Code de transcription en braille, capital sign dots 4-6 (from memory).
    expect(french.translate("Le chat")).toMatch(/^⠨/);
    expect(french.transcribe("Le chat").spans.at(-1)?.printEnd).toBe(7);
  });

  it("refuses a table that is too large for the engine, says so, and works on", async () => {
    const before = await library.translator("contracted");
    await expect(library.translator("hu.tbl")).rejects.toThrow(UnknownCodeError);
    await expect(library.translator("hu.tbl")).rejects.toThrow(/too large/);
    expect(before.translate("still")).toBe("⠌");
    expect((await library.translator("en-us-g2.ctb")).translate("still")).toBe("⠌");
  });

  it("refuses a table that does not compile, with the engine's reason, and works on", async () => {
    const source = nodeEngineSource(PACKAGE_LAYOUT);
    const broken = new LouisLibrary({
      loadEngine: () => source.loadEngine(),
      loadTable: (name) =>
        name === "broken.ctb" ? Promise.resolve("nonsense a 1\n") : source.loadTable(name),
    });
    await expect(broken.translator("broken.ctb")).rejects.toThrow(/does not compile: .*nonsense/);
    expect((await broken.translator("contracted")).translate("still")).toBe("⠌");
  });

  it("tries again after a table could not be read", async () => {
    const source = nodeEngineSource(PACKAGE_LAYOUT);
    let online = false;
    const flaky = new LouisLibrary({
      loadEngine: () => source.loadEngine(),
      loadTable: (name) => (online ? source.loadTable(name) : Promise.reject(new Error("offline"))),
    });
    await expect(flaky.translator("contracted")).rejects.toThrow(UnknownCodeError);
    online = true;
    expect((await flaky.translator("contracted")).translate("still")).toBe("⠌");
  });
});
