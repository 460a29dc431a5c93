/** Prints what decision rules say of simulated pupils, as Markdown tables for the documents. */
import { checkSettling, RULE_NAMES, shareCalledBehind, shareOfVerdicts, VERDICTS } from "./decision-rules";

const SEED = 20_261_125;
const WEEKS = [6, 8, 10, 14, 20] as const;
const CASES = WEEKS.flatMap((weeks) =>
  [0, 0.3].flatMap((correlation) => [0, -1].map((slopeOff) => ({ weeks, correlation, slopeOff }))),
);

/**
 * @param pupils - simulated pupils a line
 * @param print - takes a line
 */
export default function run(pupils: number, print: (line: string) => void): void {
  const place = (row: (typeof CASES)[number]): readonly (string | number)[] => [
    row.weeks,
    row.correlation,
    row.slopeOff,
  ];
  print(`Share called behind; scatter 8, ${pupils} pupils a line, seed ${SEED} and the following.\n`);
  printTable(print, ["weeks", "correlation", "slope less aim", ...RULE_NAMES], CASES, (row, i) => [
    ...place(row),
    ...Object.values(shareCalledBehind({ ...row, scatter: 8 }, row.weeks, pupils, SEED + i)).map(share),
  ]);
  for (const [block, scatter] of [4, 8].entries()) {
    const seed = SEED + 100 * (block + 1);
    print(`\nVerdicts; scatter ${scatter}, ${pupils} pupils a line, seed ${seed} and the following.\n`);
    printTable(print, ["weeks", "correlation", "slope less aim", ...VERDICTS], CASES, (row, i) => [
      ...place(row),
      ...shareOfVerdicts({ ...row, scatter }, row.weeks, pupils, seed + i).map(share),
    ]);
  }
  const seed = SEED + 300;
  print(
    `\nProbes named to settle an unclear verdict; scatter 8, ${pupils} pupils, seed ${seed} and the following.\n`,
  );
  const heads = [
    "weeks",
    "correlation",
    "slope less aim",
    "unclear",
    "number named",
    "median",
    "settled by then",
  ];
  const short = CASES.filter(({ weeks }) => weeks <= 10);
  printTable(print, heads, short, (row, i) => {
    const found = checkSettling({ ...row, scatter: 8 }, row.weeks, pupils, seed + i);
    return [...place(row), found.unclear, share(found.named), found.middle, share(found.settled)];
  });
}

const share = (value: number): string => (Number.isNaN(value) ? "–" : value.toFixed(3).replace(/^0/, ""));

const printTable = <T>(
  print: (line: string) => void,
  heads: readonly string[],
  rows: readonly T[],
  cells: (row: T, index: number) => readonly (string | number)[],
): void => {
  print(`| ${heads.join(" | ")} |`);
  print(`| ${heads.map(() => "--:").join(" | ")} |`);
  rows.forEach((row, i) => print(`| ${cells(row, i).join(" | ")} |`));
};
