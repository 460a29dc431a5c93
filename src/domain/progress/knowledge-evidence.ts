import type { Day } from "../units";

/** A whole word that was read or missed, written or miswritten: which sign was to blame is not known. */
export interface WordEvidence {
  readonly day: Day;
  /** names of the signs in it; one that is repeated counts once */
  readonly signs: readonly string[];
  readonly isRight: boolean;
}

/** A sign of which it is known whether it was right: named, or written, alone or in a word. */
export interface DirectEvidence {
  readonly day: Day;
  readonly sign: string;
  readonly correct: number;
  readonly opportunities: number;
}

/** What there is to go by in one way, reading or writing, without support. */
export interface Evidence {
  readonly words: readonly WordEvidence[];
  readonly direct: readonly DirectEvidence[];
}
