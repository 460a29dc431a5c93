import type { Handout } from "../domain/drill/handout";
import type { PaperKey } from "../domain/paper";

/** How a printed handout looks. */
export interface PrintLook {
  readonly paper: PaperKey;
  /** print of at least 18 points: common practice for readers with low vision */
  readonly largePrint: boolean;
}

/** Writes a handout as a file that a word processor opens. */
export interface DocumentWriter {
  /** The bytes of the file; nothing in its properties comes from the handout. */
  write(handout: Handout, look: PrintLook): Promise<Uint8Array>;
}
