import type { RowSource } from "../row-source";
import type { Day } from "../units";

/** A sign that a pupil was taught, with what the tool last noted of it. */
export interface TaughtSign {
  readonly pupil: string;
  readonly sign: string;
  readonly introduced?: Day;
  /** state in reading and in writing, as last filled in */
  readonly reading?: string;
  readonly writing?: string;
  /** the day on which it is to be checked again */
  readonly checkAgain?: Day;
  readonly source: RowSource;
}
