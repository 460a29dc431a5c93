import type { Measure } from "./measure";
import type { SeriesKey } from "./series";

/** No-break space: a number and its unit stay on one line. */
const NBSP = "\u00A0";
const READING = /read|aloud|track/i;

/** The measure in words of the axis, such as `words read correctly a minute`. */
export const nameMeasure = (key: SeriesKey): string => {
  const unit = key.unit.trim().toLowerCase() || (key.sign === "" ? "words" : "answers");
  switch (key.measure) {
    case "rate":
      return READING.test(key.task) || key.task.trim() === ""
        ? `${unit} read correctly a minute`
        : `${unit} correct a minute`;
    case "accuracy":
      return `accuracy: percent of ${unit} right`;
    case "score":
      return key.unit.trim() === "" ? "score" : `score in ${unit}`;
    case "cells a minute":
      return "cells read correctly a minute";
  }
};

/** A measure as it stands in a list to choose from. */
export const MEASURE_LABELS: Readonly<Record<Measure, string>> = {
  rate: "Rate",
  accuracy: "Accuracy",
  score: "Score",
  "cells a minute": "Cells a minute",
};

/** A number with at most this many decimals, without trailing zeros, with a true minus sign. */
export const formatNumber = (value: number, decimals = 1): string => {
  const rounded = Number(value.toFixed(decimals));
  return (Object.is(rounded, -0) ? 0 : rounded).toString().replace("-", "−");
};

/** A value of a measure: `42.5`, or `90 %` for accuracy. */
export const formatValue = (value: number, measure: Measure): string =>
  measure === "accuracy" ? `${formatNumber(100 * value)}${NBSP}%` : formatNumber(value);

/** A number with what it counts: `1 word`, `2 words`. */
const countUnit = (number: string, unit: string): string =>
  `${number} ${number === "1" ? unit.replace(/s$/, "") : unit}`;

/** A value with the unit that the axis names: `42.5 words a minute`, `90 %`. */
export const formatWithUnit = (value: number, key: SeriesKey): string => {
  const number = formatValue(value, key.measure);
  const unit = key.unit.trim().toLowerCase();
  switch (key.measure) {
    case "rate":
      return `${countUnit(number, unit || "words")} a minute`;
    case "cells a minute":
      return `${countUnit(number, "cells")} a minute`;
    case "accuracy":
      return number;
    case "score":
      return unit === "" ? `a score of ${number}` : countUnit(number, unit);
  }
};

/** A change without its sign, in the unit: `1.3 words a minute`, `2 percentage points`. */
export const formatChange = (change: number, key: SeriesKey): string => {
  const size = Math.abs(change);
  if (key.measure === "accuracy") return countUnit(formatNumber(100 * size), "percentage points");
  if (key.measure === "score")
    return countUnit(formatNumber(size, 2), key.unit.trim().toLowerCase() || "points");
  return formatWithUnit(size, key);
};
