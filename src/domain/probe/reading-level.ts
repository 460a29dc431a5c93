import type { Share } from "../units";

/** How hard a text is for a reader; `between` only where a source leaves a gap. */
export type ReadingLevel = "independent" | "instructional" | "between" | "frustration";

/** Where the levels are drawn: shares of words read correctly. Sources differ, so this is a setting. */
export interface LevelCutoffs {
  /** the least share of `independent` */
  readonly independent: number;
  /** the least share of `instructional` */
  readonly instructional: number;
  /** shares under this are `frustration`; the same as `instructional` unless a source leaves a gap */
  readonly frustration: number;
  /** where these are from, shown beside the level */
  readonly source: string;
}

/** The cut-offs to choose from, the usual ones first; all from secondary pages. */
export const LEVEL_CUTOFFS: readonly [LevelCutoffs, ...LevelCutoffs[]] = [
  { independent: 0.95, instructional: 0.9, frustration: 0.9, source: "95/90, several secondary pages" },
  { independent: 0.98, instructional: 0.95, frustration: 0.95, source: "98/95, secondary pages" },
  { independent: 0.99, instructional: 0.95, frustration: 0.9, source: "99/95 and under 90, after Betts" },
];

/**
 * The level of a text for a reader. Shares are not rounded: 94.6 % is under 95 %.
 *
 * @param accuracy - words read correctly of words attempted, 0 to 1
 * @param cutoffs - {@link LEVEL_CUTOFFS}'s first unless given
 * @throws {RangeError} where accuracy is not from 0 to 1, or the cut-offs are not in order
 */
export const levelOf = (accuracy: Share, cutoffs: LevelCutoffs = LEVEL_CUTOFFS[0]): ReadingLevel => {
  const { independent, instructional, frustration } = cutoffs;
  if (!(accuracy >= 0 && accuracy <= 1)) throw new RangeError(`An accuracy is from 0 to 1, not ${accuracy}.`);
  if (!(independent >= instructional && instructional >= frustration))
    throw new RangeError("Cut-offs go down from independent to instructional to frustration.");
  if (accuracy >= independent) return "independent";
  if (accuracy >= instructional) return "instructional";
  return accuracy < frustration ? "frustration" : "between";
};
