/** What happened at one step of an alignment, first sequence against second. */
export type AlignmentStep =
  /** the same item, or a pair that {@link AlignmentCosts} lets pass for the same */
  | { readonly kind: "same" | "replaced"; readonly first: number; readonly second: number }
  /** in the first sequence only */
  | { readonly kind: "missing"; readonly first: number }
  /** in the second sequence only */
  | { readonly kind: "extra"; readonly second: number }
  /** two neighbours of the first stand in the other order in the second */
  | {
      readonly kind: "swapped";
      readonly first: readonly [number, number];
      readonly second: readonly [number, number];
    };

/** One edit. Smaller weights than this only break ties between alignments with equally many edits. */
export const EDIT = 1000;

/** How an alignment is weighed. All weights are whole numbers, 0 or more. */
export interface AlignmentCosts {
  /** weight of pairing `first[i]` with `second[j]`, given that they are different; EDIT by default */
  readonly replace?: (first: number, second: number) => number;
  /** weight of `second[j]` standing alone; EDIT by default */
  readonly extra?: (second: number) => number;
  /** items missing at the end of the first sequence weigh nothing: the attempt may end before it does */
  readonly openEnd?: boolean;
  /** neighbours may be swapped for one edit; true by default */
  readonly swaps?: boolean;
}

/** A kept alignment: `edits` counts replaced, missing, extra and swapped steps by weight, ends where `first` ends. */
export interface Alignment {
  readonly steps: readonly AlignmentStep[];
  /** how many items of the first sequence the steps cover: all, unless `openEnd` */
  readonly covered: number;
}

const SAME = 1;
const REPLACED = 2;
const MISSING = 3;
const EXTRA = 4;
const SWAPPED = 5;
const UNREACHED = 0x3fffffff;

/**
 * Optimal string alignment of two sequences: the fewest edits, where an edit replaces, leaves out, adds, or swaps two
 * neighbours. Among alignments with equally many edits, the one with more items the same.
 *
 * Computed in a band about the diagonal that is doubled until the answer cannot lie outside it (Ukkonen 1985,
 * Information and Control 64, 100–118), so the result is that of the full table. Time is proportional to length times
 * edits; memory likewise.
 *
 * Source: Damerau 1964, Communications of the ACM 7(3); Wagner & Fischer 1974, Journal of the ACM 21(1).
 *
 * @param first - keys of the items expected; equal keys are the same item
 * @param second - keys of the items that came
 */
export function alignSequences(
  first: readonly string[],
  second: readonly string[],
  costs: AlignmentCosts = {},
): Alignment {
  const least = costs.openEnd === true ? 0 : Math.abs(first.length - second.length);
  // Items that may stand alone for less than an edit do not bound how far a path strays by its weight.
  const free =
    costs.extra === undefined ? 0 : second.filter((_, j) => (costs.extra?.(j) ?? EDIT) < EDIT).length;
  for (let width = least + free + 16; ; width *= 2) {
    const table = fillBand(first, second, costs, width);
    const whole = width >= first.length && width >= second.length;
    // A path with fewer edits than the band is wide never leaves it.
    if (whole || table.weight < (width - free) * EDIT)
      return traceBack(table, first.length, second.length, width);
  }
}

interface Band {
  readonly steps: Uint8Array;
  readonly weight: number;
  readonly end: number;
}

function fillBand(
  first: readonly string[],
  second: readonly string[],
  costs: AlignmentCosts,
  width: number,
): Band {
  const [one, two] = numberKeys(first, second);
  const rows = one.length;
  const columns = two.length;
  const span = 2 * width + 1;
  const steps = new Uint8Array((rows + 1) * span);
  let beforeLast = new Int32Array(columns + 1).fill(UNREACHED);
  let last = new Int32Array(columns + 1).fill(UNREACHED);
  let current = new Int32Array(columns + 1).fill(UNREACHED);
  const swaps = costs.swaps ?? true;
  // Where the end is open, an item added at the end must not be lighter than the next item replaced by it.
  const extraWeight = costs.openEnd === true ? EDIT + 1 : EDIT;
  let best = { weight: UNREACHED, end: rows };
  for (let i = 0; i <= rows; i += 1) {
    const from = Math.max(0, i - width);
    const to = Math.min(columns, i + width);
    if (from > columns) break;
    current.fill(UNREACHED, Math.max(0, from - 1), Math.min(columns, to + 1) + 1);
    for (let j = from; j <= to; j += 1) {
      let weight = i === 0 && j === 0 ? 0 : UNREACHED;
      let step = 0;
      if (i > 0 && j > 0) {
        const same = one[i - 1] === two[j - 1];
        const pair = same ? 0 : (costs.replace?.(i - 1, j - 1) ?? EDIT) + 1;
        const reached = (last[j - 1] ?? UNREACHED) + pair;
        if (reached < weight) {
          weight = reached;
          step = same ? SAME : REPLACED;
        }
      }
      if (i > 0) {
        const reached = (last[j] ?? UNREACHED) + EDIT + 1;
        if (reached < weight) {
          weight = reached;
          step = MISSING;
        }
      }
      if (j > 0) {
        const reached = (current[j - 1] ?? UNREACHED) + (costs.extra?.(j - 1) ?? extraWeight);
        if (reached < weight) {
          weight = reached;
          step = EXTRA;
        }
      }
      if (
        swaps &&
        i > 1 &&
        j > 1 &&
        one[i - 1] === two[j - 2] &&
        one[i - 2] === two[j - 1] &&
        one[i - 1] !== one[i - 2]
      ) {
        const reached = (beforeLast[j - 2] ?? UNREACHED) + EDIT + 2;
        if (reached < weight) {
          weight = reached;
          step = SWAPPED;
        }
      }
      current[j] = weight;
      steps[i * span + (j - i + width)] = step;
    }
    const reached = to === columns ? (current[columns] ?? UNREACHED) : UNREACHED;
    // With an open end, of equally light ends the later one: a last word misread was attempted.
    const mayEnd = i === rows || costs.openEnd === true;
    if (mayEnd && reached <= best.weight) {
      best = { weight: reached, end: i };
    }
    [beforeLast, last, current] = [last, current, beforeLast];
  }
  return { steps, ...best };
}

/** The same small whole number for the same key, in both sequences. */
function numberKeys(first: readonly string[], second: readonly string[]): readonly [Int32Array, Int32Array] {
  const numbers = new Map<string, number>();
  const numberOf = (key: string): number => {
    const known = numbers.get(key);
    if (known !== undefined) return known;
    numbers.set(key, numbers.size);
    return numbers.size - 1;
  };
  return [Int32Array.from(first, numberOf), Int32Array.from(second, numberOf)];
}

function traceBack({ steps, end }: Band, rows: number, columns: number, width: number): Alignment {
  const span = 2 * width + 1;
  const path: AlignmentStep[] = [];
  let i = Math.min(end, rows);
  let j = columns;
  while (i > 0 || j > 0) {
    switch (steps[i * span + (j - i + width)]) {
      case SAME:
      case REPLACED:
        path.push({
          kind: steps[i * span + (j - i + width)] === SAME ? "same" : "replaced",
          first: i - 1,
          second: j - 1,
        });
        i -= 1;
        j -= 1;
        break;
      case MISSING:
        path.push({ kind: "missing", first: i - 1 });
        i -= 1;
        break;
      case EXTRA:
        path.push({ kind: "extra", second: j - 1 });
        j -= 1;
        break;
      case SWAPPED:
        path.push({ kind: "swapped", first: [i - 2, i - 1], second: [j - 2, j - 1] });
        i -= 2;
        j -= 2;
        break;
      default:
        throw new RangeError(`alignment lost its way at ${i}, ${j}`);
    }
  }
  return { steps: path.reverse(), covered: Math.min(end, rows) };
}
