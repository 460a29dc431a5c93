import type { Probe } from "../probe/probe";
import { isSupported } from "../probe/support";
import { USUAL_WAIT, waitOfNote } from "../probe/word-wait";
import type { Seconds } from "../units";
import { ALL_SIGNS, poolSigns } from "./sign-pool";
import { MEASURES, measureProbe, type CellSource, type Measure } from "./measure";

export type { Measure } from "./measure";

/** What tells one series from another: pupil × task × measure × unit × code × medium (the sign, where one is named). */
export interface SeriesKey {
  readonly pupil: string;
  readonly task: string;
  readonly measure: Measure;
  readonly unit: string;
  readonly code: string;
  readonly medium: string;
  readonly sign: string;
  /** seconds until a word is told, where that is not the usual wait: such probes are not compared with others */
  readonly wait?: number;
}

/** One probe with the value of the series' measure. */
export interface SeriesPoint {
  readonly probe: Probe;
  readonly value: number;
  /** done with help: drawn with another mark, left out of trend, verdict and mastery */
  readonly supported: boolean;
}

/** The probes of one series in order of day (and of row within a day). */
export interface Series {
  readonly key: SeriesKey;
  readonly points: readonly SeriesPoint[];
}

/** A name or word as it counts for telling series apart: case and spaces around do not matter. */
export const normaliseName = (name: string | undefined): string =>
  (name ?? "").normalize("NFKC").trim().replace(/\s+/gu, " ").toLowerCase();

/** What makes up a series but for the sign, which keeps its case: `A` and `a` may be taught apart. */
const PARTS = ["pupil", "task", "unit", "code", "medium"] as const;

/** Names family by family; the same few spellings come again and again. */
const nameFamilies = (): ((probe: Probe) => string) => {
  const known = new Map<string | undefined, string>();
  const tidy = (name: string | undefined): string => {
    const before = known.get(name);
    if (before !== undefined) return before;
    const tidied = normaliseName(name);
    known.set(name, tidied);
    return tidied;
  };
  return (probe) => [...PARTS.map((part) => tidy(probe[part])), waitOfNote(probe.note)].join("\u0000");
};
const signOf = (probe: Probe): string => (probe.sign ?? "").trim();

const groupBy = (
  probes: readonly Probe[],
  keyOf: (probe: Probe) => string,
): readonly (readonly Probe[])[] => {
  const groups = new Map<string, Probe[]>();
  for (const probe of probes) {
    const key = keyOf(probe);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [probe]);
    else group.push(probe);
  }
  return [...groups.values()];
};

/**
 * Every series that the probes hold: one for each pupil, task, unit, code, medium, wait and sign, and each measure that at
 * least one of its probes has; where several signs were counted, one for all signs together before them. In order of
 * first appearance, measures in the order of {@link MEASURES}; names as they are spelled first.
 *
 * @param cells - how to count a passage's cells; without it there are no cells a minute
 */
export const buildSeries = (probes: readonly Probe[], cells?: CellSource): readonly Series[] =>
  groupBy(probes, nameFamilies()).flatMap((family) => {
    const wait = waitOfNote(family[0]?.note);
    return [poolSigns(family), ...groupBy(family, signOf)].flatMap((group) =>
      seriesOfGroup(group, wait, cells),
    );
  });

const seriesOfGroup = (
  group: readonly Probe[],
  wait: Seconds,
  cells: CellSource | undefined,
): readonly Series[] => {
  const first = group[0];
  if (first === undefined) return [];
  const sorted = [...group].sort((a, b) => a.day - b.day || a.source.row - b.source.row);
  return MEASURES.flatMap((measure) => {
    const points = sorted.flatMap((probe): SeriesPoint[] => {
      const value = measureProbe(probe, measure, cells);
      return value === undefined ? [] : [{ probe, value, supported: isSupported(probe.support) }];
    });
    if (points.length === 0) return [];
    const { task = "", unit = "", code = "", medium = "", sign = "" } = first;
    const key = { pupil: first.pupil, task, measure, unit, code, medium, sign };
    return [{ key: wait === USUAL_WAIT ? key : { ...key, wait }, points }];
  });
};

/**
 * A series in words without its pupil and measure: `Read aloud, words, contracted, braille`.
 *
 * @returns `all probes` where the sheet says nothing that could tell it
 */
export const describeSeries = (key: SeriesKey): string => {
  const parts = [
    key.task,
    key.sign === "" || key.sign === ALL_SIGNS ? key.sign : `sign ${key.sign}`,
    key.unit,
    key.code,
    key.medium,
    key.wait === undefined ? "" : `told after ${key.wait} s`,
  ];
  const words = parts.map((part) => part.trim()).filter((part) => part !== "");
  return words.length === 0 ? "all probes" : words.join(", ");
};
