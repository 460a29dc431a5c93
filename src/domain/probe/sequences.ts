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

/** Never the greater of two counts. */
const UNPAIRED = -(2 ** 30);

/**
 * Correct letter sequences of a text: each of its words is paired with at most one word written, in order, so that the
 * most sequences are correct. A word left out has none correct of its n + 1; words added have no part. Time goes with
 * words times words written.
 *
 * @param target - the text's words in order, normalised as they are to be compared
 * @param written - the words that came
 */
export const countLetterSequences = (
  target: readonly string[],
  written: readonly string[],
): SequenceCount => {
  const letters = written.map((word) => [...word]);
  let [best, possible] = [new Int32Array(written.length + 1), 0];
  for (const word of target) {
    const own = [...word];
    possible += own.length + 1;
    const next = new Int32Array(best.length);
    letters.forEach((other, j) => {
      const paired = (best[j] ?? 0) + countSequences(own, other).correct;
      next[j + 1] = Math.max(best[j + 1] ?? 0, next[j] ?? 0, paired);
    });
    best = next;
  }
  return { correct: best[written.length] ?? 0, possible };
};
