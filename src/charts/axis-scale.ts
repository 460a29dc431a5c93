/** How values become heights: equal differences take equal room, or equal factors do. */
export type ScaleKind = "equal-interval" | "ratio";

/** Places along an axis: from a value to a length in pixels. */
export interface AxisScale {
  readonly kind: ScaleKind;
  readonly low: number;
  readonly high: number;
  readonly place: (value: number) => number;
}

/**
 * A linear scale.
 *
 * @param start - pixels at `low`
 * @param end - pixels at `high`
 */
export const linearScale = (low: number, high: number, start: number, end: number): AxisScale => ({
  kind: "equal-interval",
  low,
  high,
  place: (value) => start + ((value - low) / (high - low)) * (end - start),
});

/**
 * A ratio scale: equal factors take equal room. Values at or under 0 have no place on it; they get the one of `low`.
 *
 * @param low - above 0
 * @param start - pixels at `low`
 * @param end - pixels at `high`
 */
export const ratioScale = (low: number, high: number, start: number, end: number): AxisScale => ({
  kind: "ratio",
  low,
  high,
  place: (value) => start + (Math.log(Math.max(value, low) / low) / Math.log(high / low)) * (end - start),
});

/** Steps that people count in, times any power of ten. */
const STEPS = [1, 2, 2.5, 5, 10];

/**
 * Round tick values that span from at most `low` to at least `high`, 0 always among them where it lies between.
 *
 * @param most - how many steps there may be, 1 or more
 */
export const roundTicks = (low: number, high: number, most: number): readonly number[] => {
  const span = high - low || Math.abs(high) || 1;
  const power = 10 ** Math.floor(Math.log10(span / most));
  const fitting = STEPS.map((step) => step * power).find(
    (step) => Math.ceil(high / step - 1e-9) - Math.floor(low / step + 1e-9) <= most,
  );
  const step = fitting ?? 10 * power;
  const first = Math.floor(low / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil(high / step - 1e-9));
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
};

/** Leading digits of the ticks of a ratio scale, the fullest set that has room first. */
const RATIO_DIGITS = [[1, 2, 5], [1, 3], [1]];

/**
 * Tick values of a ratio scale that span from at most `low` to at least `high`: 1, 2, 5, 10, 20, … or fewer.
 *
 * @param low - above 0
 * @param most - how many ticks there may be, 3 or more; a scale of very many powers of ten may have more
 */
export const ratioTicks = (low: number, high: number, most: number): readonly number[] => {
  const [firstPower, lastPower] = [Math.floor(Math.log10(low)), Math.ceil(Math.log10(high) + 1e-9)];
  const powers = Array.from({ length: lastPower - firstPower + 1 }, (_, i) => firstPower + i);
  const sets = RATIO_DIGITS.map((digits) => {
    const all = powers.flatMap((power) =>
      digits.map((digit) => Number((digit * 10 ** power).toPrecision(12))),
    );
    const first = Math.max(
      0,
      all.findLastIndex((tick) => tick <= low * (1 + 1e-9)),
    );
    const last = all.findIndex((tick, i) => i > first && tick >= high * (1 - 1e-9));
    return all.slice(first, last + 1);
  });
  return sets.find((ticks) => ticks.length <= most) ?? sets.at(-1) ?? [];
};
