import { KEPT_A_WEEK } from "./mastery-estimate";

/** What the model of knowledge takes for granted. Not fitted to pupils: every number here is our choice, no source. */
export interface KnowledgeSettings {
  /** how often a word is missed although each of its signs was recognised: language, speech, attention */
  readonly slip: number;
  /** how often a word comes right although a sign in it was not recognised: from the context */
  readonly guess: number;
  /** what a week leaves of the evidence */
  readonly keptAWeek: number;
  /** how many direct answers what is believed beforehand weighs as much as */
  readonly priorWeight: number;
  /** the share expected of a sign that was never taught */
  readonly untaught: number;
  /** the share expected of a sign of the easiest kind on the day that it is taught, and after a long time */
  readonly fresh: number;
  readonly settled: number;
  /** by how much the hardest kind is below the easiest */
  readonly hardestBelow: number;
  /** weeks in which a sign comes half of the way from fresh to settled */
  readonly settlingWeeks: number;
}

/** Our choice, no source; slip and guess as in the worked cases of the noisy-AND. */
export const KNOWLEDGE_SETTINGS: KnowledgeSettings = {
  slip: 0.1,
  guess: 0.1,
  keptAWeek: KEPT_A_WEEK,
  priorWeight: 1,
  untaught: 0.1,
  fresh: 0.5,
  settled: 0.85,
  hardestBelow: 0.2,
  settlingWeeks: 4,
};

/**
 * From this share right on a sign counts as known; with this chance of that it is called probably known, with the
 * other probably not known. Our choice, no source; the share is that of the default criterion of mastery.
 */
export const KNOWN_SHARE = 0.8;
export const PROBABLY_KNOWN_FROM = 0.8;
export const PROBABLY_UNKNOWN_BELOW = 0.2;
