/** How right the model of knowledge is about simulated pupils, and how many words it needs. */
import { difficultyOf } from "../../src/domain/contraction/difficulty";
import { isContraction } from "../../src/domain/contraction/sign";
import type { WordTable } from "../../src/domain/contraction/word-table";
import { estimateKnowledge } from "../../src/domain/progress/knowledge";
import type { WordEvidence } from "../../src/domain/progress/knowledge-evidence";
import { KNOWLEDGE_SETTINGS, KNOWN_SHARE } from "../../src/domain/progress/knowledge-settings";
import { fadeBelief, type ShareBelief } from "../../src/domain/progress/mastery-estimate";
import { weighSign } from "../../src/domain/progress/noisy-and";
import { expectedShare } from "../../src/domain/progress/sign-belief";
import { priorOn, type SignBackground } from "../../src/domain/progress/sign-prior";
import { seededRandom, type RandomSource } from "../../src/domain/seeded-random";
import { betaQuantile } from "../../src/domain/statistics/beta-quantile";
import { incompleteBeta } from "../../src/domain/statistics/incomplete-beta";
import type { Day } from "../../src/domain/units";
import { drawReader, FIRST_DAY, readWord, WEEK, type Truth } from "./simulated-reader";

/** What is said of one sign of one pupil, and what is true. */
export interface Judgement {
  readonly expected: number;
  readonly chanceKnown: number;
  readonly low: number;
  readonly high: number;
  readonly share: number;
  readonly isKnown: boolean;
}

export interface SimulationCase {
  readonly truth: Truth;
  readonly pupils: number;
  readonly weeks: number;
  readonly wordsAWeek: number;
  readonly noise: { readonly slip: number; readonly guess: number };
}

/** The ways to make up one's mind that are compared. */
export const METHODS = ["by moments", "counts in parts", "known or not", "words counted alone"] as const;
export type Method = (typeof METHODS)[number];

/** Words drawn as often as they are met, and the places of their signs among all signs asked about. */
export class WordSource {
  readonly backgrounds: readonly SignBackground[];
  readonly places: readonly (readonly number[])[];
  readonly #upTo: Float64Array;

  constructor(table: WordTable, words: readonly number[]) {
    const signsOf = (word: number) => [
      ...new Set(table.signs.subarray(table.starts[word] ?? 0, table.starts[word + 1] ?? 0)),
    ];
    const used = [...new Set(words.flatMap(signsOf))].sort((one, other) => one - other);
    const placeOf = new Map(used.map((sign, place) => [sign, place]));
    this.backgrounds = used.flatMap((sign) => {
      const found = table.palette[sign];
      if (found === undefined) return [];
      return [
        {
          sign: found.name,
          difficulty: difficultyOf(found),
          ...(isContraction(found) ? {} : { taught: "earlier" as const }),
        },
      ];
    });
    this.places = words.map((word) => signsOf(word).flatMap((sign) => placeOf.get(sign) ?? []));
    let sum = 0;
    this.#upTo = Float64Array.from(words, (word) => (sum += table.counts[word] ?? 0));
  }

  draw(random: RandomSource): number {
    const at = random() * (this.#upTo.at(-1) ?? 0);
    let [low, high] = [0, this.#upTo.length - 1];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#upTo[middle] ?? 0) > at) high = middle;
      else low = middle + 1;
    }
    return low;
  }
}

/** Half of the contractions taught in the last 30 weeks, one in four long ago, the others not yet. */
const teach = (backgrounds: readonly SignBackground[], random: RandomSource): readonly SignBackground[] =>
  backgrounds.map((background) => {
    if (background.taught !== undefined) return background;
    const lot = random();
    if (lot < 0.25) return background;
    if (lot < 0.5) return { ...background, taught: "earlier" };
    return { ...background, taught: (FIRST_DAY - Math.floor(random() * 30 * WEEK)) as Day };
  });

/** What is said of every sign seen of every pupil at the end, by each method. */
export const judge = (
  source: WordSource,
  { truth, pupils, weeks, wordsAWeek, noise }: SimulationCase,
  seed: number,
): Readonly<Record<Method, readonly Judgement[]>> => {
  const said: Record<Method, Judgement[]> = {
    "by moments": [],
    "counts in parts": [],
    "known or not": [],
    "words counted alone": [],
  };
  const random = seededRandom(seed);
  for (let pupil = 0; pupil < pupils; pupil++) {
    const backgrounds = teach(source.backgrounds, random);
    const reader = drawReader(truth, backgrounds, weeks, noise, random);
    const words: WordEvidence[] = [];
    for (let week = 0; week < weeks; week++) {
      const day = (FIRST_DAY + WEEK * week) as Day;
      for (let count = 0; count < wordsAWeek; count++) {
        const places = source.places[source.draw(random)] ?? [];
        const signs = places.map((place) => backgrounds[place]?.sign ?? "");
        words.push({ day, signs, isRight: readWord(reader, reader.shares(week), places, random) });
      }
    }
    const asOf = (FIRST_DAY + WEEK * (weeks - 1)) as Day;
    const known = estimateKnowledge({ words, direct: [] }, backgrounds, asOf);
    const inParts = followWords(words, backgrounds, asOf, addParts);
    const knownOrNot = followWords(words, backgrounds, asOf, ({ right, wrong }, recognised) => ({
      right: recognised * (right + wrong),
      wrong: (1 - recognised) * (right + wrong),
    }));
    const alone = countWords(words);
    known.forEach((sign, place) => {
      if (sign.words === 0) return;
      const share = reader.shares(weeks - 1)[place] ?? 0;
      const truly = { share, isKnown: share >= KNOWN_SHARE };
      said["by moments"].push({ ...sign, ...truly });
      said["counts in parts"].push({ ...describe(inParts[place] ?? FLAT), ...truly });
      const all = expectedShare(knownOrNot[place] ?? FLAT);
      said["known or not"].push({ expected: all, chanceKnown: all, low: 0, high: 1, ...truly });
      said["words counted alone"].push({ ...describe(alone.get(sign.sign) ?? FLAT), ...truly });
    });
  }
  return said;
};

const FLAT: ShareBelief = { right: 1, wrong: 1 };

const describe = (belief: ShareBelief) => ({
  expected: expectedShare(belief),
  chanceKnown: 1 - incompleteBeta(KNOWN_SHARE, belief.right, belief.wrong),
  low: betaQuantile(0.025, belief.right, belief.wrong),
  high: betaQuantile(0.975, belief.right, belief.wrong),
});

const addParts = ({ right, wrong }: ShareBelief, recognised: number): ShareBelief => ({
  right: right + recognised,
  wrong: wrong + 1 - recognised,
});

/** Other ways to take in a use of a sign, with the same weights, priors and forgetting. */
const followWords = (
  words: readonly WordEvidence[],
  backgrounds: readonly SignBackground[],
  asOf: Day,
  absorb: (belief: ShareBelief, recognised: number) => ShareBelief,
): readonly ShareBelief[] => {
  const places = new Map(backgrounds.map(({ sign }, place) => [sign, place]));
  const beliefs: (readonly [ShareBelief, Day] | undefined)[] = backgrounds.map(() => undefined);
  const on = (place: number, day: Day): ShareBelief => {
    const background = backgrounds[place];
    if (background === undefined) throw new RangeError(`no sign at ${place}`);
    const [belief, last] = beliefs[place] ?? [];
    const prior = priorOn(background, day);
    return belief === undefined || last === undefined
      ? prior
      : fadeBelief(belief, (day - last) / WEEK, prior);
  };
  for (const { day, signs, isRight } of words) {
    const met = signs.map((sign) => {
      const place = places.get(sign) ?? 0;
      const belief = on(place, day);
      return { place, belief, share: expectedShare(belief) };
    });
    const all = met.reduce((product, { share }) => product * share, 1);
    for (const { place, belief, share } of met) {
      const recognised = weighSign(share, all / share, isRight, KNOWLEDGE_SETTINGS);
      beliefs[place] = [absorb(belief, recognised), day];
    }
  }
  return backgrounds.map((_, place) => on(place, asOf));
};

/** Every word right counts for all of its signs, every word missed against all of them. */
const countWords = (words: readonly WordEvidence[]): ReadonlyMap<string, ShareBelief> => {
  const counts = new Map<string, ShareBelief>();
  for (const { signs, isRight } of words)
    for (const sign of signs) counts.set(sign, addParts(counts.get(sign) ?? FLAT, isRight ? 1 : 0));
  return counts;
};

/** The mean squared distance of what is said from 1 where it is so, 0 where not. Source: Brier 1950 (from memory). */
export const brier = (judgements: readonly Judgement[]): number =>
  mean(judgements.map(({ chanceKnown, isKnown }) => (chanceKnown - Number(isKnown)) ** 2));

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
