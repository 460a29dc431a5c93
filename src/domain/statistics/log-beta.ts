const HALF_LOG_TWO_PI = 0.5 * Math.log(2 * Math.PI);

/** Coefficients B₂ₖ / (2k(2k−1)) of Stirling's series for ln Γ. */
const STIRLING = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156, -3617 / 122400];

/** What ln Γ(x) has beyond `(x − ½) ln x − x + ½ ln 2π`, for x of 10 or more. */
const stirlingRest = (x: number): number => {
  let rest = 0;
  for (const coefficient of STIRLING.toReversed()) rest = rest / (x * x) + coefficient;
  return rest / x;
};

/**
 * The natural logarithm of the gamma function for x above 0, by Stirling's series after shifting x to 10 or more.
 *
 * Source: Abramowitz & Stegun 1964, 6.1.41 and 6.1.15 (from memory).
 */
export const logGamma = (x: number): number => {
  let shifted = x;
  let product = 1;
  while (shifted < 10) product *= shifted++;
  return (
    (shifted - 0.5) * Math.log(shifted) -
    shifted +
    HALF_LOG_TWO_PI +
    stirlingRest(shifted) -
    Math.log(product)
  );
};

/**
 * ln B(a, b) = ln Γ(a) + ln Γ(b) − ln Γ(a + b), without cancellation where one of them is large.
 *
 * Source: Abramowitz & Stegun 1964, 6.2.2 (from memory).
 *
 * @param a - above 0
 * @param b - above 0
 */
export const logBeta = (a: number, b: number): number => {
  const small = Math.min(a, b);
  const large = Math.max(a, b);
  if (large < 10) return logGamma(small) + logGamma(large) - logGamma(small + large);
  // ln Γ(large) − ln Γ(large + small), its leading terms subtracted by hand.
  const difference =
    stirlingRest(large) -
    stirlingRest(large + small) -
    (large - 0.5) * Math.log1p(small / large) -
    small * Math.log(large + small) +
    small;
  return logGamma(small) + difference;
};
