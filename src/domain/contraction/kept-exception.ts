import type { RowSource } from "../row-source";

/** One row of the teacher's list of exceptions: a word, and its braille as she wants it. */
export interface KeptException {
  readonly word: string;
  /** Unicode braille, ASCII braille or dot numbers, as she wrote it */
  readonly braille: string;
  readonly source: RowSource;
}
