import type { Handout } from "../domain/drill/handout";
import type { PaperKey } from "../domain/paper";
import type { Report } from "../domain/progress/report";

/** How a printed handout looks. */
export interface PrintLook {
  readonly paper: PaperKey;
  /** print of at least 18 points: common practice for readers with low vision */
  readonly largePrint: boolean;
}

/** A picture of a document. */
export interface DocumentPicture {
  readonly png: Uint8Array;
  /** width and height in any one unit: their ratio counts */
  readonly width: number;
  readonly height: number;
  /** for a reader who does not see it */
  readonly description: string;
}

/** Writes a handout or a report as a file that a word processor opens. */
export interface DocumentWriter {
  /** The bytes of the file; nothing in its properties comes from the handout. */
  write(handout: Handout, look: PrintLook): Promise<Uint8Array>;
  /** The same of a report; nothing in its properties comes from it. */
  writeReport(report: Report, paper: PaperKey, picture: DocumentPicture | undefined): Promise<Uint8Array>;
}
