/** A pupil whose knowledge of every sign is known, because it was drawn: what the model says can be compared with it. */
import type { SignBackground } from "../../src/domain/progress/sign-prior";
import { priorOn } from "../../src/domain/progress/sign-prior";
import { expectedShare } from "../../src/domain/progress/sign-belief";
import { normalDeviate, type RandomSource } from "../../src/domain/seeded-random";
import type { Day } from "../../src/domain/units";

/** How the truth is drawn. */
export const TRUTHS = [
  "as the model believes",
  "all or nothing",
  "three sorts",
  "learns and forgets",
] as const;
export type Truth = (typeof TRUTHS)[number];

export const FIRST_DAY = 46_000;
export const WEEK = 7;

/** Weekly chances of a sign taught and not known to be learnt, and of a known one to be forgotten. */
const LEARNT = 0.08;
const FORGOTTEN = 0.02;

/** The share of uses of each sign that are truly recognised, week by week. */
export interface SimulatedReader {
  readonly shares: (week: number) => Float64Array;
  /** how often words are missed although every sign was recognised, and right although one was not */
  readonly slip: number;
  readonly guess: number;
}

export const drawReader = (
  truth: Truth,
  backgrounds: readonly SignBackground[],
  weeks: number,
  noise: { readonly slip: number; readonly guess: number },
  random: RandomSource,
): SimulatedReader => {
  const first = Float64Array.from(backgrounds, (background) => {
    const prior = priorOn(background, FIRST_DAY as Day);
    const expected = expectedShare(prior);
    if (truth === "as the model believes") return drawBeta(prior.right, prior.wrong, random);
    if (truth === "three sorts") {
      const sort = random();
      return sort < expected * 0.8 ? 0.97 : sort < expected * 0.8 + 0.2 ? 0.6 : 0.1;
    }
    return random() < expected ? 1 : 0;
  });
  const courses = [first];
  for (let week = 1; week < weeks; week++) {
    const before = courses[week - 1] ?? first;
    courses.push(
      truth === "learns and forgets"
        ? before.map((share, place) => {
            if (share === 1) return random() < FORGOTTEN ? 0 : 1;
            return backgrounds[place]?.taught !== undefined && random() < LEARNT ? 1 : 0;
          })
        : before,
    );
  }
  return { shares: (week) => courses[week] ?? first, ...noise };
};

/** Whether a word comes right. */
export const readWord = (
  { slip, guess }: SimulatedReader,
  shares: Float64Array,
  places: readonly number[],
  random: RandomSource,
): boolean => {
  let isRecognised = true;
  for (const place of places) if (random() >= (shares[place] ?? 1)) isRecognised = false;
  return random() < (isRecognised ? 1 - slip : guess);
};

/** Source: a beta deviate is G(a) / (G(a) + G(b)); gamma after Marsaglia & Tsang 2000, ACM TOMS 26(3) (from memory). */
const drawBeta = (a: number, b: number, random: RandomSource): number => {
  const one = drawGamma(a, random);
  return one / (one + drawGamma(b, random));
};

const drawGamma = (shape: number, random: RandomSource): number => {
  if (shape < 1) return drawGamma(shape + 1, random) * (1 - random()) ** (1 / shape);
  const d = shape - 1 / 3;
  for (;;) {
    const x = normalDeviate(random);
    const v = (1 + x / Math.sqrt(9 * d)) ** 3;
    if (v > 0 && Math.log(1 - random()) < 0.5 * x * x + d * (1 - v + Math.log(v))) return d * v;
  }
};
