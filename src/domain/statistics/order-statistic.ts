/**
 * The value of a given rank in order of size, found by partitioning in place instead of sorting.
 *
 * Source: Hoare 1961, Communications of the ACM 4(7), algorithm 65 (from memory).
 *
 * @param values - reordered by this; without NaN
 * @param rank - 0 for the smallest
 * @returns the value, or undefined where there is no such rank
 */
export const selectRank = (values: Float64Array, rank: number): number | undefined => {
  if (!Number.isInteger(rank) || rank < 0 || rank >= values.length) return undefined;
  let [low, high] = [0, values.length - 1];
  while (low < high) {
    const pivot = middleOf(values[low] ?? NaN, values[(low + high) >> 1] ?? NaN, values[high] ?? NaN);
    let [left, right] = [low, high];
    while (left <= right) {
      while ((values[left] ?? NaN) < pivot) left++;
      while ((values[right] ?? NaN) > pivot) right--;
      if (left > right) break;
      const moved = values[left] ?? NaN;
      values[left++] = values[right] ?? NaN;
      values[right--] = moved;
    }
    if (rank <= right) high = right;
    else if (rank >= left) low = left;
    else break;
  }
  return values[rank];
};

const middleOf = (a: number, b: number, c: number): number =>
  Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
