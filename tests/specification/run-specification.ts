/** npm run spec: the project's translator on a file of specification cases. */
import { nodeTranslatorLibrary, PACKAGE_LAYOUT } from "../../src/adapters/liblouis/node-engine";
import { existsSync } from "node:fs";
import { nodeWordBank } from "../../src/adapters/word-bank/node-word-bank";
import { WORD_BANK_FILE } from "../../src/adapters/word-bank/stored-word-bank";
import { lexiconOfTable, type Lexicon } from "../../src/domain/reading-back/lexicon";
import { readPrint } from "../../src/domain/reading-back/print";
import { toAscii } from "../../src/domain/braille/cell";
import { readSpecification, runSpecification, type Failure, type Report, type Tally } from "./specification";

/** The file of single words, which has a goal of its own. */
const DICTIONARY = /dictionary/;
/** Shares of forward cases to be reached. */
const GOALS = { dictionary: 0.995, others: 0.95 };

/** What to show of a run. */
export interface SpecificationOptions {
  /** failures listed at most */
  readonly failures: number;
  /** only files whose name holds this */
  readonly only: string | undefined;
}

/**
 * Runs a file of cases and writes pass rates by file and direction, then failures.
 *
 * @param write - receives one line
 * @returns whether the goals for forward translation are met
 */
export default async function run(
  path: string,
  { failures, only }: SpecificationOptions,
  write: (line: string) => void,
): Promise<boolean> {
  const cases = readSpecification(path).filter(({ file }) => only === undefined || file.includes(only));
  const library = nodeTranslatorLibrary(PACKAGE_LAYOUT);
  for (const code of new Set(cases.map((each) => each.code))) await library.translator(code);
  const lexicons = await loadLexicons();
  const report = runSpecification(cases, ({ direction, code, input }) => {
    const translator = library.loaded(code);
    if (translator === undefined) return "";
    if (direction === "forward") return translator.translate(input);
    const lexicon = lexicons.get(code);
    const uebCode = code === "uncontracted" ? "uncontracted" : "contracted";
    const reading = { code: uebCode, write: (print: string) => translator.translate(print) } as const;
    const cells = input.replaceAll(" ", "\u2800");
    return readPrint(cells, lexicon === undefined ? reading : { ...reading, lexicon }).print;
  });
  for (const tally of report.tallies)
    write(`${share(tally)}  ${tally.file}, ${tally.direction}, ${tally.code}`);
  const reached = writeTotals(report, write);
  for (const failure of report.failures.slice(0, failures)) writeFailure(failure, write);
  return reached;
}

/** Words of the bank, where it is built; without them braille is read back contraction by contraction. */
const loadLexicons = async (): Promise<ReadonlyMap<string, Lexicon>> => {
  if (!existsSync(`dist/${WORD_BANK_FILE}`)) return new Map();
  const bank = await nodeWordBank("dist").load();
  return new Map(
    (["contracted", "uncontracted"] as const).map((code) => [code, lexiconOfTable(bank.table(code))]),
  );
};

const writeTotals = ({ tallies, failures }: Report, write: (line: string) => void): boolean => {
  const forward = tallies.filter(({ direction }) => direction === "forward");
  const groups = [
    {
      name: "dictionary file, forward",
      goal: GOALS.dictionary,
      of: forward.filter(({ file }) => DICTIONARY.test(file)),
    },
    {
      name: "all others, forward",
      goal: GOALS.others,
      of: forward.filter(({ file }) => !DICTIONARY.test(file)),
    },
  ];
  let reached = true;
  write("");
  for (const { name, goal, of } of groups) {
    if (of.length === 0) continue;
    const total = sum(of);
    const met = total.passed / total.cases >= goal;
    reached &&= met;
    write(`${share(total)}  ${name}; goal ${100 * goal} %: ${met ? "met" : "NOT met"}`);
  }
  const back = tallies.filter(({ direction }) => direction === "back");
  if (back.length > 0) write(`${share(sum(back))}  reading back`);
  const upstream = failures.filter(({ failsUpstream }) => failsUpstream).length;
  write(
    `${failures.length} failures, ${upstream} of them failures that the source of the cases expects of its own engine`,
  );
  return reached;
};

const sum = (tallies: readonly Tally[]): { cases: number; passed: number } => ({
  cases: tallies.reduce((total, { cases }) => total + cases, 0),
  passed: tallies.reduce((total, { passed }) => total + passed, 0),
});

const share = ({ cases, passed }: { readonly cases: number; readonly passed: number }): string =>
  `${((100 * passed) / cases).toFixed(2).padStart(6)} % (${passed} of ${cases})`;

const writeFailure = (
  { file, input, expected, answer, failsUpstream }: Failure,
  write: (line: string) => void,
): void =>
  write(
    [
      file,
      JSON.stringify(input),
      `expected ${readable(expected)}`,
      `got ${readable(answer)}`,
      failsUpstream ? "*" : "",
    ].join("\t"),
  );

/** Cells also as ASCII braille, which a sighted reader tells apart more easily. */
const readable = (text: string): string => {
  const ascii = toAscii(text.replaceAll(" ", "\u2800"));
  return ascii.ok ? `${text} [${ascii.value}]` : JSON.stringify(text);
};
