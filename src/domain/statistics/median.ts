/**
 * The median: the middle value in order of size, the mean of the two middle ones for an even number.
 *
 * Source: common definition.
 *
 * @param values - one or more numbers, any order
 * @throws {RangeError} where there are none
 */
export const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.floor((sorted.length - 1) / 2)];
  if (upper === undefined || lower === undefined)
    throw new RangeError("The median of no values is not defined.");
  return (lower + upper) / 2;
};
