/** Reads a file of specification cases for a braille translator and finds which of them the project's one passes. */
import { readFileSync } from "node:fs";

/** One case: what is put in and what is to come out. */
export interface SpecificationCase {
  readonly file: string;
  readonly direction: "forward" | "back";
  readonly code: string;
  readonly input: string;
  readonly expected: string;
  /** The project that the case comes from knows that its own engine fails here. */
  readonly failsUpstream: boolean;
}

/** A case that was not passed, and what came out instead. */
export interface Failure extends SpecificationCase {
  readonly answer: string;
}

/** How many cases of one file, direction and code there are, and how many are passed. */
export interface Tally {
  readonly file: string;
  readonly direction: "forward" | "back";
  readonly code: string;
  cases: number;
  passed: number;
}

/** What one run found. */
export interface Report {
  readonly tallies: readonly Tally[];
  readonly failures: readonly Failure[];
}

/** Answers a case; what it throws is the answer too, as its message. */
export type Answerer = (given: SpecificationCase) => string;

/**
 * The cases of a file of JSON lines; a line without `input` is a note on where the data comes from.
 *
 * @throws {SyntaxError} where a line is no JSON; {TypeError} where a case lacks a field
 */
export const readSpecification = (path: string): SpecificationCase[] =>
  readFileSync(path, "utf8")
    .split(/\r?\n/)
    .flatMap((line, index) => (line.trim() === "" ? [] : parseCase(line, index + 1)));

const parseCase = (line: string, number: number): SpecificationCase[] => {
  const fields = JSON.parse(line) as Readonly<Record<string, unknown>>;
  const { file, direction, code, input, expected, upstreamExpectsFailure } = fields;
  if (input === undefined) return [];
  if (direction !== "forward" && direction !== "back")
    throw new TypeError(`line ${number}: direction is to be "forward" or "back", not ${String(direction)}`);
  for (const [name, value] of Object.entries({ file, code, input, expected })) {
    if (typeof value !== "string") throw new TypeError(`line ${number}: ${name} is to be a text`);
  }
  return [
    {
      file: file as string,
      direction,
      code: code as string,
      input: input as string,
      expected: expected as string,
      failsUpstream: upstreamExpectsFailure === true,
    },
  ];
};

/** Blanks are compared as the blank cell, whichever of the two ways the file writes them. */
const plain = (text: string, direction: string): string =>
  direction === "forward" ? text.replaceAll(" ", "\u2800") : text;

/** Runs every case; tallies in the order in which the files are met. */
export const runSpecification = (cases: readonly SpecificationCase[], answer: Answerer): Report => {
  const tallies = new Map<string, Tally>();
  const failures: Failure[] = [];
  for (const each of cases) {
    const { file, direction, code } = each;
    const key = `${file} ${direction} ${code}`;
    const tally = tallies.get(key) ?? { file, direction, code, cases: 0, passed: 0 };
    tallies.set(key, tally);
    tally.cases += 1;
    const answered = attempt(() => answer(each));
    if (plain(answered, direction) === plain(each.expected, direction)) tally.passed += 1;
    else failures.push({ ...each, answer: answered });
  }
  return { tallies: [...tallies.values()], failures };
};

const attempt = (answer: () => string): string => {
  try {
    return answer();
  } catch (failure) {
    return `refused: ${failure instanceof Error ? failure.message : String(failure)}`;
  }
};
