import type { RowSource } from "../row-source";
import type { Day } from "../units";

/** One word of a probe that was not read or written as expected, as the list of miscues has it. */
export interface NotedMiscue {
  readonly pupil: string;
  readonly day?: Day;
  readonly task?: string;
  /** place among the words expected, from 1 */
  readonly position?: number;
  /** "" where a word was added */
  readonly expected: string;
  /** "" where a word was left out */
  readonly response: string;
  readonly kind?: string;
  readonly source: RowSource;
}
