/**
 * The assignment of rows to columns with the greatest sum of weights, each used once at most; a pair of weight 0 or
 * less is never made.
 *
 * Source: the Hungarian method with potentials; Kuhn 1955, Naval Research Logistics Quarterly 2, 83–97 (from memory).
 *
 * @param weights - one row a thing to be placed, one column a place
 * @returns for each row its column, or undefined
 */
export function assignBest(weights: readonly (readonly number[])[]): (number | undefined)[] {
  const rows = weights.length;
  const places = weights[0]?.length ?? 0;
  // Every row has a place of its own at weight 0 beside the real ones: staying unplaced is always possible.
  const columns = places + rows;
  const cost = (row: number, column: number): number =>
    column < places ? -Math.max(0, weights[row]?.[column] ?? 0) : 0;
  const u = new Float64Array(rows + 1);
  const v = new Float64Array(columns + 1);
  const match = new Int32Array(columns + 1);
  const way = new Int32Array(columns + 1);
  for (let row = 1; row <= rows; row += 1) {
    match[0] = row;
    let column = 0;
    const least = new Float64Array(columns + 1).fill(Infinity);
    const used = new Uint8Array(columns + 1);
    do {
      used[column] = 1;
      const current = match[column] ?? 0;
      let step = Infinity;
      let next = 0;
      for (let j = 1; j <= columns; j += 1) {
        if (used[j]) continue;
        const reduced = cost(current - 1, j - 1) - (u[current] ?? 0) - (v[j] ?? 0);
        if (reduced < (least[j] ?? 0)) {
          least[j] = reduced;
          way[j] = column;
        }
        if ((least[j] ?? 0) < step) {
          step = least[j] ?? 0;
          next = j;
        }
      }
      for (let j = 0; j <= columns; j += 1) {
        if (used[j]) {
          const held = match[j] ?? 0;
          u[held] = (u[held] ?? 0) + step;
          v[j] = (v[j] ?? 0) - step;
        } else least[j] = (least[j] ?? 0) - step;
      }
      column = next;
    } while (match[column] !== 0);
    do {
      const before = way[column] ?? 0;
      match[column] = match[before] ?? 0;
      column = before;
    } while (column !== 0);
  }
  const placed: (number | undefined)[] = new Array<number | undefined>(rows).fill(undefined);
  for (let j = 1; j <= places; j += 1) {
    const row = (match[j] ?? 0) - 1;
    if (row >= 0 && (weights[row]?.[j - 1] ?? 0) > 0) placed[row] = j - 1;
  }
  return placed;
}
