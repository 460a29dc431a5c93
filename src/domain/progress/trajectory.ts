import type { Day } from "../units";
import type { Goal } from "./goal";
import type { Series, SeriesPoint } from "./series";

export const VERDICTS = ["too few points", "below aim", "unclear", "on aim", "above aim", "goal met"] as const;
export type Verdict = (typeof VERDICTS)[number];

/** A straight line from one day to another. */
export interface Line {
  readonly fromDay: Day;
  readonly fromValue: number;
  readonly toDay: Day;
  readonly toValue: number;
}

/** Points between two phase changes; the data path is broken at its edges. */
export interface PhaseStretch {
  /** "" where she named none */
  readonly name: string;
  readonly points: readonly SeriesPoint[];
}

/** The trend through the points that the verdict is about, with the band of its fitted value. */
export interface TrendBand {
  readonly line: Line;
  /** change a week with its 95 % interval; the interval is absent under 6 points */
  readonly perWeek: number;
  readonly low?: number;
  readonly high?: number;
  readonly points: number;
  /** lower and upper edge of the interval of the fitted value, by day, for drawing */
  readonly band: readonly { readonly day: Day; readonly low: number; readonly high: number }[];
  /** from the last probe day to the goal day, drawn dotted; absent without a goal ahead */
  readonly projection?: Line;
}

/** Everything that the picture, its text and its table show: computed once, shown three ways. */
export interface Trajectory {
  readonly series: Series;
  readonly phases: readonly PhaseStretch[];
  /** in words of the axis, such as "words read correctly a minute" */
  readonly measureName: string;
  readonly goal?: Goal;
  readonly aimLine?: Line;
  readonly trend?: TrendBand;
  readonly verdict?: Verdict;
  /** the verdict as sentences for a teacher: what was compared, and what would settle it */
  readonly explanation: readonly string[];
  /** level that counts as met where the measure is accuracy or a score: a horizontal line */
  readonly criterion?: number;
  readonly cautions: readonly string[];
}
