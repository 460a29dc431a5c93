import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import { wrapCells } from "../../../src/domain/braille/page";
import { pairPrint } from "../../../src/domain/braille/print-lines";

const contracted = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("contracted");

const pairs = (text: string, cells: number, indent = ""): [string, string][] => {
  const transcription = contracted.transcribe(text);
  const lines = wrapCells(indent + transcription.cells, cells);
  if (!lines.ok) throw new Error(lines.fault.message);
  const prints = pairPrint(transcription, lines.value);
  return lines.value.map((line, index) => [line, prints[index] ?? "missing"]);
};

describe("print that belongs to lines of braille", () => {
  it("is the words of each line, whatever they are contracted to", () => {
    expect(pairs("The children have knowledge of much", 8)).toEqual([
      ["⠠⠮⠀⠡⠝⠀⠓", "The children have"],
      ["⠅⠀⠷⠀⠍⠡", "knowledge of much"],
    ]);
  });

  it("does not mind an indent", () => {
    expect(pairs("The children have", 7, "⠀⠀")).toEqual([
      ["⠀⠀⠠⠮⠀⠡⠝", "The children"],
      ["⠓", "have"],
    ]);
  });

  it("parts a broken word where a contraction begins", () => {
    expect(pairs("childish", 2).map(([, print]) => print)).toEqual(["chi", "ld", "ish"]);
  });

  it("leaves nothing out and repeats nothing", () => {
    const text = "In 2026, Avocet’s 3 chicks weren’t in the nest; “Oh!” said Dunlin. MANY WORDS CAPITAL now";
    for (let cells = 3; cells < 50; cells++) {
      const print = pairs(text, cells).map(([, line]) => line);
      expect(print.join("").replace(/\s/g, "")).toBe(text.replace(/\s/g, ""));
    }
  });

  it("is empty where a line has no letter’s beginning", () => {
    expect(
      pairPrint(
        { print: "x", cells: "⠁⠃⠉⠙", spans: [{ printStart: 0, printEnd: 1, cellStart: 0, cellEnd: 4 }] },
        ["⠁⠃", "⠉⠙"],
      ),
    ).toEqual(["x", ""]);
  });
});
