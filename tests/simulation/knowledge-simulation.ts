/** How right the model of knowledge is about simulated pupils, and how many words it needs. */
import { difficultyOf } from "../../src/domain/contraction/difficulty";
import { isContraction } from "../../src/domain/contraction/sign";
import type { WordTable } from "../../src/domain/contraction/word-table";
import { trackKnowledge } from "../../src/domain/progress/knowledge";
import type { WordEvidence } from "../../src/domain/progress/knowledge-evidence";
import {
  KNOWLEDGE_SETTINGS,
  KNOWN_SHARE,
  type KnowledgeSettings,
} from "../../src/domain/progress/knowledge-settings";
import type { SignBackground } from "../../src/domain/progress/sign-prior";
import { seededRandom, type RandomSource } from "../../src/domain/seeded-random";
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
  readonly words: number;
}

export interface SimulationCase {
  readonly truth: Truth;
  readonly pupils: number;
  readonly weeks: number;
  readonly wordsAWeek: number;
  readonly noise: { readonly slip: number; readonly guess: number };
}

/** The ways to make up one's mind that are compared. */
export const METHODS = ["by moments", "counting every word"] as const;
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
  settings: KnowledgeSettings = KNOWLEDGE_SETTINGS,
): Readonly<Record<Method, readonly Judgement[]>> => {
  const said: Record<Method, Judgement[]> = { "by moments": [], "counting every word": [] };
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
    const [known = []] = trackKnowledge({ words, direct: [] }, backgrounds, [asOf], settings);
    const counted = countWords(words);
    known.forEach((sign, place) => {
      if (sign.words === 0) return;
      const share = reader.shares(weeks - 1)[place] ?? 0;
      const truthOf = { share, isKnown: share >= KNOWN_SHARE, words: sign.words };
      said["by moments"].push({ ...sign, ...truthOf });
      const { right, total } = counted.get(sign.sign) ?? { right: 0, total: 0 };
      const expected = (right + 1) / (total + 2);
      said["counting every word"].push({ expected, chanceKnown: expected, low: 0, high: 1, ...truthOf });
    });
  }
  return said;
};

const countWords = (
  words: readonly WordEvidence[],
): ReadonlyMap<string, { right: number; total: number }> => {
  const counts = new Map<string, { right: number; total: number }>();
  for (const { signs, isRight } of words)
    for (const sign of signs) {
      const count = counts.get(sign) ?? { right: 0, total: 0 };
      count.right += isRight ? 1 : 0;
      count.total += 1;
      counts.set(sign, count);
    }
  return counts;
};

/** The mean squared distance of what is said from 1 where it is so, 0 where not. Source: Brier 1950 (from memory). */
export const brier = (judgements: readonly Judgement[]): number =>
  mean(judgements.map(({ chanceKnown, isKnown }) => (chanceKnown - Number(isKnown)) ** 2));

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
