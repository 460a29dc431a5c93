import { computeAccuracy, computeShare } from "../probe/accuracy";
import type { Probe } from "../probe/probe";
import { computeRate } from "../probe/rate";

/** What is drawn up the vertical axis. */
export const MEASURES = ["rate", "accuracy", "score", "cells a minute"] as const;
export type Measure = (typeof MEASURES)[number];

/** How the cells of a passage are counted: from outside, because the domain knows no braille engine. */
export interface CellSource {
  /** how many cells a text takes in a code, blanks between words included; undefined where that cannot be said yet */
  readonly cellsOf: (text: string, code: string) => number | undefined;
}

/**
 * The value of one measure of a probe, or undefined where its fields do not give one.
 *
 * - rate: her own rate column, else words, errors and seconds, else correct and seconds; a minute
 * - accuracy: her own accuracy column, else words and errors, else correct of opportunities; 0 to 1
 * - score: her score column
 * - cells a minute: the rate times the mean cells of a word in the text read; not of a row of signs, whose names are no text
 *
 * Blank errors are not taken as none.
 */
export const measureProbe = (probe: Probe, measure: Measure, cells?: CellSource): number | undefined => {
  switch (measure) {
    case "rate":
      return rateOf(probe);
    case "accuracy":
      return accuracyOf(probe);
    case "score":
      return finite(probe.score);
    case "cells a minute":
      return cells === undefined ? undefined : cellRateOf(probe, cells);
  }
};

const finite = (value: number | undefined): number | undefined =>
  value !== undefined && Number.isFinite(value) ? value : undefined;

const rateOf = (probe: Probe): number | undefined => {
  const { rate, words, errors, correct, seconds } = probe;
  if (finite(rate) !== undefined) return rate;
  if (seconds === undefined) return undefined;
  const computed =
    words !== undefined && errors !== undefined
      ? computeRate(words, errors, seconds)
      : correct !== undefined
        ? computeRate(correct, 0, seconds)
        : undefined;
  return computed?.ok === true ? computed.value : undefined;
};

const accuracyOf = (probe: Probe): number | undefined => {
  const { accuracy, words, errors, correct, opportunities } = probe;
  if (finite(accuracy) !== undefined) return accuracy;
  const total = opportunities ?? words;
  const computed =
    words !== undefined && errors !== undefined
      ? computeAccuracy(words, errors)
      : correct !== undefined && total !== undefined
        ? computeShare(correct, total)
        : undefined;
  return computed?.ok === true ? computed.value : undefined;
};

/** The words that were attempted, where the text is longer than that. */
const attemptedText = (
  text: string,
  words: number | undefined,
): { readonly text: string; readonly words: number } => {
  const all = text.split(/\s+/u).filter((word) => word !== "");
  const attempted = words === undefined || words <= 0 ? all : all.slice(0, words);
  return { text: attempted.join(" "), words: attempted.length };
};

const countsSigns = ({ unit = "" }: Probe): boolean => unit.trim().toLowerCase() === "signs";

const cellRateOf = (probe: Probe, { cellsOf }: CellSource): number | undefined => {
  const rate = rateOf(probe);
  if (rate === undefined || probe.expected === undefined || countsSigns(probe)) return undefined;
  const read = attemptedText(probe.expected, probe.words);
  if (read.words === 0) return undefined;
  const cells = cellsOf(read.text, probe.code ?? "");
  return cells === undefined ? undefined : (rate * cells) / read.words;
};
