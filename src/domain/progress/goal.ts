import type { Day } from "../units";

/** A pupil's goal as the plan states it: the two ends of the aim line and the series it is about. */
export interface Goal {
  readonly pupil: string;
  /** as written in the plan */
  readonly text?: string;
  readonly task?: string;
  /** rate, accuracy, score: the measure that the scores are in */
  readonly measure?: string;
  readonly code?: string;
  readonly unit?: string;
  readonly support?: string;
  readonly criterion?: string;
  readonly startDay: Day;
  readonly startScore: number;
  readonly goalDay: Day;
  readonly goalScore: number;
}
