/** Prints how right the model of knowledge is about simulated pupils, as Markdown tables for the documents. */
import { nodeWordBank } from "../../src/adapters/word-bank/node-word-bank";
import { brier, judge, mean, METHODS, WordSource, type Judgement } from "./knowledge-simulation";
import { CHOICES, simulateProbes, WORDS_A_ROUND, type Round } from "./question-simulation";
import { TRUTHS } from "./simulated-reader";

const SEED = 20_261_125;
const WORDS = 5000;
const WEEKS = 12;
const WORDS_A_WEEK = 60;
const NOISE = { slip: 0.1, guess: 0.1 };
const OTHER_NOISE = { slip: 0.03, guess: 0.25 };
const LENGTHS = [1, 2, 4, 8, 12, 24] as const;
const ROUNDS = 24;
const IN_QUESTION = 12;

/**
 * Over the word bank of the build, words most frequent first.
 *
 * @param pupils - simulated pupils a line
 * @param print - takes a line
 */
export default async function run(pupils: number, print: (line: string) => void): Promise<void> {
  const bank = await nodeWordBank("dist").load();
  const table = bank.table("contracted");
  const words = Array.from({ length: table.size }, (_, word) => word)
    .filter((word) => bank.suitsDrill(word))
    .slice(0, WORDS);
  const source = new WordSource(table, words);
  const base = { pupils, weeks: WEEKS, wordsAWeek: WORDS_A_WEEK, noise: NOISE };

  print(
    `${WORDS_A_WEEK} words a week for ${WEEKS} weeks, drawn as often as they are met from the ${words.length} commonest, ${pupils} pupils, seed ${SEED} and the following; slip and guess as the model assumes (.1, .1).\n`,
  );
  TRUTHS.forEach((truth, at) => {
    const said = judge(source, { ...base, truth }, SEED + at);
    print(`Truth: ${truth}; n = ${said["by moments"].length} signs seen.\n`);
    printCalibration(print, said["by moments"]);
    print("");
    printScores(
      print,
      METHODS.map((method) => [method, said[method]] as const),
    );
    print("");
  });

  print(
    `Pupils who slip .03 and guess .25 where the model assumes .1 and .1; three sorts, seed ${SEED + 10}.\n`,
  );
  const other = judge(source, { ...base, truth: "three sorts", noise: OTHER_NOISE }, SEED + 10);
  printCalibration(print, other["by moments"]);
  print("");
  printScores(
    print,
    METHODS.map((method) => [method, other[method]] as const),
  );

  print(`\nBrier score by words read; three sorts, ${pupils} pupils a line, seed ${SEED + 20}.\n`);
  printRows(
    print,
    ["words", ...METHODS],
    LENGTHS.map((weeks) => {
      const said = judge(source, { ...base, truth: "three sorts", weeks }, SEED + 20);
      return [weeks * WORDS_A_WEEK, ...METHODS.map((method) => digits(brier(said[method])))];
    }),
  );

  print(
    `\nA probe about ${IN_QUESTION} groupsigns in question, all other signs known, ${WORDS_A_ROUND} words a round, ${pupils} pupils, seed ${SEED + 30}.\n`,
  );
  const probes = CHOICES.map((choice) => {
    const settings = { pupils, inQuestion: IN_QUESTION, rounds: ROUNDS };
    return simulateProbes(table, new Set(words), choice, settings, SEED + 30);
  });
  printRows(
    print,
    ["words", ...CHOICES.flatMap((choice) => [`variance left, ${choice}`, `Brier, ${choice}`])],
    [1, 2, 4, 6, 8, 12, 16, 20, 24].map((round) => [
      round * WORDS_A_ROUND,
      ...probes.flatMap((pupil) => {
        const at = pupil.flatMap((rounds) => rounds[round - 1] ?? []);
        return [digits(mean(at.map(({ left }) => left))), digits(mean(at.map((one) => one.brier)))];
      }),
    ]),
  );
  print("\nWords until the variance of a pupil's signs is down to a share of what it was, median.\n");
  printRows(
    print,
    ["share left", ...CHOICES],
    [0.7, 0.6, 0.5, 0.4].map((share) => [share, ...probes.map((pupil) => wordsUntil(pupil, share))]),
  );
}

const wordsUntil = (pupils: readonly (readonly Round[])[], share: number): string => {
  const words = pupils.map((rounds) => rounds.find(({ left }) => left <= share)?.words ?? Infinity);
  const middle = words.sort((one, other) => one - other)[words.length >> 1] ?? Infinity;
  return middle === Infinity ? `over ${ROUNDS * WORDS_A_ROUND}` : String(middle);
};

const printCalibration = (print: (line: string) => void, judgements: readonly Judgement[]): void => {
  printRows(
    print,
    [
      "said to be known with",
      "signs",
      "said on average",
      "known",
      "share expected within",
      "signs",
      "expected on average",
      "true share on average",
    ],
    Array.from({ length: 10 }, (_, tenth) => {
      const chances = judgements.filter(({ chanceKnown }) => tenthOf(chanceKnown) === tenth);
      const shares = judgements.filter(({ expected }) => tenthOf(expected) === tenth);
      const range = `${tenth * 10}–${tenth * 10 + 10} %`;
      return [
        range,
        chances.length,
        digits(mean(chances.map(({ chanceKnown }) => chanceKnown))),
        digits(mean(chances.map(({ isKnown }) => Number(isKnown)))),
        range,
        shares.length,
        digits(mean(shares.map(({ expected }) => expected))),
        digits(mean(shares.map(({ share }) => share))),
      ];
    }),
  );
};

const tenthOf = (share: number): number => Math.min(9, Math.floor(share * 10));

const printScores = (
  print: (line: string) => void,
  methods: readonly (readonly [string, readonly Judgement[]])[],
): void => {
  printRows(
    print,
    ["method", "Brier", "called probably known", "of these known", "true share inside the 95 % interval"],
    methods.map(([method, judgements]) => {
      const called = judgements.filter(({ chanceKnown }) => chanceKnown >= 0.8);
      const inside = judgements.map(({ low, high, share }) => Number(low <= share && share <= high));
      return [
        method,
        digits(brier(judgements)),
        called.length,
        digits(mean(called.map(({ isKnown }) => Number(isKnown)))),
        method === "known or not" ? "–" : digits(mean(inside)),
      ];
    }),
  );
};

const digits = (value: number): string => (Number.isNaN(value) ? "–" : value.toFixed(3).replace(/^0/, ""));

const printRows = (
  print: (line: string) => void,
  heads: readonly string[],
  rows: readonly (readonly (string | number)[])[],
): void => {
  print(`| ${heads.join(" | ")} |`);
  print(`| ${heads.map(() => "--:").join(" | ")} |`);
  for (const row of rows) print(`| ${row.join(" | ")} |`);
};
