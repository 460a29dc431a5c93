import { formatNumber } from "./measure-words";
import { normaliseName, type SeriesKey } from "./series";
import type { Verdict } from "./verdict";
import { ALL_SIGNS } from "./sign-pool";
import { wayOf } from "./way";

/** A verdict for a family: plain words, nothing of intervals. */
export const FAMILY_VERDICTS: Readonly<Record<Verdict, string>> = {
  "too few points": "There are too few short checks so far to say how it is going.",
  "below aim":
    "Progress is slower than the goal asks. This is a good time to look together at what could help.",
  unclear:
    "The results still go up and down too much to say whether the goal will be reached in time. More short checks will show.",
  "on aim": "Progress is going as the goal asks.",
  "above aim": "Progress is faster than the goal asks.",
  "goal met": "The goal is met.",
};

/** What a family should know of any such report. */
export const REPORT_CAUTIONS: readonly string[] = [
  "These results support the judgement of a qualified teacher and the team around the pupil. They are not for deciding who may have support, and they are no diagnosis.",
  "A word that was missed may be a matter of language, speech or vocabulary, and not of braille.",
  "Passages differ: some are harder than others, so single results go up and down.",
];

const HUNDRED = 100;

/** A value in plain words: `42 words a minute`, `95 of every 100 words right`. Halves are rounded up. */
export const describeValue = (value: number, key: SeriesKey): string => {
  const unit = key.unit.trim().toLowerCase() || (key.sign === "" ? "words" : "answers");
  switch (key.measure) {
    case "rate":
      return `${countOf(value, unit)} a minute`;
    case "cells a minute":
      return `${countOf(value, "cells")} a minute`;
    case "accuracy":
      return `${Math.round(HUNDRED * value)} of every 100 ${unit} right`;
    case "score":
      return `a score of ${formatNumber(value)}`;
  }
};

const countOf = (value: number, unit: string): string => {
  const whole = Math.round(value);
  return `${whole} ${whole === 1 ? unit.replace(/s$/, "") : unit}`;
};

/** What a pupil does at a level, as a sentence: `Heron reads 42 words a minute correctly, in contracted braille.` */
export const describeAbility = (value: number, key: SeriesKey): string => {
  const { pupil, task, sign } = key;
  const way = wayOf({ task, medium: key.medium });
  const doing = way === "writing" ? "writes" : /name/i.test(task) ? "names" : "reads";
  const about = sign === "" || sign === ALL_SIGNS ? "" : ` of ${sign}`;
  const level = describeValue(value, key);
  if (key.measure === "score")
    return `${pupil} has ${level}${about} in ${task.trim() || "the checks"}${codeOf(key)}.`;
  const correctly = key.measure === "accuracy" ? "" : " correctly";
  return `${pupil} ${doing} ${level}${correctly}${about}${codeOf(key)}.`;
};

const codeOf = ({ code, medium }: SeriesKey): string => {
  if (/print/i.test(medium)) return ", in print";
  const name = normaliseName(code);
  return name === "" ? "" : `, in ${name} braille`;
};

/** `a`, `a and b`, `a, b and c`. */
export const joinNames = (names: readonly string[]): string =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1) ?? ""}`;
