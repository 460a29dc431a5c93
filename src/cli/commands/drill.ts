import { parseArgs } from "node:util";
import { isCellError } from "../../domain/cell-value";
import type { CalcHost } from "./calc";
import { EXIT } from "./opened-workbook";

export const DRILL_USAGE =
  "cellwright drill --signs 'ch, sh' [--taught 'the, and, in wordsign'] [--n 10] [--max-cells 8] [--seed 1] [--words FILE|-] [--code contracted|uncontracted]";

const OPTIONS = {
  signs: { type: "string" },
  taught: { type: "string" },
  n: { type: "string" },
  "max-cells": { type: "string" },
  seed: { type: "string" },
  words: { type: "string" },
  code: { type: "string" },
} as const;

/**
 * `drill`: prints words that use a wanted sign and otherwise only taught ones, then lines of signs in Unicode braille
 * where too few words fit; one item a line. The sheet function DRILL does the work, so the two never differ.
 *
 * @returns 0; 1 where nothing fits or a file cannot be read; 2 for wrong usage
 */
export async function runDrill(args: readonly string[], host: CalcHost): Promise<number> {
  const { err, out } = host.streams;
  const asked = parseDrillArguments(args);
  if (typeof asked === "string") {
    err(`${asked}\nUsage: ${DRILL_USAGE}\n`);
    return EXIT.usage;
  }
  let words = "";
  try {
    if (asked.words !== undefined) for await (const line of host.readLines(asked.words)) words += `${line} `;
  } catch (thrown) {
    if (!(thrown instanceof Error && "syscall" in thrown)) throw thrown;
    err("The file of words cannot be read: check its path.\n");
    return EXIT.refused;
  }
  if (asked.words !== undefined && words.trim() === "") {
    err("The file of words is empty: write the words in it, or leave --words out for the built-in ones.\n");
    return EXIT.refused;
  }
  const desk = await host.openDesk();
  if (!desk.ok) {
    err(`${desk.fault.message}\n`);
    return EXIT.refused;
  }
  const result = await desk.value.evaluate(formulaOf(asked, words));
  if (isCellError(result)) {
    err(`${result.message ?? result.error}\n`);
    return EXIT.refused;
  }
  const rows = Array.isArray(result) ? result.flat() : [result];
  out(rows.map((item) => `${String(item)}\n`).join(""));
  return EXIT.done;
}

interface DrillRequest {
  readonly signs: string;
  readonly taught: string;
  readonly n: number | undefined;
  readonly mostCells: number | undefined;
  readonly seed: number | undefined;
  readonly words: string | undefined;
  readonly code: string | undefined;
}

/** The arguments, or what is wrong with them. */
const parseDrillArguments = (args: readonly string[]): DrillRequest | string => {
  let values;
  try {
    ({ values } = parseArgs({ args: [...args], options: OPTIONS }));
  } catch {
    return "An option is unknown or has no value.";
  }
  if (values.signs === undefined) return "Say by --signs what to practise, such as --signs ch.";
  const numbers = { n: values.n, "max-cells": values["max-cells"], seed: values.seed };
  for (const [name, text] of Object.entries(numbers)) {
    if (text !== undefined && !/^\d{1,9}$/.test(text.trim())) return `--${name} is to be a whole number.`;
  }
  const numberOf = (text: string | undefined): number | undefined =>
    text === undefined ? undefined : Number(text);
  return {
    signs: values.signs,
    taught: values.taught ?? "",
    n: numberOf(numbers.n),
    mostCells: numberOf(numbers["max-cells"]),
    seed: numberOf(numbers.seed),
    words: values.words,
    code: values.code,
  };
};

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

const formulaOf = ({ signs, taught, n, mostCells, seed, code }: DrillRequest, words: string): string => {
  const given = [
    n,
    mostCells,
    words === "" ? undefined : quoted(words),
    seed,
    code === undefined ? undefined : quoted(code),
  ];
  const optional = given.map((argument) => String(argument ?? "")).join(",");
  return `BRAILLE.DRILL(${quoted(signs)},${quoted(taught)},${optional})`;
};
