import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { nodeFunctionLibrary } from "../../../src/adapters/custom-functions/node-bundle";
import type { TranslatorLibrary } from "../../../src/ports/translator";

/** A bundle of one function as webpack leaves it: it looks its host up by the global names. */
const BUNDLE = `(() => {
  const code = (x) => globalThis.cellwrightFunctionHost.translators.loaded(x) === undefined ? "none" : "some";
  CustomFunctions.associate("LOADED", (x) => { if (x === "") throw new CustomFunctions.Error(CustomFunctions.ErrorCode.notAvailable, "which?"); return code(x); });
})();`;
const METADATA = {
  functions: [{ id: "LOADED", parameters: [{ name: "code", type: "string" }], result: {} }],
};
const translators: TranslatorLibrary = {
  translator: () => Promise.reject(new Error("not asked for")),
  loaded: () => undefined,
};

let directory = "";
beforeAll(async () => {
  directory = await mkdtemp(path.join(tmpdir(), "cellwright-"));
  await writeFile(path.join(directory, "functions.js"), BUNDLE);
  await writeFile(path.join(directory, "functions.json"), JSON.stringify(METADATA));
});
afterAll(() => rm(directory, { recursive: true }));

it("evaluates the bundle with the host's translators in reach", async () => {
  const library = await nodeFunctionLibrary({ directory, translators });
  const found = library.find("BRAILLE.LOADED");
  expect(found?.call(["contracted"])).toBe("none");
  expect(found?.call([""])).toEqual({ error: "#N/A", message: "which?" });
});

it("rejects where the build is missing", async () => {
  await expect(
    nodeFunctionLibrary({ directory: path.join(directory, "nowhere"), translators }),
  ).rejects.toThrow(/ENOENT/);
});
