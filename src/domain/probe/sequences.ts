import { alignSequences, EDIT } from "./alignment";

/** Neighbours that stand next to each other as they should, of how many. */
export interface SequenceCount {
  readonly correct: number;
  readonly possible: number;
}

/**
 * Correct sequences: pairs of neighbours of the target, both edges counted as neighbours, that stand next to each other
 * in what was written too, in order; the most that can be found so. A target of n items has n + 1.
 *
 * With letters of a word these are correct letter sequences, with words of a text correct word sequences as far as the
 * words decide; whether a sentence is acceptable is the reader's judgement.
 *
 * Source: worked out from the definition of correct letter sequences, not from a handbook.
 *
 * @param target - items expected, in order
 * @param written - items that came, in order
 */
export const countSequences = (target: readonly string[], written: readonly string[]): SequenceCount => {
  const possible = target.length + 1;
  const columns = written.length + 1;
  // best: the most sequences up to here; joined: the same where the last items of both are paired (0, 0: the edges).
  let best = new Int32Array(columns);
  let joined = new Int32Array(columns).fill(UNPAIRED);
  joined[0] = 0;
  for (const item of target) {
    const nextBest = new Int32Array(columns);
    const nextJoined = new Int32Array(columns).fill(UNPAIRED);
    for (let j = 1; j < columns; j += 1) {
      const before = best[j - 1] ?? 0;
      if (item === written[j - 1]) nextJoined[j] = Math.max(before, (joined[j - 1] ?? UNPAIRED) + 1);
      nextBest[j] = Math.max(best[j] ?? 0, nextBest[j - 1] ?? 0, nextJoined[j] ?? 0);
    }
    [best, joined] = [nextBest, nextJoined];
  }
  const last = columns - 1;
  return { correct: Math.max(best[last] ?? 0, (joined[last] ?? UNPAIRED) + 1, 0), possible };
};

/** Never the greater of two counts, even with the counts of a whole text added. */
const UNPAIRED = -(2 ** 30);

/**
 * Correct letter sequences of a text: its words are aligned with those written, and each word's sequences are added up.
 * A word left out has none correct of its n + 1; words added have no part.
 *
 * @param target - the text's words in order, normalised as they are to be compared
 * @param written - the words that came
 */
export const countLetterSequences = (
  target: readonly string[],
  written: readonly string[],
): SequenceCount => {
  const countPair = (one: number, other: number): SequenceCount =>
    countSequences([...(target[one] ?? "")], [...(written[other] ?? "")]);
  const { steps } = alignSequences(target, written, {
    swaps: false,
    // Of two words that one written word could stand for, the one that is more like it.
    replace: (one, other) => {
      const { correct, possible } = countPair(one, other);
      return EDIT + possible - correct;
    },
    missing: (one) => EDIT + (target[one] ?? "").length + 1,
  });
  let [correct, possible] = [0, 0];
  for (const step of steps) {
    if (step.kind === "missing") possible += (target[step.first] ?? "").length + 1;
    if (step.kind !== "same" && step.kind !== "replaced") continue;
    const pair = countPair(step.first, step.second);
    correct += pair.correct;
    possible += pair.possible;
  }
  return { correct, possible };
};
