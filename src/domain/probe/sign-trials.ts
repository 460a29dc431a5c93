import { intervalOfProportion, type Interval } from "../statistics/proportion-interval";
import type { Share } from "../units";
import type { Probe } from "./probe";
import { isSupported } from "./support";

/** Correct of opportunities, with how sure the share is. */
export interface TrialShare {
  readonly correct: number;
  readonly opportunities: number;
  /** undefined where there were no opportunities */
  readonly share: Share | undefined;
  /** 95 %, Jeffreys; 0 to 1 where there were no opportunities */
  readonly interval: Interval;
  /** rows that were added up */
  readonly probes: number;
}

/** Trials of one sign, or of all. */
export interface SignTrials {
  /** as it is spelled first; undefined for all signs together */
  readonly sign: string | undefined;
  readonly withoutSupport: TrialShare;
  readonly withSupport: TrialShare;
}

/** Trials added up over probes, per sign and over signs. */
export interface TrialSummary {
  /** in order of first appearance */
  readonly signs: readonly SignTrials[];
  readonly all: SignTrials;
}

/**
 * Correct of opportunities per sign and over signs, probes with and without support apart. `A` and `a` are two signs;
 * spaces around a sign do not count. Left out: probes without a sign, and those that have neither correct with
 * opportunities (or words) nor words with errors.
 *
 * Source: common practice, no source; interval after Brown, Cai & DasGupta 2001 (from memory).
 *
 * @param probes - of one pupil, task, code and medium: the caller chooses
 */
export const countSignTrials = (probes: readonly Probe[]): TrialSummary => {
  const bySign = new Map<string, CountedProbe[]>();
  const all: CountedProbe[] = [];
  for (const probe of probes) {
    const sign = (probe.sign ?? "").trim();
    const counted = countProbe(probe);
    if (sign === "" || counted === undefined) continue;
    all.push(counted);
    const known = bySign.get(sign);
    if (known === undefined) bySign.set(sign, [counted]);
    else known.push(counted);
  }
  return {
    signs: [...bySign].map(([sign, counted]) => summariseTrials(sign, counted)),
    all: summariseTrials(undefined, all),
  };
};

/** What a probe counted. */
interface CountedProbe {
  readonly correct: number;
  readonly opportunities: number;
  readonly supported: boolean;
}

/**
 * Correct of opportunities of one probe: as it says, or from words and errors; undefined where it has neither, or more
 * correct than opportunities.
 */
export const countProbe = ({
  correct,
  opportunities,
  words,
  errors,
  support,
}: Probe): CountedProbe | undefined => {
  const total = opportunities ?? words;
  const right = correct ?? (total === undefined || errors === undefined ? undefined : total - errors);
  const isCount = right !== undefined && total !== undefined && right >= 0 && right <= total;
  return isCount ? { correct: right, opportunities: total, supported: isSupported(support) } : undefined;
};

const summariseTrials = (sign: string | undefined, counted: readonly CountedProbe[]): SignTrials => ({
  sign,
  withoutSupport: shareOf(counted.filter(({ supported }) => !supported)),
  withSupport: shareOf(counted.filter(({ supported }) => supported)),
});

const shareOf = (counted: readonly CountedProbe[]): TrialShare => {
  const sum = (of: (count: CountedProbe) => number): number =>
    counted.reduce((total, count) => total + of(count), 0);
  const correct = sum((count) => count.correct);
  const opportunities = sum((count) => count.opportunities);
  return {
    correct,
    opportunities,
    share: opportunities === 0 ? undefined : ((correct / opportunities) as Share),
    interval: intervalOfProportion(correct, opportunities),
    probes: counted.length,
  };
};
