import { spreadOf } from "./log-response-ratio";

/**
 * The difference of means in standard deviations of the scores before: Glass's Δ, and g, which is Δ less its bias in
 * small samples, `Δ (1 − 3 / (4 (m − 1) − 1))`. Better counts up.
 *
 * Source: Glass 1976, Hedges 1981 (both from memory), as in the R package SingleCaseES.
 *
 * @param before - two or more that vary
 * @param after - one or more
 * @returns undefined where the scores before do not say how much they vary
 */
export const standardiseDifference = (
  before: readonly number[],
  after: readonly number[],
  lowerIsBetter = false,
): { readonly delta: number; readonly g: number } | undefined => {
  if (before.length < 2 || after.length === 0) return undefined;
  const { mean, variance } = spreadOf(before);
  if (!(variance > 0)) return undefined;
  const difference = after.reduce((sum, score) => sum + score, 0) / after.length - mean;
  const delta = (lowerIsBetter ? -difference : difference) / Math.sqrt(variance);
  return { delta, g: delta * (1 - 3 / (4 * (before.length - 1) - 1)) };
};
