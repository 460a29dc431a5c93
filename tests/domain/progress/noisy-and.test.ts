import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chanceOfWord, weighSign } from "../../../src/domain/progress/noisy-and";
import checks from "../../check-values/noisy-and.json";

const productOf = (shares: readonly number[]): number =>
  shares.reduce((product, share) => product * share, 1);

describe("the blame of a word", () => {
  it.each(checks.cases)(
    "signs believed at $priors, of which the word has $q, slip $slip, guess $guess, right $x",
    ({ priors, q, slip, guess, x, p_x, marginals }) => {
      const inWord = priors.filter((_, at) => q[at] === 1);
      const right = chanceOfWord(productOf(inWord), { slip, guess });
      expect(x === 1 ? right : 1 - right).toBeCloseTo(p_x, 12);
      priors.forEach((own, at) => {
        const others = productOf(priors.filter((_, other) => other !== at && q[other] === 1));
        const weighed = q[at] === 1 ? weighSign(own, others, x === 1, { slip, guess }) : own;
        expect(weighed).toBeCloseTo(marginals[at] ?? Number.NaN, 12);
      });
    },
  );

  it("leaves a belief as it is where a word can only go one way and went the other", () => {
    expect(weighSign(1, 1, false, { slip: 0, guess: 0 })).toBe(1);
  });

  it("averages to the belief before, over both outcomes", () => {
    const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(share, share, share, share, (own, others, slip, guess) => {
        const right = chanceOfWord(own * others, { slip, guess });
        const mean =
          right * weighSign(own, others, true, { slip, guess }) +
          (1 - right) * weighSign(own, others, false, { slip, guess });
        expect(mean).toBeCloseTo(own, 10);
      }),
    );
  });
});
