/** The braille of one piece of a line. */
export interface Rendering {
  readonly cells: string;
  /** Print start and cell start of each span in turn, counted from the start of the piece. */
  readonly starts: readonly number[];
  /** Where in the piece a character stands that the table has no cells for. */
  readonly unknown: readonly number[];
}
