/**
 * A stretch of print and the stretch of cells that stands for it: half-open, counted in UTF-16 code units of
 * the print and in cells. The spans of a transcription follow each other without gap in both.
 */
export interface Span {
  readonly printStart: number;
  readonly printEnd: number;
  readonly cellStart: number;
  readonly cellEnd: number;
}

/** A print text, its braille, and which letters became which cells. */
export interface Transcription {
  readonly print: string;
  /** Unicode braille U+2800–U+28FF, the blank cell always U+2800, line breaks kept */
  readonly cells: string;
  readonly spans: readonly Span[];
}
