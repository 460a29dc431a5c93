import { intervalOfProportion, type Interval } from "../statistics/proportion-interval";
import type { Share } from "../units";
import type { ExpectedCells } from "./expected-cells";
import type { WritingScore } from "./writing";

/** One time that something was to be written or read, and what came. */
export interface Chance {
  /** a cell, the cells of a sign, or a sign's name: one kind throughout a summary */
  readonly expected: string;
  /** the same where it is right; "" where nothing came */
  readonly given: string;
}

/** Something written or read for something else. */
export interface Confusion {
  readonly expected: string;
  readonly given: string;
  /** how often */
  readonly times: number;
  /** of how many chances: times that `expected` was to come */
  readonly chances: number;
  readonly share: Share;
  /** 95 %, Jeffreys; it takes the chances as independent of each other */
  readonly interval: Interval;
}

/**
 * What was written or read for what, over any number of probes: most often first, then by share, then in the order in
 * which they first came.
 *
 * Source: interval after Brown, Cai & DasGupta 2001 (from memory); the summary is common practice, no source.
 *
 * @param chances - every time, right ones too: they are what the share is of
 */
export const summariseConfusions = (chances: Iterable<Chance>): readonly Confusion[] => {
  const counts = new Map<string, { total: number; readonly given: Map<string, number> }>();
  for (const { expected, given } of chances) {
    const count = counts.get(expected) ?? { total: 0, given: new Map<string, number>() };
    counts.set(expected, count);
    count.total += 1;
    if (given !== expected) count.given.set(given, (count.given.get(given) ?? 0) + 1);
  }
  return [...counts]
    .flatMap(([expected, { total, given }]) =>
      [...given].map(([other, times]) => ({
        expected,
        given: other,
        times,
        chances: total,
        share: (times / total) as Share,
        interval: intervalOfProportion(times, total),
      })),
    )
    .sort((one, other) => other.times - one.times || other.share - one.share);
};

/**
 * The chances that one piece of writing gave, a sign at a time: the cells of a sign, and the cells that stand for them.
 * Where signs are not known, a cell at a time. Letters that a contraction wrongly used took the place of, and cells
 * added, say nothing about any one sign and are left out; blanks are no signs.
 *
 * @param score - of the same cells
 */
export const chancesOfWriting = (
  { cells, pieces }: ExpectedCells,
  score: WritingScore,
): readonly Chance[] => {
  const given = new Array<string | undefined>(cells.length);
  for (const { position, expected, written, kind } of score.aligned) {
    if (kind === "contraction wrongly used" || expected === "") continue;
    given[position - 1] = written;
    given.fill("", position, position - 1 + expected.length);
  }
  const units = pieces.length > 0 ? pieces : [...cells].map((_, at) => ({ cellStart: at, cellEnd: at + 1 }));
  return units.flatMap(({ cellStart, cellEnd }) => {
    const written = given.slice(cellStart, cellEnd);
    const expected = cells.slice(cellStart, cellEnd);
    return /^\u2800*$/.test(expected) || written.includes(undefined)
      ? []
      : [{ expected, given: written.join("") }];
  });
};
