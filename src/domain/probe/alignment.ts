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
    }
  /** a run of the first stands as another run in the second; from is in the run, to is not */
  | {
      readonly kind: "rewritten";
      /** place in {@link AlignmentCosts.rewrites} */
      readonly rewrite: number;
      readonly first: readonly [from: number, to: number];
      readonly second: readonly [from: number, to: number];
    };

/** A run of the first sequence that may stand as another run in the second, at a weight of its own. */
export interface Rewrite {
  /** the run of the first sequence, half-open, at least one item */
  readonly from: number;
  readonly to: number;
  /** the keys that stand for it in the second, at least one */
  readonly keys: readonly string[];
  readonly weight: number;
}

/**
 * One edit. Smaller weights than this only break ties between alignments with equally many edits: all ties of an
 * alignment together stay below it, and edits are counted exactly up to 2^23 (a double holds whole numbers to 2^53).
 */
export const EDIT = 2 ** 30;

/** How an alignment is weighed. All weights are whole numbers, 0 or more. */
export interface AlignmentCosts {
  /** weight of pairing `first[i]` with `second[j]`, given that they are different; EDIT by default */
  readonly replace?: (first: number, second: number) => number;
  /** weight of `first[i]` having no partner, EDIT or more; EDIT by default */
  readonly missing?: (first: number) => number;
  /** weight of `second[j]` standing alone; EDIT by default */
  readonly extra?: (second: number) => number;
  /** items missing at the end of the first sequence weigh nothing: the attempt may end before it does */
  readonly openEnd?: boolean;
  /** neighbours may be swapped for one edit; true by default */
  readonly swaps?: boolean;
  /** runs that may stand as other runs, each weighing EDIT or more */
  readonly rewrites?: readonly Rewrite[];
}

/** A kept alignment: its edits are the steps that are not `same`; it ends where `first` ends. */
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
/** and above: the place of the rewrite among those of the alignment */
const REWRITTEN = 6;
const UNREACHED = Number.MAX_SAFE_INTEGER;

/**
 * Optimal string alignment of two sequences: the fewest edits, where an edit replaces, leaves out, adds, swaps two
 * neighbours, or rewrites a run. Among alignments with equally many edits, the one with more items the same.
 *
 * Computed in a band about the diagonal that is widened until the answer cannot lie outside it (Ukkonen 1985,
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
  const strays = straysOf(costs.rewrites ?? []);
  const widest = Math.max(first.length, second.length);
  for (let width = Math.min(widest, least + free + 16); ;) {
    const table = fillBand(first, second, costs, width);
    // A path of so many edits strays no farther; the path just found bounds the edits of the lightest.
    const edits = Math.floor(table.weight / EDIT);
    const moved = farthestStray(edits, strays) + free;
    // What leaves the diagonal must come back to the last corner, unless the end is open.
    const enough = (costs.openEnd === true ? moved : Math.floor((moved + least) / 2)) + 1;
    if (width >= widest || width >= enough) return traceBack(table, second.length, costs.rewrites ?? []);
    // Where little is alike, wider bands hardly find fewer edits: no use in widening step by step.
    const next = 2 * edits > widest ? enough : Math.min(enough, 4 * width);
    width = Math.min(widest, Math.max(width + 1, next));
  }
}

/**
 * How far from its diagonal the rewrites can lead, where that is farther than another edit does; farthest first. Of those
 * that begin at one place only one can be taken.
 */
const straysOf = (rewrites: readonly Rewrite[]): readonly number[] => {
  const farthest = new Map<number, number>();
  for (const { from, to, keys } of rewrites) {
    const stray = Math.abs(keys.length - (to - from));
    if (stray > 1) farthest.set(from, Math.max(stray, farthest.get(from) ?? 0));
  }
  return [...farthest.values()].sort((one, other) => other - one);
};

/** How far so many edits can lead from diagonal to diagonal: no rewrite is taken twice. */
const farthestStray = (edits: number, strays: readonly number[]): number => {
  const rewritten = Math.min(edits, strays.length);
  return strays.slice(0, rewritten).reduce((sum, stray) => sum + stray, edits - rewritten);
};

interface Band {
  /** what led to each place, a row of `span` places for each item of the first sequence and one before */
  readonly steps: Uint8Array | Uint16Array | Uint32Array;
  /** the place of a row's column 0 among the steps; it may lie before the row where the band does not reach there */
  readonly originOf: (row: number) => number;
  readonly weight: number;
  readonly end: number;
}

function fillBand(
  first: readonly string[],
  second: readonly string[],
  costs: AlignmentCosts,
  width: number,
): Band {
  const numberOf = keyNumbers();
  const one = Int32Array.from(first, numberOf);
  const two = Int32Array.from(second, numberOf);
  const rows = one.length;
  const columns = two.length;
  const whole = 2 * width >= columns;
  const span = whole ? columns + 1 : 2 * width + 1;
  const originOf = (row: number): number => (whole ? row * span : row * span - row + width);
  const rewrites = numberRewrites(costs.rewrites ?? [], rows, numberOf);
  const steps = newSteps((rows + 1) * span, REWRITTEN + rewrites.count);
  const depth = Math.max(2, rewrites.longest) + 1;
  const kept = Array.from({ length: depth }, () => new Float64Array(columns + 2).fill(UNREACHED));
  const swaps = costs.swaps ?? true;
  // Where the end is open, an item added at the end must not be lighter than the next item replaced by it.
  const extraWeight = costs.openEnd === true ? EDIT + 1 : EDIT;
  const extras = Float64Array.from(two, (_, j) => costs.extra?.(j) ?? extraWeight);
  const replace = costs.replace;
  let best = { weight: UNREACHED, end: rows };
  for (let i = 0; i <= rows; i += 1) {
    const from = Math.max(0, i - width);
    const to = Math.min(columns, i + width);
    if (from > columns) break;
    const current = rowOf(kept, i);
    const last = rowOf(kept, i + depth - 1);
    const beforeLast = rowOf(kept, i + depth - 2);
    current.fill(UNREACHED, Math.max(0, from - 1), to + 2);
    const missing = i > 0 ? (costs.missing?.(i - 1) ?? EDIT + 1) : 0;
    const ending = rewrites.endingAt[i];
    const origin = originOf(i);
    const [item, itemBefore] = [one[i - 1], one[i - 2]];
    const maySwap = swaps && i > 1 && item !== itemBefore;
    let left = UNREACHED;
    for (let j = from; j <= to; j += 1) {
      let weight = i === 0 && j === 0 ? 0 : UNREACHED;
      let step = 0;
      if (i > 0 && j > 0) {
        const same = item === two[j - 1];
        const pair = same ? 0 : replace === undefined ? EDIT + 1 : replace(i - 1, j - 1) + 1;
        const reached = (last[j - 1] ?? UNREACHED) + pair;
        if (reached < weight) {
          weight = reached;
          step = same ? SAME : REPLACED;
        }
      }
      if (i > 0) {
        const reached = (last[j] ?? UNREACHED) + missing;
        // Of two items alike the later one is left out, or added: runing for running.
        if (reached < weight || (reached === weight && step === SAME)) {
          weight = reached;
          step = MISSING;
        }
      }
      if (j > 0) {
        const reached = left + (extras[j - 1] ?? extraWeight);
        if (reached < weight || (reached === weight && step === SAME)) {
          weight = reached;
          step = EXTRA;
        }
      }
      if (maySwap && j > 1 && item === two[j - 2] && itemBefore === two[j - 1]) {
        const reached = (beforeLast[j - 2] ?? UNREACHED) + EDIT + 2;
        if (reached < weight) {
          weight = reached;
          step = SWAPPED;
        }
      }
      if (ending !== undefined) {
        for (const rewrite of ending) {
          const before = j - rewrite.keys.length;
          // Outside its band a kept row holds the weights of an older one.
          if (before < 0 || Math.abs(before - rewrite.from) > width || !endsWith(two, j, rewrite.keys))
            continue;
          const reached = (rowOf(kept, rewrite.from)[before] ?? UNREACHED) + rewrite.weight;
          if (reached < weight) {
            weight = reached;
            step = REWRITTEN + rewrite.place;
          }
        }
      }
      current[j] = weight;
      left = weight;
      steps[origin + j] = step;
    }
    const reached = to === columns ? (current[columns] ?? UNREACHED) : UNREACHED;
    // With an open end, of equally light ends the later one: a last word misread was attempted.
    const mayEnd = i === rows || costs.openEnd === true;
    if (mayEnd && reached <= best.weight) {
      best = { weight: reached, end: i };
    }
  }
  return { steps, originOf, ...best };
}

/** Room for so many steps of so many kinds. */
const newSteps = (places: number, kinds: number): Uint8Array | Uint16Array | Uint32Array => {
  if (kinds <= 0x100) return new Uint8Array(places);
  return kinds <= 0x10000 ? new Uint16Array(places) : new Uint32Array(places);
};

/** The row of an item in a ring of kept rows. */
const rowOf = (kept: readonly Float64Array[], i: number): Float64Array => {
  const row = kept[i % kept.length];
  if (row === undefined) throw new RangeError(`no row ${i} is kept`);
  return row;
};

/** The same small whole number for the same key. */
const keyNumbers = (): ((key: string) => number) => {
  const numbers = new Map<string, number>();
  return (key) => {
    const known = numbers.get(key);
    if (known !== undefined) return known;
    numbers.set(key, numbers.size);
    return numbers.size - 1;
  };
};

interface NumberedRewrite {
  readonly place: number;
  readonly from: number;
  readonly keys: readonly number[];
  readonly weight: number;
}

interface NumberedRewrites {
  readonly count: number;
  /** the most items of the first sequence that one of them takes */
  readonly longest: number;
  readonly endingAt: readonly (readonly NumberedRewrite[] | undefined)[];
}

const numberRewrites = (
  rewrites: readonly Rewrite[],
  rows: number,
  numberOf: (key: string) => number,
): NumberedRewrites => {
  const endingAt = new Array<NumberedRewrite[] | undefined>(rewrites.length === 0 ? 0 : rows + 1);
  let longest = 0;
  for (const [place, { from, to, keys, weight }] of rewrites.entries()) {
    longest = Math.max(longest, to - from);
    const numbered = { place, from, keys: keys.map(numberOf), weight };
    const there = endingAt[to];
    if (there === undefined) endingAt[to] = [numbered];
    else there.push(numbered);
  }
  return { count: rewrites.length, longest, endingAt };
};

const endsWith = (items: Int32Array, end: number, keys: readonly number[]): boolean => {
  for (let back = 1; back <= keys.length; back += 1)
    if (items[end - back] !== keys[keys.length - back]) return false;
  return true;
};

function traceBack({ steps, originOf, end }: Band, columns: number, rewrites: readonly Rewrite[]): Alignment {
  const path: AlignmentStep[] = [];
  let i = end;
  let j = columns;
  while (i > 0 || j > 0) {
    const step = steps[originOf(i) + j] ?? 0;
    switch (step) {
      case SAME:
      case REPLACED:
        path.push({ kind: step === SAME ? "same" : "replaced", first: i - 1, second: j - 1 });
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
      default: {
        const rewrite = rewrites[step - REWRITTEN];
        if (rewrite === undefined) throw new RangeError(`alignment lost its way at ${i}, ${j}`);
        const before = j - rewrite.keys.length;
        path.push({
          kind: "rewritten",
          rewrite: step - REWRITTEN,
          first: [rewrite.from, i],
          second: [before, j],
        });
        i = rewrite.from;
        j = before;
      }
    }
  }
  return { steps: path.reverse(), covered: end };
}
