import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../../src/adapters/liblouis/node-engine";
import type { Transcription } from "../../../src/domain/braille/transcription";
import { findContraction } from "../../../src/domain/contraction/inventory";
import { countUses, findUses, formatBrackets, readPieces } from "../../../src/domain/contraction/usage";

const contracted = await nodeTranslatorLibrary(PACKAGE_LAYOUT).translator("contracted");

const namesOf = (text: string): string[] =>
  findUses(contracted.transcribe(text)).map(({ contraction }) => contraction.name);
const bracket = (text: string): string => formatBrackets(text, findUses(contracted.transcribe(text)));

describe("the contractions of words written out by hand from the rules", () => {
  const rows = readFileSync(new URL("../../check-values/contracted-words.txt", import.meta.url), "utf8")
    .split("\n")
    .filter((line) => line !== "" && !line.startsWith("#"))
    .map((line) => line.split(" "));

  it("are at least 200, with a counter-example in each of the sections 10.1–10.9", () => {
    expect(rows.length).toBeGreaterThanOrEqual(200);
    const withCounterExample = rows
      .filter(([, no]) => no === "no")
      .map(([section]) => section?.split(".")[1]);
    for (const section of "123456789") expect(withCounterExample).toContain(section);
  });

  it.each(rows.filter(([, no]) => no !== "no"))("%s: %s", (_section, expected = "") => {
    expect(bracket(expected.replace(/[()]/g, ""))).toBe(expected);
  });

  it.each(rows.filter(([, no]) => no === "no"))(
    "%s: %s %s does not use %s",
    (_section, _no, expected = "", sign = "") => {
      const word = expected.replace(/[()]/g, "");
      expect(bracket(word)).toBe(expected);
      expect(word.toLowerCase()).toContain(sign);
      expect(namesOf(word)).not.toContain(sign);
    },
  );
});

describe("the words that each contraction of the check values was seen in", () => {
  const rows = (
    JSON.parse(
      readFileSync(new URL("../../check-values/ueb-contractions.json", import.meta.url), "utf8"),
    ) as { rows: unknown[][] }
  ).rows.map((row) => ({ id: String(row[0]), seenIn: row[9] as string[] }));

  it.each(rows.map(({ id, seenIn }, index) => [id, seenIn, index] as const))(
    "%s in %j",
    (_id, seenIn, index) => {
      for (const word of seenIn)
        expect(findUses(contracted.transcribe(word)).map(({ contraction }) => contraction.order)).toContain(
          index,
        );
    },
  );
});

describe("cases that the letters alone do not decide", () => {
  it.each<[string, string[], string]>([
    ["can't", ["can"], "10.1: a wordsign before an apostrophe"],
    ["people's", ["people"], "10.1"],
    ["mother-in-law", ["mother", "in wordsign"], "10.5: standing alone between hyphens"],
    ['"in"', [], "10.5: no lower wordsign in contact with signs of lower dots only"],
    ["(in)", ["in wordsign"], "10.5: a parenthesis has upper dots"],
    ["Enough!", ["en", "ou", "gh"], "10.5: not in contact with the exclamation mark"],
    ["ideas", ["ea"], "10.6.5"],
    ["tea", [], "10.6.5: not at the end"],
    ["idea", [], "10.6.5: not at the end"],
    ["been", ["en"], "10.6.8"],
    ["finger", ["ing", "er"], "10.4"],
    ["newsletters", ["letter"], "10.9: newsletter is in the list of shortforms in longer words"],
    ["oneself", ["oneself"], "10.9: one sign, not one with f"],
    ["bear", ["ar"], "10.10: the strong groupsign before the lower one"],
    ["dishonest", ["dis", "one", "st"], "10.6.1, 10.7"],
    ["CliffSide", [], "8: capitals inside a word break it"],
    ["ABCs", [], "8"],
    ["1st", [], "6.5: the number sign sets grade 1"],
  ])("%s uses %j (%s)", (text, expected) => {
    expect(namesOf(text)).toEqual(expected);
  });

  it.each([
    [
      "The CHILDREN, and Heron's mother, went into the garden.",
      "(The) (CHILDREN), (and) H(er)on's (mother), w(en)t (in)to (the) g(ar)d(en).",
    ],
    ["Be in the inn by the time it's dark!", "(Be) (in) (the) (in)n by (the) (time) (it)'s d(ar)k!"],
    ["“You can’t go,” said Avocet; “not today.”", "“(You) (can)’t (go),” (said) Avocet; “(not) (today).”"],
    ["NOTHING CAN STOP THEM", "NO(TH)(ING) (CAN) (ST)OP (THE)M"],
    ["3 children\n\nand 12 friends", "3 (children)\n\n(and) 12 (friend)s"],
  ])("knows the place of each use in %j", (text, expected) => {
    expect(bracket(text)).toBe(expected);
  });
});

describe("uses", () => {
  it("cover the cells of their sign, in order and without overlap", () => {
    const transcription = contracted.transcribe(
      "Another Dunlin ought to know the other’s question: “Which one?”",
    );
    let end = 0;
    for (const use of findUses(transcription)) {
      expect(transcription.cells.slice(use.cellStart, use.cellEnd)).toBe(use.contraction.cells);
      expect(transcription.print.slice(use.printStart, use.printEnd).toLowerCase()).toBe(
        use.contraction.print,
      );
      expect(use.printStart).toBeGreaterThanOrEqual(end);
      end = use.printEnd;
    }
  });

  it("are counted most used first, then in the order of the inventory", () => {
    const uses = findUses(contracted.transcribe("the child and the children and the friend of the child"));
    expect(countUses(uses).map(({ contraction, times }) => [contraction.name, times])).toEqual([
      ["the", 4],
      ["child", 2],
      ["and", 2],
      ["of", 1],
      ["friend", 1],
      ["children", 1],
    ]);
  });

  it("come from one group of the engine as from many", () => {
    const whole = (print: string, cells: string): Transcription => ({
      print,
      cells,
      spans: [{ printStart: 0, printEnd: print.length, cellStart: 0, cellEnd: cells.length }],
    });
    // A rule of the engine may give a word as one group: `people's` is ⠏⠄⠎.
    expect(findUses(whole("people's", "⠏⠄⠎")).map(({ contraction }) => contraction.name)).toEqual(["people"]);
    expect(findUses(whole("Dishonest", "⠠⠲⠓⠐⠕⠌")).map(({ contraction }) => contraction.name)).toEqual([
      "dis",
      "one",
      "st",
    ]);
    expect(findUses(whole("be-in", "⠆⠤⠔")).map(({ contraction }) => contraction.name)).toEqual([
      "be wordsign",
      "in wordsign",
    ]);
  });

  it("are found where a group's borders cut a contraction's letters", () => {
    const cut: Transcription = {
      print: "other",
      cells: "⠕⠮⠗",
      spans: [
        { printStart: 0, printEnd: 2, cellStart: 0, cellEnd: 1 },
        { printStart: 2, printEnd: 5, cellStart: 1, cellEnd: 3 },
      ],
    };
    expect(findUses(cut)).toEqual([
      { contraction: findContraction("the"), printStart: 1, printEnd: 4, cellStart: 1, cellEnd: 2 },
    ]);
  });

  it("are none where the cells are not those of the print", () => {
    expect(
      findUses({
        print: "abc",
        cells: "⠿⠿⠿",
        spans: [{ printStart: 0, printEnd: 3, cellStart: 0, cellEnd: 3 }],
      }),
    ).toEqual([]);
  });
});

describe("pieces", () => {
  it.each([
    [
      "Heron’s 3 eggs.",
      ["capital", "h", "er", "o", "n", "apostrophe", "s", "number sign", "3", "e", "gg", "s", "full stop"],
    ],
    ["(b)", ["opening parenthesis", "grade 1 sign", "b", "closing parenthesis"]],
    ["TEA", ["capital word", "t", "e", "a"]],
    [
      "“Yes?”",
      ["opening quotation mark", "capital", "y", "e", "s", "question mark", "closing quotation mark"],
    ],
    ["café", ["c", "a", "f", "é"]],
  ])("%s is %j", (text, expected) => {
    expect(readPieces(contracted.transcribe(text)).map(({ sign }) => sign.name)).toEqual(expected);
  });
});
