import { findGoal } from "../../src/domain/progress/goal-match";
import type { Goal } from "../../src/domain/progress/goal";
import { MEASURE_LABELS } from "../../src/domain/progress/measure-words";
import {
  describeSeries,
  normaliseName,
  type Measure,
  type Series,
  type SeriesKey,
} from "../../src/domain/progress/series";

/** What is chosen to be seen; a part that is absent or not there any more is chosen anew. */
export interface TrajectoryChoice {
  readonly pupil?: string;
  /** a series in words, as {@link describeSeries} gives it */
  readonly series?: string;
  readonly measure?: Measure;
}

/** One entry of a list to choose from. */
export interface ChoiceOption {
  readonly value: string;
  readonly label: string;
}

/** The lists to choose from and what is chosen in each. */
export interface ChoiceLists {
  readonly pupils: readonly ChoiceOption[];
  readonly series: readonly ChoiceOption[];
  readonly measures: readonly ChoiceOption[];
  readonly pupil: string;
  readonly seriesName: string;
  readonly measure: Measure;
  readonly chosen: Series;
}

const nameOf = (key: SeriesKey): string => normaliseName(describeSeries(key));

/** Entries without repetition, in order of first appearance. */
const listOptions = (
  all: readonly Series[],
  valueOf: (key: SeriesKey) => string,
  labelOf: (key: SeriesKey) => string,
): readonly ChoiceOption[] => {
  const options = new Map<string, ChoiceOption>();
  for (const { key } of all) {
    const value = valueOf(key);
    if (!options.has(value)) options.set(value, { value, label: labelOf(key) });
  }
  return [...options.values()];
};

const hasGoal = ({ key, points }: Series, goals: readonly Goal[]): boolean =>
  findGoal(key, goals, points.at(-1)?.probe.day ?? 0) !== undefined;

const lastDay = ({ points }: Series): number => points.at(-1)?.probe.day ?? 0;

/** The series to begin with: one that has a goal before one that has none, then the one probed last. */
const pickSeries = (candidates: readonly Series[], goals: readonly Goal[]): Series | undefined =>
  candidates.reduce<Series | undefined>((best, candidate) => {
    if (best === undefined) return candidate;
    const gain =
      Number(hasGoal(candidate, goals)) - Number(hasGoal(best, goals)) || lastDay(candidate) - lastDay(best);
    return gain > 0 ? candidate : best;
  }, undefined);

/**
 * Keeps as much of a choice as the series still offer, and completes it.
 *
 * @returns the lists with what is chosen, or undefined where there is no series at all
 */
export const resolveChoice = (
  all: readonly Series[],
  goals: readonly Goal[],
  choice: TrajectoryChoice,
): ChoiceLists | undefined => {
  const pupilOf = (key: SeriesKey): string => normaliseName(key.pupil);
  const wantedPupil = normaliseName(choice.pupil);
  const pupil = all.some(({ key }) => pupilOf(key) === wantedPupil)
    ? wantedPupil
    : all[0] && pupilOf(all[0].key);
  const ofPupil = all.filter(({ key }) => pupilOf(key) === pupil);
  const wantedName = normaliseName(choice.series);
  const named = ofPupil.filter(({ key }) => nameOf(key) === wantedName);
  const begin = pickSeries(named.length > 0 ? named : ofPupil, goals);
  if (pupil === undefined || begin === undefined) return undefined;
  const seriesName = nameOf(begin.key);
  const ofSeries = ofPupil.filter(({ key }) => nameOf(key) === seriesName);
  const chosen = ofSeries.find(({ key }) => key.measure === choice.measure) ?? begin;
  return {
    pupils: listOptions(all, pupilOf, (key) => key.pupil),
    series: listOptions(ofPupil, nameOf, describeSeries),
    measures: listOptions(
      ofSeries,
      (key) => key.measure,
      (key) => MEASURE_LABELS[key.measure],
    ),
    pupil,
    seriesName,
    measure: chosen.key.measure,
    chosen,
  };
};
