import type { Probe } from "../probe/probe";

/** What tells one series from another: pupil × task × measure × unit × code × medium (the sign, where one is named). */
export interface SeriesKey {
  readonly pupil: string;
  readonly task: string;
  readonly measure: Measure;
  readonly unit: string;
  readonly code: string;
  readonly medium: string;
  readonly sign: string;
}

/** What is drawn up the vertical axis. */
export const MEASURES = ["rate", "accuracy", "score", "cells a minute"] as const;
export type Measure = (typeof MEASURES)[number];

/** One probe with the value of the series' measure. */
export interface SeriesPoint {
  readonly probe: Probe;
  readonly value: number;
  /** done with help: drawn with another mark, left out of trend, verdict and mastery */
  readonly supported: boolean;
}

/** The probes of one series in order of day (and of row within a day). */
export interface Series {
  readonly key: SeriesKey;
  readonly points: readonly SeriesPoint[];
}
