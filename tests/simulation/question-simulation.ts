/** How many words a probe needs to settle signs in question: words chosen for it against words drawn. */
import type { Sign } from "../../src/domain/contraction/sign";
import type { WordTable } from "../../src/domain/contraction/word-table";
import { chooseWords } from "../../src/domain/drill/selection";
import { chooseQuestions } from "../../src/domain/probe/question-selection";
import type { WordEvidence } from "../../src/domain/progress/knowledge-evidence";
import { estimateKnowledge } from "../../src/domain/progress/knowledge";
import { KNOWLEDGE_SETTINGS, KNOWN_SHARE } from "../../src/domain/progress/knowledge-settings";
import { varianceOf } from "../../src/domain/progress/sign-belief";
import type { SignBackground } from "../../src/domain/progress/sign-prior";
import { seededRandom, type RandomSource } from "../../src/domain/seeded-random";
import type { Day } from "../../src/domain/units";
import { drawReader, FIRST_DAY, readWord } from "./simulated-reader";

/** Ways to choose the words: for certainty; as a drill does, in turns over the signs; any that have a sign in question. */
export const CHOICES = ["by what they tell", "in turns", "at random"] as const;
export type Choice = (typeof CHOICES)[number];

/** After each round of a probe: the variance left, of that at the start, and the squared error of what is said. */
export interface Round {
  readonly words: number;
  readonly left: number;
  readonly brier: number;
}

export const WORDS_A_ROUND = 5;

/**
 * @param words - places in the table that may be asked
 * @param inQuestion - how many signs are in question; they were taught seven weeks ago, all others long ago
 * @returns the rounds of each pupil
 */
export const simulateProbes = (
  table: WordTable,
  words: ReadonlySet<number>,
  choice: Choice,
  {
    pupils,
    inQuestion,
    rounds,
  }: { readonly pupils: number; readonly inQuestion: number; readonly rounds: number },
  seed: number,
): readonly (readonly Round[])[] => {
  const random = seededRandom(seed);
  const signs = signsOfWords(table, words);
  return Array.from({ length: pupils }, () => {
    const wanted = drawSome(
      signs.filter(({ kind }) => kind.includes("groupsign")),
      inQuestion,
      random,
    );
    return probe(table, words, choice, wanted, rounds, random);
  });
};

const TAUGHT_ON = (FIRST_DAY - 49) as Day;
const MIDDLE = 2.5;

const probe = (
  table: WordTable,
  words: ReadonlySet<number>,
  choice: Choice,
  wanted: readonly Sign[],
  rounds: number,
  random: RandomSource,
): readonly Round[] => {
  const backgrounds: readonly SignBackground[] = wanted.map(({ name }) => ({
    sign: name,
    difficulty: MIDDLE,
    taught: TAUGHT_ON,
  }));
  const noise = { slip: KNOWLEDGE_SETTINGS.slip, guess: KNOWLEDGE_SETTINGS.guess };
  const reader = drawReader("three sorts", backgrounds, 1, noise, random);
  const shares = reader.shares(0);
  const placeOf = new Map(wanted.map(({ name }, place) => [name, place]));
  const asked = new Set<number>();
  const evidence: WordEvidence[] = [];
  const day = FIRST_DAY as Day;
  const judge = () => estimateKnowledge({ words: evidence, direct: [] }, backgrounds, day);
  const variance = () => judge().reduce((sum, { belief }) => sum + varianceOf(belief), 0);
  const start = variance();
  const byWord = new Map([...words].map((word) => [table.word(word), word]));
  return Array.from({ length: rounds }, (_, round) => {
    const wish = {
      wanted,
      taught: { names: [], knows: () => true },
      most: WORDS_A_ROUND,
      mostCells: 20,
      accepts: (word: number) => words.has(word) && !asked.has(word),
    };
    const chosen =
      choice === "by what they tell"
        ? chooseQuestions(table, {
            ...wish,
            beliefs: new Map(judge().map(({ sign, belief }) => [sign, belief])),
          }).questions.map(({ word }) => word)
        : choice === "in turns"
          ? chooseWords(table, { ...wish, random }).words
          : drawSome(wordsWith(table, wish.accepts, words, placeOf), WORDS_A_ROUND, random);
    for (const text of chosen) {
      const word = byWord.get(text);
      if (word === undefined) continue;
      asked.add(word);
      const places = placesIn(table, word).flatMap(
        (place) => placeOf.get(table.palette[place]?.name ?? "") ?? [],
      );
      const isRight = readWord(reader, shares, places, random);
      evidence.push({ day, signs: places.map((place) => wanted[place]?.name ?? ""), isRight });
    }
    const said = judge();
    const errors = said.map(
      ({ chanceKnown }, place) => (chanceKnown - Number((shares[place] ?? 0) >= KNOWN_SHARE)) ** 2,
    );
    return {
      words: (round + 1) * WORDS_A_ROUND,
      left: variance() / start,
      brier: errors.reduce((sum, error) => sum + error, 0) / errors.length,
    };
  });
};

const placesIn = (table: WordTable, word: number): readonly number[] => [
  ...new Set(table.signs.subarray(table.starts[word] ?? 0, table.starts[word + 1] ?? 0)),
];

const signsOfWords = (table: WordTable, words: ReadonlySet<number>): readonly Sign[] => {
  const places = new Set([...words].flatMap((word) => placesIn(table, word)));
  return [...places].sort((one, other) => one - other).flatMap((place) => table.palette[place] ?? []);
};

const wordsWith = (
  table: WordTable,
  accepts: (word: number) => boolean,
  words: ReadonlySet<number>,
  wanted: ReadonlyMap<string, number>,
): readonly string[] =>
  [...words]
    .filter(
      (word) =>
        accepts(word) && placesIn(table, word).some((place) => wanted.has(table.palette[place]?.name ?? "")),
    )
    .map((word) => table.word(word));

const drawSome = <T>(items: readonly T[], most: number, random: RandomSource): readonly T[] => {
  const left = [...items];
  return Array.from({ length: Math.min(most, left.length) }, () =>
    left.splice(Math.floor(random() * left.length), 1),
  ).flat();
};
