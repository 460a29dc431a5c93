import { findUses } from "../../src/domain/contraction/usage";
import type { Probe } from "../../src/domain/probe/probe";
import { measureProbe } from "../../src/domain/progress/measure";
import { normaliseName } from "../../src/domain/progress/series";
import { formatDay } from "../../src/domain/calendar";
import { computeAccuracy } from "../../src/domain/probe/accuracy";
import type { ReadingScore } from "../../src/domain/probe/reading";
import { computeReadingRates } from "../../src/domain/probe/reading-rates";
import type { ReadingRates } from "../../src/domain/probe/reading-rates";
import { attemptedText } from "../../src/domain/probe/word-outcomes";
import type { CellSource } from "../../src/domain/progress/measure";
import type { Seconds } from "../../src/domain/units";
import type { Translator } from "../../src/ports/translator";
import { beginSentence, countInWords } from "./count-words";
import type { ReadingTask } from "./reading-draft";

/** The rates of a reading, or why there are none, in words. */
export const ratesOf = (
  task: ReadingTask,
  score: ReadingScore,
  seconds: number,
  cells: CellSource | undefined,
): ReadingRates | string => {
  const attempted = attemptedText(task.text, score.words);
  const rates = computeReadingRates({
    words: score.words,
    correct: score.correct,
    characters: attempted.length,
    cells: cells?.cellsOf(attempted, task.code) ?? 0,
    seconds: seconds as Seconds,
  });
  return rates.ok ? rates.value : rates.fault.message;
};

const round = (value: number): string => (Math.round(value * 10) / 10).toString();

/** A reading in sentences: what was read, how fast, how exactly, and what happened. */
export function describeReading(
  task: ReadingTask,
  score: ReadingScore,
  seconds: number,
  cells: CellSource | undefined,
): readonly string[] {
  const rates = ratesOf(task, score, seconds, cells);
  const errors = score.words - score.correct;
  const accuracy = computeAccuracy(score.words, errors);
  const lines = [
    `${beginSentence(countInWords(score.words, "word"))} attempted, ${countInWords(errors, "error")}, in ${round(seconds)} seconds.`,
    typeof rates === "string"
      ? rates
      : `${round(rates.words)} words read correctly a minute${rates.cells > 0 ? `, ${round(rates.cells)} cells a minute` : ""}.`,
  ];
  if (accuracy.ok && score.words > 0) lines.push(`Accuracy ${round(100 * accuracy.value)} %.`);
  const kinds: readonly (readonly [number, string])[] = [
    [score.misread, "misread"],
    [score.leftOut, "left out or told"],
    [score.swapped, "swapped"],
    [score.added, "added (no error)"],
    [score.miscues.filter(({ kind }) => kind === "self-corrected").length, "self-corrected (no error)"],
  ];
  const met = kinds.filter(([count]) => count > 0).map(([count, words]) => `${String(count)} ${words}`);
  if (met.length > 0) lines.push(`${met.join(", ")}.`);
  return lines;
}

/** A contraction in words that were missed. */
export interface MissedSign {
  readonly sign: string;
  /** missed words that hold it */
  readonly missed: number;
  /** words attempted that hold it */
  readonly met: number;
}

const ERROR_KINDS = new Set(["misread", "left out", "swapped", "told"]);

/** The contractions of the words missed, most often missed first; empty where the code cannot write the text. */
export function listMissedSigns(
  score: ReadingScore,
  words: readonly { readonly shown: string }[],
  translator: Translator,
): readonly MissedSign[] {
  const missed = new Set(
    score.miscues.filter(({ kind }) => ERROR_KINDS.has(kind)).map(({ position }) => position - 1),
  );
  const counts = new Map<string, { missed: number; met: number }>();
  words.slice(0, score.words).forEach(({ shown }, place) => {
    if (translator.untranslatable(shown).length > 0) return;
    const signs = new Set(findUses(translator.transcribe(shown)).map(({ contraction }) => contraction.name));
    for (const sign of signs) {
      const count = counts.get(sign) ?? { missed: 0, met: 0 };
      count.met += 1;
      if (missed.has(place)) count.missed += 1;
      counts.set(sign, count);
    }
  });
  return [...counts]
    .filter(([, count]) => count.missed > 0)
    .map(([sign, count]) => ({ sign, ...count }))
    .sort((one, other) => other.missed - one.missed || one.met - other.met);
}

/** How many earlier probes stand beside a new one. */
const EARLIER = 5;

/** The pupil's last readings with a rate in the same code and medium, newest first, a line each. */
export const listEarlier = (probes: readonly Probe[], task: ReadingTask): readonly string[] =>
  probes
    .filter(
      (probe) =>
        normaliseName(probe.pupil) === normaliseName(task.pupil) &&
        (probe.code === undefined || normaliseName(probe.code) === task.code) &&
        (probe.medium === undefined || normaliseName(probe.medium) === task.medium),
    )
    .flatMap((probe) => {
      const rate = measureProbe(probe, "rate");
      return rate === undefined || probe.sign !== undefined ? [] : [{ probe, rate }];
    })
    .sort((one, other) => other.probe.day - one.probe.day)
    .slice(0, EARLIER)
    .map(
      ({ probe, rate }) =>
        `${formatDay(probe.day)}: ${[
          `${round(rate)} a minute`,
          ...(probe.material === undefined ? [] : [probe.material]),
          ...(probe.comprehension === undefined ? [] : [`comprehension ${probe.comprehension}`]),
        ].join(", ")}`,
    );
