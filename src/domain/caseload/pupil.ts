import type { RowSource } from "../row-source";

/** A pupil of the caseload as the list of pupils has them; known by a code or initials. */
export interface Pupil {
  readonly pupil: string;
  /** braille code, such as contracted */
  readonly code?: string;
  readonly teacher?: string;
  /** of the pupil's display or paper, 1 or more */
  readonly cellsPerLine?: number;
  /** minutes of lessons a week that the plan gives, 0 or more */
  readonly minutesPlanned?: number;
  readonly note?: string;
  readonly source: RowSource;
}
