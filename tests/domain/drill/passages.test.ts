import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { createPassageReader } from "../../../src/domain/contraction/passage";
import { rankPassages, splitSentences } from "../../../src/domain/drill/passages";
import { taughtSigns } from "../contraction/word-tables";

const contracted = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("contracted");
const reader = createPassageReader((text) => contracted.transcribe(text));

describe("passages", () => {
  it("are ranked by what the pupil can read, with the words and signs that stand in the way", () => {
    const passages = [
      { title: "Shed", text: "The cat sat in the shed." },
      { title: "Dots", text: "… – !" },
      { title: "Cat", text: "A cat sat." },
      { title: "Long", text: "A cat sat at a mat." },
      { title: "Child", text: "The child and the children" },
    ];
    const ranked = rankPassages(passages, reader, taughtSigns("the"));
    expect(ranked.map(({ passage, words, share }) => [passage.title, words, share])).toEqual([
      ["Long", 6, 1],
      ["Cat", 3, 1],
      ["Shed", 6, 4 / 6],
      ["Child", 5, 2 / 5],
    ]);
    // ,! CAT SAT 9 ! %$4 in ASCII braille: 2, 3, 3, 1, 1 and 3 cells, five blanks.
    expect(ranked[2]?.cells).toBe(18);
    expect(ranked[2]?.cells).toBe(contracted.translate("The cat sat in the shed.").length);
    expect(ranked[2]?.unreadable).toEqual(["in", "shed."]);
    expect(ranked[2]?.lacking.map(({ name }) => name)).toEqual(["in wordsign", "sh", "ed"]);
  });
});

describe("sentences", () => {
  it.each([
    ["A cat sat. It ran!", ["A cat sat.", "It ran!"]],
    ["“Stop!” said Avocet. “Why?”", ["“Stop!” said Avocet.", "“Why?”"]],
    ["Mr. Plover has 3.5 eggs. So?", ["Mr. Plover has 3.5 eggs.", "So?"]],
    ["One line\nand another. End", ["One line and another.", "End"]],
    ["A title\n\nA text.", ["A title", "A text."]],
    ["Well … perhaps.", ["Well … perhaps."]],
    ["  ", []],
  ])("of %j are %j", (text, sentences) => {
    expect(splitSentences(text)).toEqual(sentences);
  });
});
