import { assignBest } from "./assignment";
import type { BlockChoice } from "./column-choices";
import { contentAlone, countsWords, fitColumn, IMPOSSIBLE } from "./column-fit";
import type { ColumnEvidence } from "./column-evidence";
import { COLUMN_KINDS, GOAL_KINDS } from "./column-kind";
import type { AnyKind, ColumnKind } from "./column-kind";
import { matchHeader } from "./header-words";
import type { HeaderMatch } from "./header-words";
import { normaliseHeader } from "./header-text";

/** A column to be understood: its header, its group's heading and what it holds. */
export interface CandidateColumn {
  readonly key: string;
  readonly header: string;
  readonly group: string;
  readonly evidence: ColumnEvidence;
}

export interface ColumnRole {
  readonly kinds: readonly AnyKind[];
  readonly chosen: boolean;
}

const HEADER_WEIGHT = 10;
const LEAST = 2.5;
const EXTRA_KINDS: readonly AnyKind[] = [
  ...GOAL_KINDS,
  "introduced",
  "position",
  "error kind",
  "comprehension",
];

/** Attempted and Total count whatever the unit is: their header alone does not say. */
export const countsAnything = (header: string): boolean =>
  /^(?:(?:total )?attempted(?: total)?|how many attempted|total|tried|total number|number|count|read|total read)$/.test(
    normaliseHeader(header),
  );

/** What the block says about the unit that is counted. */
function findUnits(columns: readonly CandidateColumn[]): { words: boolean; others: boolean; unit: boolean } {
  const unit = columns.find((column) => (matchHeader(column.header).get("unit") ?? 0) >= 0.9);
  const texts = (unit?.evidence.texts ?? []).filter((text) => text !== "");
  if (unit && texts.length > 0) {
    return { words: texts.some(countsWords), others: !texts.every(countsWords), unit: true };
  }
  const says = columns.some(
    ({ header }) =>
      /\bw(?:c|rc)?pm\b|\bcwpm\b|\bword/.test(normaliseHeader(header)) &&
      !/\bsign\b|word ?list/.test(normaliseHeader(header)),
  );
  return { words: says, others: !says, unit: unit !== undefined };
}

function headerMatch({ header, group }: CandidateColumn): HeaderMatch {
  const own = matchHeader(header);
  if (group === "" || group === header) return own;
  const withGroup = matchHeader(`${group} ${header}`);
  const best = Math.max(0, ...own.values());
  if (best >= 0.9) return own;
  const both = new Map(own);
  for (const [kind, strength] of withGroup) both.set(kind, Math.max(both.get(kind) ?? 0, strength * 0.9));
  return both;
}

function weigh(
  kind: AnyKind,
  column: CandidateColumn,
  match: HeaderMatch,
  units: { words: boolean },
): number {
  let strength = match.get(kind) ?? 0;
  if (countsAnything(column.header)) {
    if (kind === "words") strength = units.words ? 0.92 : 0;
    else if (kind === "opportunities") strength = units.words ? 0.5 : 0.9;
  }
  const other = match.get("other") ?? 0;
  // "Next review date" is a date, and never the probe's.
  if (kind === "date" && other >= 0.95 && strength < 0.95) return 0;
  const fit = fitColumn(kind, column.evidence);
  if (fit <= IMPOSSIBLE) return 0;
  if (strength === 0) {
    const named = Math.max(0, ...match.values());
    return named >= 0.75 && column.evidence.filled > 0 && kind !== "date"
      ? 0
      : other >= 0.9 || named >= 0.9
        ? 0
        : contentAlone(kind, column.evidence);
  }
  const goals =
    kind === "rate" || kind === "accuracy" || kind === "score" || kind === "date"
      ? (match.get(kind === "date" ? "goalDate" : "goalScore") ?? 0)
      : 0;
  const baseline = kind === "date" ? (match.get("startDate") ?? 0) : (match.get("startScore") ?? 0);
  const penalty =
    (other >= 0.9 ? (other > strength ? 4 : 2) : 0) + (Math.max(goals, baseline) >= 0.9 ? 3 : 0);
  const total = strength * HEADER_WEIGHT + fit - penalty;
  return total < LEAST ? 0 : total;
}

/**
 * Gives each column its meaning: header words and contents weighed together, and the one assignment with the best
 * total, each meaning once. What the teacher chose comes first. Attempted is `words` where the unit is words,
 * otherwise `opportunities`, and both where the units are mixed.
 */
export function assignRoles(
  columns: readonly CandidateColumn[],
  choice: BlockChoice | undefined,
): ColumnRole[] {
  const chosen = columns.map(({ key }) => choice?.columns?.[key]);
  const taken = new Set(chosen.filter((kind) => kind !== undefined));
  const kinds: AnyKind[] = [...COLUMN_KINDS, ...EXTRA_KINDS].filter((kind) => !taken.has(kind as ColumnKind));
  const units = findUnits(columns);
  const weights = columns.map((column, place) =>
    chosen[place] !== undefined ? kinds.map(() => 0) : weighColumn(column, kinds, units),
  );
  const placed = assignBest(weights);
  const roles = columns.map((_, place): ColumnRole => {
    const choice = chosen[place];
    if (choice !== undefined) return { kinds: choice === "none" ? [] : [choice], chosen: true };
    const kind = kinds[placed[place] ?? -1];
    return { kinds: kind === undefined ? [] : [kind], chosen: false };
  });
  if (!units.unit || !units.words || !units.others) return roles;
  const hasBoth = (kind: AnyKind): boolean => roles.some((role) => role.kinds.includes(kind));
  return roles.map((role, place) => {
    const kind = role.kinds[0];
    if (role.chosen || !countsAnything(columns[place]?.header ?? "")) return role;
    if (kind === "words" && !hasBoth("opportunities")) return { ...role, kinds: ["words", "opportunities"] };
    if (kind === "opportunities" && !hasBoth("words")) return { ...role, kinds: ["words", "opportunities"] };
    return role;
  });
}

function weighColumn(
  column: CandidateColumn,
  kinds: readonly AnyKind[],
  units: { words: boolean },
): number[] {
  const match = headerMatch(column);
  return kinds.map((kind) => weigh(kind, column, match, units));
}
