import type { LineFit } from "./least-squares";

/** How much neighbouring residuals of a line go together. */
export interface Dependence {
  /** correlation of each residual with the one before it, −1 to 1 */
  readonly lagOne: number;
  /** about 2 where neighbours have nothing to do with each other, nearer 0 where they go together */
  readonly durbinWatson: number;
}

/**
 * How much neighbouring residuals of a line go together, in the order given. With fewer than about 20 points this says
 * next to nothing: it is reported, never tested.
 *
 * Source: Durbin & Watson 1950, Biometrika 37:409–428; Huitema & McKean 1991, Psychological Bulletin 110:291–304
 * (both from memory).
 *
 * @param xs - one value a point, in order
 * @param ys - one value a point, as many as `xs`
 * @returns undefined where the points lie on the line
 */
export const measureDependence = (
  fit: LineFit,
  xs: readonly number[],
  ys: readonly number[],
): Dependence | undefined => {
  const residuals = xs.map((x, i) => (ys[i] ?? NaN) - fit.meanY - fit.slope * (x - fit.meanX));
  let [squares, products, steps] = [0, 0, 0];
  residuals.forEach((residual, i) => {
    squares += residual * residual;
    const before = residuals[i - 1];
    if (before === undefined) return;
    products += residual * before;
    steps += (residual - before) ** 2;
  });
  return squares === 0 ? undefined : { lagOne: products / squares, durbinWatson: steps / squares };
};
