/** How fast the knowledge of signs is inferred from whole words, and the words of a probe are chosen. */
import { nodeWordBank } from "../../src/adapters/word-bank/node-word-bank";
import { difficultyOf } from "../../src/domain/contraction/difficulty";
import type { WordTable } from "../../src/domain/contraction/word-table";
import { chooseQuestions } from "../../src/domain/probe/question-selection";
import { estimateKnowledge } from "../../src/domain/progress/knowledge";
import type { WordEvidence } from "../../src/domain/progress/knowledge-evidence";
import type { SignBackground } from "../../src/domain/progress/sign-prior";
import { seededRandom } from "../../src/domain/seeded-random";
import type { Day } from "../../src/domain/units";
import type { BenchFigure } from "./figure";

const SEED = 20261125;
const SIGNS = 200;
const RUNS = 11;
const FIRST_DAY = 46_000;
const DAYS = 280;

/** Measures both over words of the bank. */
export default async function run(): Promise<BenchFigure[]> {
  const table = (await nodeWordBank("dist").load()).table("contracted");
  const backgrounds: SignBackground[] = table.palette.slice(0, SIGNS).map((sign) => ({
    sign: sign.name,
    difficulty: difficultyOf(sign),
    taught: "earlier",
  }));
  const asOf = (FIRST_DAY + DAYS) as Day;
  const infer = (words: readonly WordEvidence[]) =>
    estimateKnowledge({ words, direct: [] }, backgrounds, asOf);
  const few = drawEvidence(table, 5000);
  const many = drawEvidence(table, 50_000);
  const beliefs = new Map(infer(few).map(({ sign, belief }) => [sign, belief]));
  const wanted = table.palette.filter(({ kind }) => kind.includes("groupsign"));
  const choose = () =>
    chooseQuestions(table, {
      ...{ wanted, beliefs, taught: { names: [], knows: () => true } },
      ...{ most: 20, mostCells: 12, accepts: () => true },
    });
  const name = `knowledge: ${backgrounds.length} signs from`;
  return [
    figure(
      `${name} 5,000 words of the bank over ${DAYS} days (seed ${SEED}), median of ${RUNS}`,
      timeOf(() => infer(few)),
      100,
    ),
    figure(
      `${name} 50,000 words, median of ${RUNS}`,
      timeOf(() => infer(many)),
      null,
    ),
    {
      ...figure(
        `${name} 50,000 words: memory taken, the evidence itself left out`,
        memoryOf(() => infer(many)),
        null,
      ),
      unit: "MB",
    },
    figure(
      `knowledge: 20 words of ${table.size} that tell most about ${wanted.length} groupsigns, median of ${RUNS}`,
      timeOf(choose),
      null,
    ),
  ];
}

const drawEvidence = (table: WordTable, count: number): readonly WordEvidence[] => {
  const random = seededRandom(SEED);
  return Array.from({ length: count }, () => {
    const word = Math.floor(random() * 20_000);
    const places = table.signs.subarray(table.starts[word] ?? 0, table.starts[word + 1] ?? 0);
    const signs = [...new Set(places)].flatMap((place) => table.palette[place]?.name ?? []);
    return { day: (FIRST_DAY + Math.floor(random() * DAYS)) as Day, signs, isRight: random() < 0.9 };
  });
};

const figure = (name: string, value: number, most: number | null): BenchFigure => ({
  name,
  value: Number(value.toPrecision(3)),
  unit: "ms",
  against: "nothing: no other program at hand does this",
  ratio: null,
  goal: most === null ? null : `under ${most} ms`,
  met: most === null ? null : value < most,
});

const timeOf = (work: () => unknown): number => {
  const taken = Array.from({ length: RUNS }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return taken.sort((one, other) => one - other)[RUNS >> 1] ?? Number.NaN;
};

/** What the heap grows by while the work is done, garbage and all: an upper bound. */
const memoryOf = (work: () => unknown): number => {
  const before = process.memoryUsage().heapUsed;
  const kept = work();
  const after = process.memoryUsage().heapUsed;
  return kept === undefined ? Number.NaN : Math.max(0, after - before) / 2 ** 20;
};
