import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { countLetterSequences, countSequences } from "../../../src/domain/probe/sequences";
import scoring from "../../check-values/probe-scoring.json";

describe("correct sequences", () => {
  it.each(scoring.letterSequences)(
    "letters: $target written $written, $correct of $possible",
    ({ target, written, correct, possible }) => {
      expect(countSequences([...target], [...written])).toEqual({ correct, possible });
      expect(countLetterSequences([target], written === "" ? [] : [written])).toEqual({ correct, possible });
    },
  );

  it.each([
    ["the cat sat", "the cat sat", 4],
    ["the cat sat", "the dog sat", 2],
    ["the cat sat", "the sat", 2],
    ["the cat sat", "the big cat sat", 3],
    ["the cat sat", "cat the sat", 1],
  ])("words, by hand: %s | %s", (target, written, correct) => {
    expect(countSequences(target.split(" "), written.split(" "))).toEqual({ correct, possible: 4 });
  });

  it("of a text are those of its words; a word left out has none, a word added no part", () => {
    expect(countLetterSequences(["my", "friend", "said"], ["my", "dear", "freind"])).toEqual({
      correct: 3 + 4,
      possible: 3 + 7 + 5,
    });
    expect(countLetterSequences(["because", "cat"], ["becuse"])).toEqual({ correct: 6, possible: 12 });
  });

  it("are all correct for what was expected, and as many either way round", () => {
    const items = fc.array(fc.constantFrom("a", "b", "c", "d"), { maxLength: 12 });
    fc.assert(
      fc.property(items, items, (one, other) => {
        expect(countSequences(one, one).correct).toBe(one.length + 1);
        expect(countSequences(one, other).correct).toBe(countSequences(other, one).correct);
        expect(countSequences(one, other).correct).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});
