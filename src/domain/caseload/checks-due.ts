import type { TaughtSign } from "../contraction/taught-sign";
import { parseSigns } from "../contraction/taught";
import type { SignStanding } from "../progress/sign-states";
import { WAYS } from "../progress/way";
import type { Day } from "../units";
import { bySince, findWrittenChecks, type DueSign } from "./written-checks";

/**
 * The signs of one pupil due for a check: those that the records say should be checked again, and those whose written day
 * has come unless the pupil met them since. The longest waiting come first.
 *
 * @param standings - of the pupil, on the same day
 * @param taught - of the pupil, for the written days
 */
export const findChecksDue = (
  standings: readonly SignStanding[],
  taught: readonly TaughtSign[],
  asOf: Day,
): readonly DueSign[] => {
  const due = new Map<string, DueSign>();
  for (const standing of standings)
    for (const way of WAYS) {
      const { state, checkOn, knowledge } = standing[way];
      if (state !== "check again") continue;
      const since = checkOn !== undefined && checkOn <= asOf ? checkOn : (knowledge.lastSeen ?? asOf);
      const { name } = standing.sign;
      due.set(name, { sign: name, since: Math.min(since, due.get(name)?.since ?? since) as Day });
    }
  const seen = new Map(standings.map((standing) => [standing.sign.name, lastSeenOf(standing)]));
  for (const written of findWrittenChecks(taught, asOf)) {
    const named = parseSigns([written.sign]);
    const names = named.ok ? named.value.map(({ name }) => name) : [];
    const isMet = names.some((name) => (seen.get(name) ?? -Infinity) >= written.since);
    if (isMet || names.some((name) => due.has(name))) continue;
    due.set(written.sign, written);
  }
  return [...due.values()].sort(bySince);
};

const lastSeenOf = (standing: SignStanding): number =>
  Math.max(...WAYS.map((way) => standing[way].knowledge.lastSeen ?? -Infinity));
