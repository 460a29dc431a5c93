/**
 * The share of scores after that are better than the best score before (PND): one lucky score before can bring it to
 * 0, so it is given only where asked for.
 *
 * Source: Scruggs, Mastropieri & Casto 1987, Remedial and Special Education 8(2):24–33 (from memory).
 *
 * @param before - one or more
 * @param after - one or more
 * @returns 0 to 1
 * @throws {RangeError} where one of them is empty
 */
export const shareBeyondBest = (
  before: readonly number[],
  after: readonly number[],
  lowerIsBetter = false,
): number => {
  if (before.length === 0 || after.length === 0) throw new RangeError("PND needs scores on both sides.");
  const best = before.reduce((a, b) => (lowerIsBetter ? Math.min(a, b) : Math.max(a, b)));
  const beyond = after.filter((score) => (lowerIsBetter ? score < best : score > best)).length;
  return beyond / after.length;
};
