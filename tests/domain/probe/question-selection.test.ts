import { describe, expect, it } from "vitest";
import { parseSigns, parseTaught } from "../../../src/domain/contraction/taught";
import { tabulateWords, type WordTable } from "../../../src/domain/contraction/word-table";
import { chooseQuestions, type QuestionWish } from "../../../src/domain/probe/question-selection";
import type { ShareBelief } from "../../../src/domain/progress/mastery-estimate";
import type { Result } from "../../../src/domain/result";

const valueOf = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.fault.message);
  return result.value;
};

/** Words with their signs given beside them, parted by spaces, as the engine would tell them. */
const table = (...words: readonly (readonly [string, string])[]): WordTable =>
  tabulateWords(
    words.map(([word, names]) => {
      const sequence = names.split(" ").flatMap((name) => valueOf(parseSigns([name])));
      return { word, sequence, signs: [...new Set(sequence)], contractions: [], cells: sequence.length };
    }),
  );

const OPEN: ShareBelief = { right: 0.5, wrong: 0.5 };
const SURE: ShareBelief = { right: 30, wrong: 1 };

const choose = (words: WordTable, wanted: string, change: Partial<QuestionWish> = {}) =>
  chooseQuestions(words, {
    wanted: wanted.split(" ").flatMap((name) => valueOf(parseSigns([name]))),
    beliefs: new Map(wanted.split(" ").map((name) => [name, OPEN])),
    taught: valueOf(parseTaught(["the"])),
    most: 10,
    mostCells: 20,
    accepts: () => true,
    ...change,
  });
const wordsOf = ({ questions }: ReturnType<typeof choose>): readonly string[] =>
  questions.map(({ word }) => word);

const WORDS = table(
  ["chat", "ch a t"],
  ["house", "h ou s e"],
  ["couch", "c ou ch"],
  ["shout", "sh ou t"],
  ["teach", "t ea ch"],
  ["cat", "c a t"],
);

describe("a probe that asks what is still unknown", () => {
  it("asks the signs in question, in words that are readable but for them", () => {
    expect(new Set(wordsOf(choose(WORDS, "ch ou")))).toEqual(new Set(["chat", "house", "couch"]));
  });

  it("asks an open question before one that is nearly answered", () => {
    const beliefs = new Map([
      ["ch", SURE],
      ["ou", OPEN],
    ]);
    expect(wordsOf(choose(WORDS, "ch ou", { beliefs, most: 1 }))).toEqual(["house"]);
  });

  it("goes over to the other sign once one was asked", () => {
    const [first, second] = wordsOf(
      choose(table(["chat", "ch a t"], ["chap", "ch a p"], ["out", "ou t"]), "ch ou"),
    );
    expect([first, second]).toEqual(["chat", "out"]);
  });

  it("asks a sign alone rather than beside another as open, which could be to blame as well", () => {
    expect(
      wordsOf(
        choose(table(["couch", "c ou ch"], ["chat", "ch a t"]), "ch", {
          beliefs: new Map([
            ["ch", OPEN],
            ["ou", OPEN],
          ]),
          taught: valueOf(parseTaught(["ou"])),
        }),
      ),
    ).toEqual(["chat", "couch"]);
  });

  it("takes the commoner of two words that tell the same, and no more than asked", () => {
    expect(wordsOf(choose(table(["chat", "ch a t"], ["chap", "ch a p"]), "ch", { most: 1 }))).toEqual([
      "chat",
    ]);
  });

  it("names the signs that no word asks", () => {
    expect(choose(WORDS, "ch gh").unasked.map(({ name }) => name)).toEqual(["gh"]);
    expect(choose(WORDS, "sh").unasked).toHaveLength(1);
  });

  it.each([
    { name: "words not accepted", change: { accepts: (word: number) => word !== 0 } },
    { name: "words too long", change: { mostCells: 2 } },
    { name: "no words wanted", change: { most: 0 } },
  ])("leaves out $name", ({ change }) => {
    expect(wordsOf(choose(table(["chat", "ch a t"]), "ch", change))).toEqual([]);
  });

  it("adds up: what is left afterwards is what there was less what each word is expected to tell", () => {
    const { questions, before, after } = choose(WORDS, "ch ou");
    // Two signs with the variance of Beta(½, ½), 1/8.
    expect(before).toBeCloseTo(0.25, 12);
    expect(after).toBeCloseTo(
      questions.reduce((left, { lowers }) => left - lowers, before),
      12,
    );
    expect(after).toBeGreaterThan(0);
  });

  it("tells of a word of one open sign what the two outcomes leave: worked by hand without slip and guess", () => {
    // Right leaves Beta(3/2, 1/2), wrong Beta(1/2, 3/2): both with variance 1/16; so 1/8 falls to 1/16.
    const { questions } = choose(table(["chat", "ch a t"]), "ch", { settings: { slip: 0, guess: 0 } });
    expect(questions[0]?.lowers).toBeCloseTo(1 / 16, 12);
  });

  it("chooses as trying every word at every step does", () => {
    const words = table(
      ...[
        "ch a t",
        "ch ou t",
        "ou t",
        "ea t",
        "ch ea t",
        "t ea ch",
        "sh ou t",
        "sh ea",
        "r ou gh",
        "sh a h",
        "a t",
      ].map((names) => [names.replaceAll(" ", ""), names] as const),
    );
    const beliefs = new Map<string, ShareBelief>([
      ["ch", { right: 1, wrong: 1 }],
      ["ou", { right: 0.4, wrong: 0.6 }],
      ["ea", { right: 2, wrong: 1 }],
      ["sh", { right: 0.7, wrong: 0.1 }],
      ["gh", { right: 0.2, wrong: 0.8 }],
    ]);
    const all = choose(words, "ch ou ea sh gh", { beliefs, most: 99 }).questions;
    expect(all).toHaveLength(10);
    for (let most = 1; most <= all.length; most++) {
      const chosen = new Set(all.slice(0, most - 1).map(({ word }) => word));
      const alternatives = choose(words, "ch ou ea sh gh", {
        beliefs,
        most: 99,
        accepts: (word) => !chosen.has(words.word(word)),
      });
      // With nothing asked before, the first of the rest is at least as telling as in its turn.
      expect(all[most - 1]?.lowers).toBeLessThanOrEqual((alternatives.questions[0]?.lowers ?? 0) + 1e-12);
    }
    const lowers = all.map(({ lowers }) => lowers);
    expect(lowers).toEqual([...lowers].sort((one, other) => other - one));
  });
});
