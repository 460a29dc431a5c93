import { HARDEST } from "../contraction/difficulty";
import type { Day } from "../units";
import { KNOWLEDGE_SETTINGS, type KnowledgeSettings } from "./knowledge-settings";
import type { ShareBelief } from "./mastery-estimate";

/** A sign as far as it matters to what is expected of it beforehand. */
export interface SignBackground {
  /** its name in the inventory */
  readonly sign: string;
  /** from 0, as `difficultyOf` gives it */
  readonly difficulty: number;
  /** the day on which it was taught; `earlier` where that is long ago or not noted; absent where it was not taught */
  readonly taught?: Day | "earlier";
}

const DAYS_A_WEEK = 7;

/** Whether a sign was taught by a day. */
export const isTaughtBy = ({ taught }: SignBackground, day: number): boolean =>
  taught === "earlier" || (taught !== undefined && taught <= day);

/**
 * What is believed of a sign before anything was seen of it: little of one not taught; of one taught the more, the
 * longer ago that is, and the less, the harder its kind.
 *
 * Source: our choice, no source; the order of the kinds is Ashcroft's 1960.
 */
export const priorOn = (
  background: SignBackground,
  day: number,
  settings: KnowledgeSettings = KNOWLEDGE_SETTINGS,
): ShareBelief => {
  const { untaught, fresh, settled, settlingWeeks, hardestBelow, priorWeight } = settings;
  const { taught, difficulty } = background;
  if (taught === undefined || !isTaughtBy(background, day)) return weigh(untaught, priorWeight);
  const weeks = taught === "earlier" ? Infinity : (day - taught) / DAYS_A_WEEK;
  const easiest = settled - (settled - fresh) * 0.5 ** (weeks / settlingWeeks);
  return weigh(easiest - (hardestBelow * difficulty) / HARDEST, priorWeight);
};

const weigh = (share: number, weight: number): ShareBelief => ({
  right: share * weight,
  wrong: (1 - share) * weight,
});
