/** One measured figure of a benchmark. */
export interface BenchFigure {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** What it is compared with, and that value; or why there is nothing to compare with. */
  readonly against: string;
  /** `value` divided by what it is compared with, where there is that. */
  readonly ratio: number | null;
  /** The goal in words, or null where the figure is only reported. */
  readonly goal: string | null;
  /** Whether the goal is met; null where there is none or it could not be measured. */
  readonly met: boolean | null;
}

/** The engine as it is built for users: the benchmarks measure that one, and not the package's file. */
export const SHIPPED_ENGINE = { directory: "dist/liblouis" };
