import { normalShare } from "./normal";
import { measureOverlap } from "./overlap";

/**
 * The chance that two groups of the same kind differ in order as much or more, either way: exact, from the number of
 * arrangements with each Mann–Whitney U. Without ties only.
 *
 * Source: Mann & Whitney 1947, Annals of Mathematical Statistics 18(1):50–60 (from memory).
 *
 * @returns the chance, or undefined with ties
 */
export const exactOrderChance = (before: readonly number[], after: readonly number[]): number | undefined => {
  if (new Set([...before, ...after]).size < before.length + after.length) return undefined;
  const { better, worse, pairs } = measureOverlap(before, after);
  // ways[i][u]: arrangements of i scores before among the scores after so far that make u pairs better.
  let ways = before.map(() => [1]);
  ways = [[1], ...ways];
  for (let n = 1; n <= after.length; n++) {
    const next: number[][] = [[1]];
    for (let m = 1; m <= before.length; m++) {
      const sum = new Array<number>(m * n + 1).fill(0);
      // The largest of all is either a score before, or a score after that beats all m.
      (next[m - 1] ?? []).forEach((count, u) => (sum[u] = (sum[u] ?? 0) + count));
      (ways[m] ?? []).forEach((count, u) => (sum[u + m] = (sum[u + m] ?? 0) + count));
      next.push(sum);
    }
    ways = next;
  }
  const counts = ways[before.length] ?? [];
  const all = counts.reduce((sum, count) => sum + count, 0);
  const tail = counts.slice(0, Math.min(better, worse) + 1).reduce((sum, count) => sum + count, 0);
  return pairs === 0 ? undefined : Math.min(1, (2 * tail) / all);
};

/**
 * The same chance by the normal approximation with continuity correction and the variance corrected for ties.
 *
 * Source: as SciPy `mannwhitneyu(method="asymptotic")`.
 */
export const normalOrderChance = (before: readonly number[], after: readonly number[]): number => {
  const { better, worse, ties, pairs } = measureOverlap(before, after);
  const n = before.length + after.length;
  const counts = new Map<number, number>();
  for (const value of [...before, ...after]) counts.set(value, (counts.get(value) ?? 0) + 1);
  let tied = 0;
  for (const count of counts.values()) tied += count ** 3 - count;
  const deviation = Math.sqrt((pairs / 12) * (n + 1 - tied / (n * (n - 1))));
  const far = Math.max(better, worse) + ties / 2 - pairs / 2 - 0.5;
  return Math.min(1, 2 * normalShare(-far / deviation));
};
