import type { RowSource } from "../row-source";

/** A word that the teacher keeps for drills, and for whom. */
export interface KeptWord {
  readonly word: string;
  /** the list that it belongs to */
  readonly list?: string;
  /** whom it is for; absent where it is for all */
  readonly pupil?: string;
  /** where the word comes from */
  readonly origin?: string;
  readonly source: RowSource;
}
