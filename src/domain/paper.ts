/** A sheet of paper, upright; lengths in millimetres. */
export interface Paper {
  /** as it is called in a sentence */
  readonly name: string;
  readonly width: number;
  readonly height: number;
}

/** The papers that handouts and tactile graphics are laid out for. */
export const PAPER_KEYS = ["a4", "letter", "braille"] as const;
export type PaperKey = (typeof PAPER_KEYS)[number];

/** Source: ISO 216 for A4; US Letter is 8.5 × 11 inches; braille paper 11.5 inches wide and 11 high is common practice. */
export const PAPERS: Readonly<Record<PaperKey, Paper>> = {
  a4: { name: "A4", width: 210, height: 297 },
  letter: { name: "US Letter", width: 215.9, height: 279.4 },
  braille: { name: "braille paper of 11 × 11.5 inches", width: 292.1, height: 279.4 },
};
