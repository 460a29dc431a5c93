import { normalShare } from "./normal";

/** How far two orders agree, pair by pair. */
export interface RankAgreement {
  /** Kendall's S: pairs in the same order less pairs in opposite order */
  readonly s: number;
  /** all pairs, n(n − 1)/2 */
  readonly pairs: number;
  /** pairs alike in x, and pairs alike in y */
  readonly tiesX: number;
  readonly tiesY: number;
  /** S over √((pairs − ties in x)(pairs − ties in y)); absent where one of them does not vary */
  readonly tauB?: number;
}

/**
 * Kendall's S and τb.
 *
 * Source: Kendall 1970, Rank Correlation Methods, 4th edition, chapters 1 and 3 (from memory).
 *
 * @param xs - one value a point
 * @param ys - one value a point, as many as `xs`
 * @throws {RangeError} where the lengths differ
 */
export const measureAgreement = (xs: readonly number[], ys: readonly number[]): RankAgreement => {
  if (xs.length !== ys.length) throw new RangeError(`${xs.length} x but ${ys.length} y.`);
  let [s, tiesX, tiesY] = [0, 0, 0];
  for (let i = 0; i < xs.length; i++) {
    for (let j = i + 1; j < xs.length; j++) {
      const dx = Math.sign((xs[j] ?? NaN) - (xs[i] ?? NaN));
      const dy = Math.sign((ys[j] ?? NaN) - (ys[i] ?? NaN));
      s += dx * dy;
      if (dx === 0) tiesX++;
      if (dy === 0) tiesY++;
    }
  }
  const pairs = (xs.length * (xs.length - 1)) / 2;
  const scale = Math.sqrt((pairs - tiesX) * (pairs - tiesY));
  return { s, pairs, tiesX, tiesY, ...(scale > 0 && { tauB: s / scale }) };
};

/**
 * The chance that two unrelated orders agree as much or more, either way: exact, from the number of orders of n with
 * each S. Without ties only; a count with ties would need their own distribution.
 *
 * Source: Kendall 1970, Rank Correlation Methods, section 5.2 (from memory).
 *
 * @returns the chance, or undefined with ties or under 2 points
 */
export const exactAgreementChance = (
  { s, tiesX, tiesY }: RankAgreement,
  points: number,
): number | undefined => {
  if (tiesX > 0 || tiesY > 0 || points < 2) return undefined;
  // share[d]: share of the orders so far with d pairs the wrong way round.
  let share = [1];
  for (let n = 2; n <= points; n++) {
    const next = new Array<number>(share.length + n - 1).fill(0);
    share.forEach((part, d) => {
      for (let moved = 0; moved < n; moved++) next[d + moved] = (next[d + moved] ?? 0) + part / n;
    });
    share = next;
  }
  const fewest = (share.length - 1 - Math.abs(s)) / 2;
  return Math.min(1, 2 * share.slice(0, fewest + 1).reduce((sum, part) => sum + part, 0));
};

/**
 * The same chance by the normal approximation with the variance corrected for ties, without continuity correction.
 *
 * Source: Kendall 1970, Rank Correlation Methods, section 5.4 (from memory); as SciPy `kendalltau(method="asymptotic")`.
 *
 * @param xs - one value a point
 * @param ys - one value a point, as many as `xs`
 */
export const normalAgreementChance = (xs: readonly number[], ys: readonly number[]): number => {
  const { s } = measureAgreement(xs, ys);
  const n = xs.length;
  const [x, y] = [tieSums(xs), tieSums(ys)];
  const variance =
    (n * (n - 1) * (2 * n + 5) - x.fives - y.fives) / 18 +
    (x.threes * y.threes) / (9 * n * (n - 1) * (n - 2)) +
    (x.twos * y.twos) / (2 * n * (n - 1));
  return 2 * normalShare(-Math.abs(s) / Math.sqrt(variance));
};

const tieSums = (values: readonly number[]): { twos: number; threes: number; fives: number } => {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  let [twos, threes, fives] = [0, 0, 0];
  for (const u of counts.values()) {
    twos += u * (u - 1);
    threes += u * (u - 1) * (u - 2);
    fives += u * (u - 1) * (2 * u + 5);
  }
  return { twos, threes, fives };
};
