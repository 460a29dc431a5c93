import type { Probe } from "../probe/probe";
import { isSupported } from "../probe/support";

/** The sign of a pooled probe. */
export const ALL_SIGNS = "all signs";

/** A probe of one sign with a count. */
type Counted = Probe & { readonly correct: number; readonly opportunities: number };

const isCounted = (probe: Probe): probe is Counted =>
  (probe.sign ?? "").trim() !== "" && probe.correct !== undefined && probe.opportunities !== undefined;

/**
 * Probes of single signs added up over the signs: one for each day and phase, supported ones apart, so that a grid of
 * signs and dates has a line of its own. Nothing where all are of one sign.
 *
 * @param group - probes that differ in sign, day, phase and support alone
 */
export const poolSigns = (group: readonly Probe[]): readonly Probe[] => {
  const counted = group.filter(isCounted);
  if (new Set(counted.map(({ sign }) => (sign ?? "").trim())).size < 2) return [];
  const pools = new Map<string, Counted>();
  for (const probe of counted) {
    const { pupil, task, unit, code, medium, support, phase, correct, opportunities, source } = probe;
    const day = Math.floor(probe.day) as Probe["day"];
    const key = [day, isSupported(support), (phase ?? "").trim().toLowerCase()].join("\u0000");
    const before = pools.get(key);
    const pooled = {
      ...{ pupil, day, sign: ALL_SIGNS, source: before?.source ?? source },
      ...{
        correct: correct + (before?.correct ?? 0),
        opportunities: opportunities + (before?.opportunities ?? 0),
      },
      ...(task !== undefined && { task }),
      ...(unit !== undefined && { unit }),
      ...(code !== undefined && { code }),
      ...(medium !== undefined && { medium }),
      ...(support !== undefined && { support }),
      ...(phase !== undefined && { phase }),
    };
    pools.set(key, pooled);
  }
  return [...pools.values()];
};
