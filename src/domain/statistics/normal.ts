/** Numerators and denominators of AS 241 (PPND16), constant term first. */
const CENTRE = {
  above: [
    3.387132872796366608, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125,
    45921.953931549871457, 67265.770927008700853, 33430.575583588128105, 2509.0809287301226727,
  ],
  below: [
    1, 42.313330701600911252, 687.1870074920579083, 5394.1960214247511077, 21213.794301586595867,
    39307.89580009271061, 28729.085735721942674, 5226.495278852854561,
  ],
};
const MIDDLE = {
  above: [
    1.42343711074968357734, 4.6303378461565452959, 5.7694972214606914055, 3.64784832476320460504,
    1.27045825245236838258, 0.24178072517745061177, 0.0227238449892691845833, 7.7454501427834140764e-4,
  ],
  below: [
    1, 2.05319162663775882187, 1.6763848301838038494, 0.68976733498510000455, 0.14810397642748007459,
    0.0151986665636164571966, 5.475938084995344946e-4, 1.05075007164441684324e-9,
  ],
};
const TAIL = {
  above: [
    6.6579046435011037772, 5.4637849111641143699, 1.7848265399172913358, 0.29656057182850489123,
    0.026532189526576123093, 0.0012426609473880784386, 2.71155556874348757815e-5, 2.01033439929228813265e-7,
  ],
  below: [
    1, 0.59983220655588793769, 0.13692988092273580531, 0.0148753612908506148525, 7.868691311456132591e-4,
    1.8463183175100546818e-5, 1.4215117583164458887e-7, 2.04426310338993978564e-15,
  ],
};

const polynomial = (coefficients: readonly number[], x: number): number =>
  coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
const ratio = (form: typeof CENTRE, x: number): number =>
  polynomial(form.above, x) / polynomial(form.below, x);

/**
 * The value of the standard normal distribution that a given share lies at or below.
 *
 * Source: Wichura 1988, Applied Statistics 37(3):477–484, algorithm AS 241, PPND16 (coefficients from memory,
 * checked against the quantiles of `@stdlib`).
 *
 * @param share - above 0 and below 1
 * @throws {RangeError} outside these
 */
export const normalQuantile = (share: number): number => {
  if (!(share > 0 && share < 1)) throw new RangeError(`A share must be above 0 and below 1, not ${share}.`);
  const fromMiddle = share - 0.5;
  if (Math.abs(fromMiddle) <= 0.425) return fromMiddle * ratio(CENTRE, 0.180625 - fromMiddle * fromMiddle);
  const r = Math.sqrt(-Math.log(Math.min(share, 1 - share)));
  const size = r <= 5 ? ratio(MIDDLE, r - 1.6) : ratio(TAIL, r - 5);
  return fromMiddle < 0 ? -size : size;
};

/**
 * The share of the standard normal distribution at or below z.
 *
 * Source: near the middle the series `½ + φ(z)(z + z³/3 + z⁵/15 + …)` (Marsaglia 2004, Journal of Statistical Software
 * 11(4)), in the tails the continued fraction of Abramowitz & Stegun 1964, 26.2.14 (both from memory).
 */
export const normalShare = (z: number): number => {
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  if (Math.abs(z) > 3) {
    let fraction = Math.abs(z);
    for (let term = 200; term > 0; term--) fraction = Math.abs(z) + term / fraction;
    return z < 0 ? density / fraction : 1 - density / fraction;
  }
  let [sum, term] = [z, z];
  for (let odd = 3; Math.abs(term) > 1e-18; odd += 2) {
    term *= (z * z) / odd;
    sum += term;
  }
  return 0.5 + density * sum;
};
