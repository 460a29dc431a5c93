import { findContraction } from "../contraction/inventory";
import type { NotedMiscue } from "../probe/noted-miscue";
import type { Probe } from "../probe/probe";
import { collectEvidence, type TranscribeIn, type WayEvidence } from "../progress/sign-evidence";
import type { Day } from "../units";

/** A sign that went wrong on one day. */
export interface MissedSign {
  readonly sign: string;
  /** times it, or the word that it stands in, went wrong */
  readonly missed: number;
  /** times it was met */
  readonly met: number;
}

/** The signs that went wrong on the last day of probes that tells of any. */
export interface LastErrors {
  readonly day: Day;
  /** most often missed first; never empty */
  readonly signs: readonly MissedSign[];
}

/** Days that are gone back to find errors: our choice, no source. */
const MOST_DAYS = 40;

/**
 * The signs missed on the last day that has errors with their signs: signs named or written wrong by themselves, and the
 * contractions of words that were missed. Letters of missed words are blamed only where no missed word has a contraction.
 *
 * @param probes - of one pupil; any order
 * @param miscues - of the same pupil
 * @returns the day and its signs, or undefined where no record tells of a missed sign
 */
export const findLastErrors = (
  probes: readonly Probe[],
  miscues: readonly NotedMiscue[],
  transcribeIn: TranscribeIn,
): LastErrors | undefined => {
  const dayOf = ({ day }: { readonly day?: Day }): number => Math.floor(day ?? 0);
  const days = [...new Set([...probes, ...miscues].map(dayOf))].filter((day) => day > 0);
  for (const day of days.sort((one, other) => other - one).slice(0, MOST_DAYS)) {
    const evidence = collectEvidence(
      probes.filter((probe) => dayOf(probe) === day),
      miscues.filter((miscue) => dayOf(miscue) === day),
      transcribeIn,
    );
    const signs = countMissed(evidence.reading, evidence.writing);
    if (signs.length > 0) return { day: day as Day, signs };
  }
  return undefined;
};

const isContracted = (sign: string): boolean => findContraction(sign) !== undefined;

const countMissed = (...ways: readonly WayEvidence[]): MissedSign[] => {
  const counts = new Map<string, { missed: number; met: number }>();
  const add = (sign: string, missed: number, met: number): void => {
    const known = counts.get(sign) ?? { missed: 0, met: 0 };
    counts.set(sign, { missed: known.missed + missed, met: known.met + met });
  };
  const words = ways.flatMap((way) => way.words);
  const hasContraction = words.some(({ signs, isRight }) => !isRight && signs.some(isContracted));
  for (const { signs, isRight } of words)
    for (const sign of signs) if (isContracted(sign) || !hasContraction) add(sign, isRight ? 0 : 1, 1);
  for (const { sign, correct, opportunities } of ways.flatMap((way) => way.direct))
    add(sign, opportunities - correct, opportunities);
  return [...counts]
    .map(([sign, count]) => ({ sign, ...count }))
    .filter(({ missed }) => missed > 0)
    .sort((one, other) => other.missed - one.missed || one.met - other.met);
};
