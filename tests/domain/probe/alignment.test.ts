import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { alignSequences, EDIT, type AlignmentStep, type Rewrite } from "../../../src/domain/probe/alignment";

/** The fewest edits by the plain recursion over the full table, written independently of the band. */
const fewestEdits = (
  first: readonly string[],
  second: readonly string[],
  rewrites: readonly Rewrite[],
): number => {
  const rows: number[][] = [];
  for (let i = 0; i <= first.length; i += 1) {
    const row: number[] = [];
    rows.push(row);
    for (let j = 0; j <= second.length; j += 1) {
      const ways = [
        i === 0 && j === 0 ? 0 : Infinity,
        (rows[i - 1]?.[j] ?? Infinity) + 1,
        (row[j - 1] ?? Infinity) + 1,
        (rows[i - 1]?.[j - 1] ?? Infinity) + (first[i - 1] === second[j - 1] ? 0 : 1),
        ...rewrites
          .filter(
            ({ to, keys }) =>
              to === i && j >= keys.length && keys.every((key, at) => second[j - keys.length + at] === key),
          )
          .map(({ from, keys }) => (rows[from]?.[j - keys.length] ?? Infinity) + 1),
      ];
      row.push(Math.min(...ways));
    }
  }
  return rows[first.length]?.[second.length] ?? Infinity;
};

const firstLength = (step: AlignmentStep): number =>
  step.kind === "rewritten"
    ? step.first[1] - step.first[0]
    : step.kind === "swapped"
      ? 2
      : step.kind === "extra"
        ? 0
        : 1;

describe("alignment with runs that may stand as other runs", () => {
  const items = fc.array(fc.constantFrom("a", "b", "c"), { maxLength: 70 });
  const key = fc.constantFrom("a", "b", "c", "x");

  it("has as few edits in its band as the full table", () => {
    const rewriteAt = fc.record({
      at: fc.nat(70),
      length: fc.integer({ min: 1, max: 8 }),
      keys: fc.array(key, { minLength: 1, maxLength: 12 }),
    });
    const rewriteList = fc.array(rewriteAt, { maxLength: 25 });
    fc.assert(
      fc.property(
        items,
        fc.array(key, { maxLength: 70 }),
        rewriteList,
        fc.boolean(),
        (first, other, list, apply) => {
          const rewrites = list
            .map(({ at, length, keys }) => ({ from: at, to: at + length, keys, weight: EDIT }))
            .filter(({ to }) => to <= first.length)
            .sort((one, next) => one.from - next.from);
          // Half of the time the second sequence is the first with its runs rewritten, so that they are taken.
          const second = [...(apply ? first : other)];
          let end = Infinity;
          if (apply)
            for (const { from, to, keys } of [...rewrites].reverse()) {
              if (to > end) continue;
              second.splice(from, to - from, ...keys);
              end = from;
            }
          const { steps } = alignSequences(first, second, { swaps: false, rewrites });
          const edits = steps.filter(({ kind }) => kind !== "same").length;
          expect(edits).toBe(fewestEdits(first, second, rewrites));
          expect(steps.reduce((sum, step) => sum + firstLength(step), 0)).toBe(first.length);
        },
      ),
      { numRuns: 300 },
    );
  });

  it.each([
    ["left out", "running", "runing", "missing", 3],
    ["added", "runing", "running", "extra", 3],
  ])("of two alike, the later one is %s", (_name, first, second, kind, place) => {
    const step = alignSequences([...first], [...second]).steps.find((found) => found.kind !== "same");
    expect(step).toMatchObject({ kind, [kind === "missing" ? "first" : "second"]: place });
  });
});
