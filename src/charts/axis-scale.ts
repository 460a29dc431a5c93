/** Places along an axis: from a value to a length in pixels. */
export interface AxisScale {
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
  low,
  high,
  place: (value) => start + ((value - low) / (high - low)) * (end - start),
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
