import { formatDay } from "../calendar";
import type { Day } from "../units";
import { normaliseName, type Series } from "./series";

/** Days under which nothing can be said about whether neighbouring probes go together. */
const DEPENDENCE_DAYS = 20;
/** Days without a probe that are worth a mention: three weeks, our choice. */
const LONG_GAP = 21;

/**
 * What a reader should keep in mind about a series: passages that differ, supported probes left out, a long gap, and
 * few points.
 *
 * @param judgedDays - days that trend and verdict rest on
 */
export const findCautions = ({ points }: Series, judgedDays: number): readonly string[] => {
  const cautions: string[] = [];
  const supported = points.filter((point) => point.supported).length;
  if (supported > 0) {
    cautions.push(
      `${supported} of ${points.length} probes ${supported === 1 ? "was" : "were"} done with support: shown with another mark, left out of trend and verdict.`,
    );
  }
  const materials = new Set(
    points.map(({ probe }) => normaliseName(probe.material)).filter((name) => name !== ""),
  );
  if (materials.size > 1) {
    cautions.push(
      `${materials.size} different passages or lists were used: a harder one alone can lower a value. The table names each.`,
    );
  }
  const gap = findLongestGap(points.map(({ probe }) => probe.day));
  if (gap !== undefined) {
    cautions.push(
      `No probe from ${formatDay(gap.from)} to ${formatDay(gap.to)}: the trend takes the change over that time as even.`,
    );
  }
  if (judgedDays >= 6 && judgedDays < DEPENDENCE_DAYS) {
    cautions.push(
      `The intervals take the ${judgedDays} days as independent of each other; with fewer than ${DEPENDENCE_DAYS} that cannot be checked, and they may be too narrow.`,
    );
  }
  return cautions;
};

const findLongestGap = (days: readonly Day[]): { readonly from: Day; readonly to: Day } | undefined => {
  let longest: { readonly from: Day; readonly to: Day } | undefined;
  days.forEach((to, i) => {
    const from = days[i - 1];
    if (from === undefined || to - from < LONG_GAP) return;
    if (longest === undefined || to - from > longest.to - longest.from) longest = { from, to };
  });
  return longest;
};
