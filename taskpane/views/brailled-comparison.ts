import { formatDay } from "../../src/domain/calendar";
import { formatDots } from "../../src/domain/braille/cell";
import { CONTRACTIONS } from "../../src/domain/contraction/inventory";
import { parseSignItems } from "../../src/domain/contraction/taught";
import { LETTERS } from "../../src/domain/contraction/sign";
import type { AlignedCells } from "../../src/domain/probe/aligned-cells";
import {
  dropBlanks,
  expectSigns,
  expectText,
  parseWritten,
  type ExpectedCells,
} from "../../src/domain/probe/expected-cells";
import { computeRate } from "../../src/domain/probe/rate";
import type { Probe } from "../../src/domain/probe/probe";
import { cellAccuracy, dotAccuracy, scoreWriting, type WritingScore } from "../../src/domain/probe/writing";
import { measureProbe } from "../../src/domain/progress/measure";
import { normaliseName } from "../../src/domain/progress/series";
import { success, type Result } from "../../src/domain/result";
import type { Seconds } from "../../src/domain/units";
import type { Translator } from "../../src/ports/translator";
import { refuseUntranslatable } from "../../src/ports/refused-text";
import { beginSentence, countInWords } from "./count-words";
import type { BrailledTask } from "./brailled-draft";

/** What was to be written and what was, compared. */
export interface ComparedWriting {
  readonly score: WritingScore;
  /** Unicode braille without line breaks */
  readonly written: string;
}

/**
 * Compares what a pupil wrote with what was asked.
 *
 * @param written - Unicode braille, ASCII braille or dot numbers, as they are read
 * @param translator - of the task's code; not needed for signs
 * @returns the comparison, or what is wrong with either side
 */
export const compareWriting = (
  task: BrailledTask,
  written: string,
  translator: Translator | undefined,
): Result<ComparedWriting> => {
  const expected = expectCells(task, translator);
  if (!expected.ok) return expected;
  const cells = parseWritten(written);
  if (!cells.ok) return cells;
  const compared = task.code === "signs" ? dropBlanks(cells.value) : cells.value;
  return success({ score: scoreWriting(expected.value, compared), written: compared });
};

const expectCells = (
  { text, code }: BrailledTask,
  translator: Translator | undefined,
): Result<ExpectedCells> => {
  if (code === "signs" || translator === undefined) {
    const signs = parseSignItems([text]);
    return signs.ok ? success(expectSigns(signs.value)) : signs;
  }
  const written = refuseUntranslatable((part) => translator.transcribe(part))(text);
  return written.ok ? success(expectText(text, (part) => translator.transcribe(part), true)) : written;
};

const round = (value: number): string => (Math.round(value * 10) / 10).toString();
const percent = (share: number): string => `${round(100 * share)} %`;

/** A comparison in sentences. @param seconds - undefined where it was not timed */
export function describeWriting({ score }: ComparedWriting, seconds: number | undefined): readonly string[] {
  const { cells, right, changed, leftOut, added } = score;
  const [share, dots] = [cellAccuracy(score), dotAccuracy(score)];
  const faults: readonly (readonly [number, string])[] = [
    [changed, "changed"],
    [leftOut, "left out"],
    [added, "added"],
  ];
  const met = faults.filter(([count]) => count > 0).map(([count, words]) => `${String(count)} ${words}`);
  const rate = seconds === undefined ? undefined : computeRate(cells, cells - right, seconds as Seconds);
  return [
    `${beginSentence(countInWords(right, "cell"))} right of ${String(cells)} expected${share === undefined ? "" : `, ${percent(share)}`}.`,
    met.length === 0 ? "Nothing changed, left out or added." : `${beginSentence(met.join(", "))}.`,
    ...(dots === undefined ? [] : [`Dots right: ${percent(dots)}.`]),
    ...(rate?.ok === true
      ? [`${round(rate.value)} cells right a minute, in ${round(seconds ?? 0)} seconds.`]
      : []),
  ];
}

/** The errors in order. */
export const listErrors = ({ score }: ComparedWriting): readonly AlignedCells[] =>
  score.aligned.filter(({ kind }) => kind !== undefined);

const nameOfCells = new Map(
  [...LETTERS, ...CONTRACTIONS].toReversed().map(({ cells, name }) => [cells, name] as const),
);

/** Cells in words: dots, `nothing`, `blank` for a blank cell. */
export const sayCells = (cells: string): string =>
  cells === "" ? "nothing" : cells === "\u2800" ? "blank" : `dots ${formatDots(cells)}`;

/**
 * How an error is written into the list of miscues: the names of whole signs, so that it counts as a confusion of these;
 * else the cells themselves.
 */
export const nameSides = ({ expected, written, sign }: AlignedCells): readonly [string, string] => {
  const isWhole = sign !== undefined && sign.cells === expected;
  const given = nameOfCells.get(written);
  return isWhole && (given !== undefined || written === "") ? [sign.name, given ?? ""] : [expected, written];
};

/** The signs of errors, most often met first, each once. */
export const listMissedSigns = (compared: ComparedWriting): readonly string[] => {
  const counts = new Map<string, number>();
  for (const { sign } of listErrors(compared))
    if (sign !== undefined) counts.set(sign.name, (counts.get(sign.name) ?? 0) + 1);
  return [...counts].sort(([, one], [, other]) => other - one).map(([name]) => name);
};

/** How many earlier probes stand beside a new one. */
const EARLIER = 5;

/** The pupil's last writings in the same code and medium, newest first, a line each. */
export const listEarlierWritings = (probes: readonly Probe[], task: BrailledTask): readonly string[] =>
  probes
    .filter(
      (probe) =>
        normaliseName(probe.pupil) === normaliseName(task.pupil) &&
        /brail|dictat|writ/i.test(probe.task ?? "") &&
        (probe.code === undefined || normaliseName(probe.code) === task.code) &&
        (probe.medium === undefined || normaliseName(probe.medium) === task.medium),
    )
    .flatMap((probe) => {
      const [share, rate] = [measureProbe(probe, "accuracy"), measureProbe(probe, "rate")];
      const said = [
        ...(share === undefined ? [] : [`${percent(share)} right`]),
        ...(rate === undefined ? [] : [`${round(rate)} a minute`]),
      ];
      return said.length === 0 ? [] : [{ probe, said: said.join(", ") }];
    })
    .sort((one, other) => other.probe.day - one.probe.day)
    .slice(0, EARLIER)
    .map(
      ({ probe, said }) =>
        `${formatDay(probe.day)}: ${said}${probe.material === undefined ? "" : `, ${probe.material}`}`,
    );
