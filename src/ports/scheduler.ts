import type { Day } from "../domain/units";

/** How well a sign was remembered on a day, as far as a schedule of checks asks. */
export type Recall = "forgotten" | "unsteady" | "remembered";

/** One day on which a sign was tried. */
export interface RecallOccasion {
  readonly day: Day;
  readonly recall: Recall;
}

/** Says when a sign should be checked again. For dates only: it judges no mastery. */
export interface Scheduler {
  /**
   * The day for the next check: a whole day after the last occasion, the same one for the same occasions.
   *
   * @param occasions - in order of day, one a day at most
   * @returns undefined where there is none
   */
  nextCheck(occasions: readonly RecallOccasion[]): Day | undefined;
}
