import { incompleteBeta } from "../statistics/incomplete-beta";
import { betaQuantile } from "../statistics/beta-quantile";
import type { Interval } from "../statistics/proportion-interval";
import type { Day } from "../units";
import type { DirectEvidence, Evidence, WordEvidence } from "./knowledge-evidence";
import { KnowledgeRecord } from "./knowledge-record";
import {
  KNOWLEDGE_SETTINGS,
  KNOWN_SHARE,
  PROBABLY_KNOWN_FROM,
  PROBABLY_UNKNOWN_BELOW,
  type KnowledgeSettings,
} from "./knowledge-settings";
import type { ShareBelief } from "./mastery-estimate";
import { expectedShare } from "./sign-belief";
import type { SignBackground } from "./sign-prior";

/** What is said of a sign; never that it is mastered, which direct trials alone can show. */
export type KnowledgeState = "probably known" | "not settled" | "probably not known" | "nothing seen";

/** What is known of a pupil's knowledge of one sign on one day. */
export interface SignKnowledge extends Interval {
  readonly sign: string;
  /** share of uses that would be recognised; `low` and `high` are its 95 % interval */
  readonly expected: number;
  /** the chance that this share is at least 80 % */
  readonly chanceKnown: number;
  /** the same on the last day with evidence of it, before forgetting; the same as `chanceKnown` where there is none */
  readonly chanceWhenSeen: number;
  readonly state: KnowledgeState;
  readonly belief: ShareBelief;
  /** the last day with evidence of it; absent where there is none */
  readonly lastSeen?: Day;
  /** words that had it, and direct opportunities */
  readonly words: number;
  readonly opportunities: number;
}

const CONFIDENCE = 0.95;

/**
 * What is known of each sign on one day, from whole words and direct answers of one way.
 *
 * Every sign has a share of uses that are recognised, believed to follow a beta distribution. A direct answer adds to
 * its counts; a word is weighed by a noisy-AND over its signs and absorbed by moments; before each day both counts move
 * towards what is believed beforehand, by 0.9 a week. The evidence of a day counts in one order however it is given:
 * direct answers, words right, words missed, short words first, so that blame falls where the day's other words leave
 * it.
 *
 * Source: worked out from the model (page on probes and progress); settings are our choice, simulated in
 * `tests/simulation/knowledge-simulation.ts`.
 *
 * @param evidence - any order of days
 * @param backgrounds - the signs asked about, each once; signs of words that are not among them count as known
 * @param asOf - later evidence takes no part; the time of day is ignored
 * @returns one entry a background, in their order
 * @throws {RangeError} for a day that is no number or counts that are none, which the records never give
 */
export const estimateKnowledge = (
  evidence: Evidence,
  backgrounds: readonly SignBackground[],
  asOf: Day,
  settings: KnowledgeSettings = KNOWLEDGE_SETTINGS,
): readonly SignKnowledge[] => trackKnowledge(evidence, backgrounds, [asOf], settings)[0] ?? [];

/**
 * The same on several days, in one run over the evidence.
 *
 * @param days - any order
 * @returns one list a day, in the order of `days`
 */
export const trackKnowledge = (
  evidence: Evidence,
  backgrounds: readonly SignBackground[],
  days: readonly Day[],
  settings: KnowledgeSettings = KNOWLEDGE_SETTINGS,
): readonly (readonly SignKnowledge[])[] => {
  const record = new KnowledgeRecord(backgrounds, settings);
  const occasions = groupByDay(evidence);
  const tracked = new Map<number, readonly SignKnowledge[]>();
  let next = 0;
  for (const asOf of [...new Set(days.map(wholeDay))].sort((one, other) => one - other)) {
    for (let occasion = occasions[next]; occasion && occasion.day <= asOf; occasion = occasions[++next])
      record.meet(occasion.day, occasion.words, occasion.direct);
    tracked.set(
      asOf,
      backgrounds.map(({ sign }, place) => describe(sign, record, place, asOf)),
    );
  }
  return days.map((day) => tracked.get(wholeDay(day)) ?? []);
};

const describe = (sign: string, record: KnowledgeRecord, place: number, asOf: Day): SignKnowledge => {
  const belief = record.beliefOn(place, asOf);
  const { words, opportunities, lastSeen } = record.seen(place);
  const { right, wrong } = belief;
  const chanceKnown = chanceOf(belief);
  return {
    sign,
    expected: expectedShare(belief),
    low: betaQuantile((1 - CONFIDENCE) / 2, right, wrong),
    high: betaQuantile((1 + CONFIDENCE) / 2, right, wrong),
    chanceKnown,
    chanceWhenSeen: lastSeen === undefined ? chanceKnown : chanceOf(record.beliefOn(place, lastSeen)),
    state: lastSeen === undefined ? "nothing seen" : nameState(chanceKnown),
    belief,
    ...(lastSeen !== undefined && { lastSeen }),
    words,
    opportunities,
  };
};

const chanceOf = ({ right, wrong }: ShareBelief): number => 1 - incompleteBeta(KNOWN_SHARE, right, wrong);

const nameState = (chanceKnown: number): KnowledgeState => {
  if (chanceKnown >= PROBABLY_KNOWN_FROM) return "probably known";
  return chanceKnown < PROBABLY_UNKNOWN_BELOW ? "probably not known" : "not settled";
};

interface Occasion {
  readonly day: Day;
  readonly words: WordEvidence[];
  readonly direct: DirectEvidence[];
}

/** The evidence by whole days, oldest first. */
const groupByDay = ({ words, direct }: Evidence): readonly Occasion[] => {
  const occasions = new Map<Day, Occasion>();
  const occasionOn = (time: Day): Occasion => {
    const day = wholeDay(time);
    const known = occasions.get(day);
    if (known !== undefined) return known;
    const occasion: Occasion = { day, words: [], direct: [] };
    occasions.set(day, occasion);
    return occasion;
  };
  for (const word of words) occasionOn(word.day).words.push(word);
  for (const answer of direct) {
    const { correct, opportunities } = answer;
    if (!(correct >= 0 && correct <= opportunities && opportunities < Infinity))
      throw new RangeError(`${correct} of ${opportunities} is no count of right answers.`);
    occasionOn(answer.day).direct.push(answer);
  }
  return [...occasions.values()].sort((one, other) => one.day - other.day);
};

const wholeDay = (time: Day): Day => {
  if (!Number.isFinite(time)) throw new RangeError(`A day must be a number, not ${time}.`);
  return Math.floor(time) as Day;
};
