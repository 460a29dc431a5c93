import type { ShareBelief } from "./mastery-estimate";

/** The share expected right. */
export const expectedShare = ({ right, wrong }: ShareBelief): number => right / (right + wrong);

/** The variance of the share. */
export const varianceOf = ({ right, wrong }: ShareBelief): number => {
  const weight = right + wrong;
  return (right * wrong) / (weight * weight * (weight + 1));
};

/** The belief of a given mean and variance; the variance is above 0 and below mean·(1 − mean). */
export const beliefOf = (mean: number, variance: number): ShareBelief => {
  const weight = (mean * (1 - mean)) / variance - 1;
  return { right: mean * weight, wrong: (1 - mean) * weight };
};

/**
 * The belief after one use of a sign that was recognised with a certain chance: exactly it is a mixture of one more
 * right and one more wrong, which is replaced by the beta distribution of the same mean and variance. A use that tells
 * nothing (a chance equal to the share expected) changes nothing; one that was surely right adds one right. Adding the
 * chance itself to the counts has the same mean but counts every word in full, however little it tells of the sign.
 *
 * Source: assumed-density filtering, Minka 2001, "A family of algorithms for approximate Bayesian inference"
 * (from memory); the mixture is worked out here.
 *
 * @param recognised - from 0 to 1, as `weighSign` gives it
 */
export const absorbUse = (belief: ShareBelief, recognised: number): ShareBelief => {
  const { right, wrong } = belief;
  const mean = (right + recognised) / (right + wrong + 1);
  return beliefOf(mean, varianceAfter(belief, recognised));
};

/** The variance of the mixture: that within its two parts and that between them. */
const varianceAfter = ({ right, wrong }: ShareBelief, recognised: number): number => {
  const weight = right + wrong;
  const within = (recognised * (right + 1) * wrong + (1 - recognised) * right * (wrong + 1)) / (weight + 2);
  return (within + recognised * (1 - recognised)) / ((weight + 1) * (weight + 1));
};
