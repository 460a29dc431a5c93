import { fitLine, type LineFit } from "../statistics/least-squares";
import { studentQuantile } from "../statistics/student-t";
import type { AimEnds } from "./aim";
import { medianByDay, type DailyValue } from "./phases";
import { DEFAULT_VERDICT_SETTINGS, widestHalfOf, type VerdictSettings } from "./verdict";

/** Further ahead than a school year no number of probes is named. */
const MOST_PROBES = 40;
const DAYS_A_WEEK = 7;

/**
 * How many more weekly probes would settle a verdict that is `unclear`, if scores scatter as before: the fewest after
 * which the interval of the fitted value is narrow enough for `on aim`, so that it says one thing or another. The
 * trend so far takes no part: with few points it promises an answer too soon (by then, 30 to 60 % of simulated pupils
 * on the aim line had one).
 *
 * Source: the standard error of a fitted value with the further weeks filled in; this project's choice, simulated by
 * `npm run simulate`.
 *
 * @param values - as the verdict was given on: any order, several a day allowed, none before a change of phase
 * @returns a number of weeks from 1 on, or undefined where 40 are not enough
 */
export const countProbesToSettle = (
  values: readonly DailyValue[],
  ends: AimEnds,
  settings: VerdictSettings = DEFAULT_VERDICT_SETTINGS,
): number | undefined => {
  const daily = medianByDay(values.filter(({ day }) => day >= ends.startDay));
  const last = daily.at(-1)?.day;
  const fit = fitLine(
    daily.map(({ day }) => day),
    daily.map(({ value }) => value),
  );
  if (!fit.ok || last === undefined) return undefined;
  for (let more = 1; more <= MOST_PROBES; more++) {
    const half = halfWidthAfter(fit.value, last, more, settings.confidence);
    if (half !== undefined && half <= widestHalfOf(ends, settings)) return more;
  }
  return undefined;
};

/** Half the interval of the fitted value on the last of the further days, at the scatter of the days so far. */
const halfWidthAfter = (
  { points, scatter, meanX, spreadX }: LineFit,
  last: number,
  more: number,
  confidence: number,
): number | undefined => {
  if (scatter === undefined) return undefined;
  let [sum, squares] = [0, 0];
  for (let week = 1; week <= more; week++) {
    const fromMean = last + week * DAYS_A_WEEK - meanX;
    sum += fromMean;
    squares += fromMean * fromMean;
  }
  const all = points + more;
  const shift = sum / all;
  const spread = spreadX + squares - all * shift * shift;
  const fromMean = last + more * DAYS_A_WEEK - meanX - shift;
  const reach = studentQuantile((1 + confidence) / 2, all - 2);
  return reach * scatter * Math.sqrt(1 / all + (fromMean * fromMean) / spread);
};
