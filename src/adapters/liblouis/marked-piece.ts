import { findSeams } from "./seams";

/**
 * Private characters that the engine sees as it sees a small letter, a capital and a sign, with the virtual dot B
 * alone as cells: they part what stands beside them and are taken out of the output.
 */
const SMALL_SEAM = "\uf8fd";
const CAPITAL_SEAM = "\uf8fc";
const SIGN_SEAM = "\uf8fb";

/** The dot pattern of a seam. */
export const SEAM_PATTERN = 0x400;

/** Rules for the marks of a piece. */
export const SEAM_RULES = "uplow \\xF8FC\\xF8FD B\nsign \\xF8FB B\n";

/** A piece as the engine gets it, and where each of its characters stood in the piece. */
export interface MarkedPiece {
  readonly text: string;
  /** absent where nothing was marked */
  readonly origins: readonly number[] | undefined;
}

/**
 * A point or a comma between a letter and a number is punctuation, and numeric mode begins behind it.
 * Source: UEB 2013 section 6.2: numeric mode is begun by the numeric indicator and a digit, or a decimal point
 * before a digit; the point of `p.7` is none.
 */
const POINT_BEFORE_DIGIT = /(?<=\p{L}[.,])(?=\d)/gu;
const HAS_POINT = /\p{L}[.,]\d/u;
const CAPITAL = /\p{Lu}/u;

/**
 * A piece of a line with its seams marked.
 *
 * @param piece - prepared print
 * @param contracted - whether seams between letters matter
 */
export const markPiece = (piece: string, contracted: boolean): MarkedPiece => {
  const marks = new Map<number, string>();
  if (contracted) {
    for (const place of findSeams(piece)) {
      const capitalBefore = CAPITAL.test(piece.charAt(place - 1));
      // A capital after a small letter has its indicator before it, which parts the letters well enough.
      if (CAPITAL.test(piece.charAt(place))) {
        if (capitalBefore) marks.set(place, CAPITAL_SEAM);
      } else marks.set(place, SMALL_SEAM);
    }
  }
  if (HAS_POINT.test(piece))
    for (const match of piece.matchAll(POINT_BEFORE_DIGIT)) marks.set(match.index, SIGN_SEAM);
  if (marks.size === 0) return { text: piece, origins: undefined };
  let text = "";
  const origins: number[] = [];
  for (let index = 0; index < piece.length; index += 1) {
    const mark = marks.get(index);
    if (mark !== undefined) {
      text += mark;
      origins.push(index);
    }
    text += piece.charAt(index);
    origins.push(index);
  }
  return { text, origins };
};
