import type { KnowledgeSettings } from "./knowledge-settings";

type Noise = Pick<KnowledgeSettings, "slip" | "guess">;

/**
 * The chance that a word comes right: `(1 − slip)·all + guess·(1 − all)`.
 *
 * @param all - the chance that each of its signs is recognised: their product
 */
export const chanceOfWord = (all: number, { slip, guess }: Noise): number =>
  (1 - slip) * all + guess * (1 - all);

/**
 * The chance that a sign was recognised, given how the word went: a word right speaks for all of its signs, a word
 * missed against each by as much as the others leave it to blame (noisy-AND).
 *
 * `P(k | wrong) = p_k (s·R + (1 − g)(1 − R)) / P(wrong)`, and likewise for a word right.
 *
 * Source: the DINA model, Junker & Sijtsma 2001, Applied Psychological Measurement 25(3) (from memory); check values
 * worked out from the model, no published example was found.
 *
 * @param own - the chance before that the sign is recognised, above 0
 * @param others - the product of the chances of the word's other signs; 1 where there are none
 */
export const weighSign = (own: number, others: number, isRight: boolean, noise: Noise): number => {
  const rightIfKnown = chanceOfWord(others, noise);
  const ifKnown = own * (isRight ? rightIfKnown : 1 - rightIfKnown);
  const ifUnknown = (1 - own) * (isRight ? noise.guess : 1 - noise.guess);
  // A word that can go one way only, by these chances, and went the other says nothing.
  return ifKnown + ifUnknown === 0 ? own : ifKnown / (ifKnown + ifUnknown);
};
