/** Rows from the top or columns from the left, in CSS pixels. A hidden one has size 0. */
export interface Axis {
  readonly count: number;
  readonly total: number;
  sizeOf(index: number): number;
  /** Distance from the first one's beginning. */
  startOf(index: number): number;
  /** The one that holds this distance; the first or last where it lies outside. */
  indexAt(offset: number): number;
  /** `index` itself where it is not hidden, else the next one that is not in the direction of `step`. */
  visibleFrom(index: number, step: 1 | -1): number | undefined;
}

/**
 * An axis of equal sizes with exceptions, so that a million rows cost no more than their exceptions.
 *
 * @param count - how many rows or columns, 1 or more
 * @param usual - size of those without an exception, CSS pixels
 * @param exceptions - sizes by index, CSS pixels
 */
export function makeAxis(count: number, usual: number, exceptions: ReadonlyMap<number, number>): Axis {
  const indices = [...exceptions.keys()].filter((index) => index < count).sort((a, b) => a - b);
  const surplus = [0];
  for (const [position, index] of indices.entries()) {
    surplus.push((surplus[position] ?? 0) + (exceptions.get(index) ?? usual) - usual);
  }
  const sizeOf = (index: number): number => exceptions.get(index) ?? usual;
  const startOf = (index: number): number => index * usual + (surplus[firstNotBelow(indices, index)] ?? 0);
  const indexAt = (offset: number): number => {
    let low = 0;
    let high = count - 1;
    while (low < high) {
      const middle = (low + high + 1) >>> 1;
      if (startOf(middle) <= offset) low = middle;
      else high = middle - 1;
    }
    return low;
  };
  const visibleFrom = (index: number, step: 1 | -1): number | undefined => {
    let at = index;
    while (at >= 0 && at < count) {
      if (sizeOf(at) > 0) return at;
      at += step;
    }
    return undefined;
  };
  return { count, total: startOf(count), sizeOf, startOf, indexAt, visibleFrom };
}

/** Position of the first value that is not below `bound` in ascending numbers. */
function firstNotBelow(ascending: readonly number[], bound: number): number {
  let low = 0;
  let high = ascending.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((ascending[middle] ?? 0) < bound) low = middle + 1;
    else high = middle;
  }
  return low;
}
