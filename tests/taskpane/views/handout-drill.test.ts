import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { IndexedWordBank } from "../../../src/adapters/word-bank/indexed-word-bank";
import type { Passage } from "../../../src/domain/drill/passages";
import { listUntaught, prepareBraille } from "../../../taskpane/views/handout-braille";
import { makeDrillEntries, type DrillRequest } from "../../../taskpane/views/handout-drill";
import { buildSmallBank } from "../../adapters/word-bank/small-bank";

const translators = nodeTranslatorLibrary(PACKAGE_LAYOUT);
const { bytes } = await buildSmallBank({ chat: 50, rich: 40, ache: 30, chip: 20, ship: 15, fence: 9 });
const bank = new IndexedWordBank(bytes);
const source = { sheet: "Taught", row: 2 };
const taught = ["ch", "sh"].map((sign) => ({ pupil: "Heron", sign, source }));
const braille = await prepareBraille(translators, { taught, exceptions: [] }, "heron", "contracted");
const usual: DrillRequest = {
  ...{ form: "words", signs: "ch", most: 3, mostCells: undefined, seed: 1, words: undefined },
};
const passages: readonly Passage[] = [{ title: "One", text: "A chip with fish. The fence is here! A chat." }];
const make = async (changes: Partial<DrillRequest>) => {
  const made = await makeDrillEntries({ ...usual, ...changes }, braille, passages, () =>
    Promise.resolve(bank),
  );
  return made.ok ? made.value : made.fault;
};

describe("the items of a drill in the pane", () => {
  it("are words of the bank, then lines of signs with their print", async () => {
    const entries = await make({ most: 6 });
    expect(entries).toHaveLength(6);
    expect(entries).toContainEqual({ kind: "word", text: "chat" });
    expect(entries).toContainEqual({
      kind: "signs",
      text: expect.stringContaining("⠡") as string,
      print: expect.stringContaining("ch") as string,
    });
  });

  it("are her own words where she says so, and no bank is loaded", async () => {
    const made = await makeDrillEntries({ ...usual, words: ["church", "cat", "☃ch"] }, braille, [], () =>
      Promise.reject(new Error("loaded")),
    );
    expect(made.ok && made.value[0]).toEqual({ kind: "word", text: "church" });
  });

  it("are pairs of words that differ in one sign", async () => {
    expect(await make({ form: "pairs", signs: "ch, sh" })).toEqual([{ kind: "word", text: "chip ship" }]);
  });

  it("are lines of signs no longer than the cells", async () => {
    const entries = await make({ form: "lines", mostCells: 9, most: 4 });
    expect(Array.isArray(entries) && entries.every(({ text }) => text.length <= 9)).toBe(true);
  });

  it("are sentences with the sign, the most readable first", async () => {
    expect(await make({ form: "sentences" })).toEqual([
      { kind: "sentence", text: "A chat." },
      { kind: "sentence", text: "A chip with fish." },
    ]);
  });

  it.each([
    ["no sign", { signs: " " }, /Name at least one sign/],
    ["a word that is no sign", { signs: "hedgehog" }, /is not a sign/],
    ["a sign of no sentence", { form: "sentences", signs: "ou" }, /No sentence of your passages/],
    ["signs without pairs", { form: "pairs", signs: "ch, ou" }, /No two words/],
    ["cells too few for a line", { form: "lines", mostCells: 1 }, /too few/],
  ] as const)("are refused for %s, with what to do", async (_, changes, message) => {
    expect(await make(changes)).toEqual({
      code: expect.any(String) as string,
      message: expect.stringMatching(message) as string,
    });
  });
});

describe("the braille of a pupil", () => {
  it("names the signs of an item that were not taught, and none of lines of signs", () => {
    expect(listUntaught({ kind: "word", text: "chat with fish" }, braille)).toEqual(["with"]);
    expect(listUntaught({ kind: "signs", text: "⠾⠀⠾" }, braille)).toEqual([]);
  });

  it("passes over rows of her lists that cannot be read, and names them", async () => {
    const made = await prepareBraille(
      translators,
      {
        taught: [...taught, { pupil: "Heron", sign: "hedgehog", source }],
        exceptions: [
          { word: "Avocet", braille: "?!é", source },
          { word: "dunlin", braille: "145-1", source },
        ],
      },
      "Heron",
      "contracted",
    );
    expect(made.notes).toHaveLength(2);
    expect(made.notes.join(" ")).toMatch(/Avocet.*hedgehog/);
    const written = made.transcribe("dunlin");
    expect(written.ok && written.value.cells).toBe("⠙⠁");
  });
});
