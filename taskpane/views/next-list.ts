import { formatDay } from "../../src/domain/calendar";
import { findChecksDue } from "../../src/domain/caseload/checks-due";
import { planNextSigns } from "../../src/domain/contraction/sequence";
import type { TaughtSigns } from "../../src/domain/contraction/taught";
import type { TaughtSign } from "../../src/domain/contraction/taught-sign";
import type { WordTable } from "../../src/domain/contraction/word-table";
import type { Passage, RankedPassage } from "../../src/domain/drill/passages";
import type { SignStanding, WayState } from "../../src/domain/progress/sign-states";
import { WAYS } from "../../src/domain/progress/way";
import type { Day } from "../../src/domain/units";
import { beginSentence, countInWords } from "./count-words";

/** One thing to do next, with its reason. */
export type NextItem =
  | {
      readonly kind: "check" | "teach";
      readonly sign: string;
      readonly title: string;
      readonly reason: string;
    }
  | {
      readonly kind: "read";
      readonly passage: Passage;
      readonly title: string;
      readonly reason: string;
    };

/** Items of each kind at most, so that the list stays short: our choice, no source. */
const MOST_CHECKS = 5;
const MOST_SIGNS = 4;
const MOST_PASSAGES = 3;
/** Signs or words named in a reason. */
const MOST_NAMED = 4;

const percent = (share: number): string => `${Math.floor(100 * share)} %`;

const nameSome = (names: readonly string[]): string => {
  const named = names.slice(0, MOST_NAMED).join(", ");
  return names.length > MOST_NAMED ? `${named} and ${names.length - MOST_NAMED} more` : named;
};

const sayCheck = (way: string, { masteredOn, checkOn, knowledge }: WayState, asOf: Day): string => {
  const seen = knowledge.lastSeen === undefined ? "" : `, last seen on ${formatDay(knowledge.lastSeen)}`;
  if (masteredOn === undefined)
    return `In ${way} it was probably known${seen}; by now it may be forgotten in part.`;
  return checkOn !== undefined && checkOn <= asOf
    ? `In ${way} the criterion was met on ${formatDay(masteredOn)}; a check has been due since ${formatDay(checkOn)}.`
    : `In ${way} the criterion was met on ${formatDay(masteredOn)}, but the last occasion was below it.`;
};

/** The signs due for a check, the longest due first; the rest are counted in the last one's reason. */
export const listChecks = (
  standings: readonly SignStanding[],
  taught: readonly TaughtSign[],
  asOf: Day,
): readonly NextItem[] => {
  const byName = new Map(standings.map((standing) => [standing.sign.name, standing]));
  const due = findChecksDue(standings, taught, asOf);
  const left = due.length - MOST_CHECKS;
  return due.slice(0, MOST_CHECKS).map(({ sign, since }, place) => {
    const standing = byName.get(sign);
    const reasons = WAYS.flatMap((way) =>
      standing?.[way].state === "check again" ? [sayCheck(way, standing[way], asOf)] : [],
    );
    if (reasons.length === 0)
      reasons.push(`Your table says to check it again on ${formatDay(since)}; it was not met since.`);
    if (left > 0 && place === MOST_CHECKS - 1)
      reasons.push(
        `${beginSentence(countInWords(left, "more sign is", "more signs are"))} due: the view Signs has all.`,
      );
    return { kind: "check", sign, title: `Check ${sign}`, reason: reasons.join(" ") };
  });
};

/**
 * The signs that open most words, best first.
 *
 * @param from - what the words are, such as `your passages and words`
 */
export const listSignsToTeach = (
  table: WordTable,
  taught: TaughtSigns,
  from: string,
): readonly NextItem[] => {
  const plan = planNextSigns(table, taught, MOST_SIGNS);
  if (!plan.ok) return [];
  return plan.value.map(({ sign, gained, share }, place) => {
    const before = place === 0 ? "" : " after the signs above";
    const reason =
      gained === 0
        ? `No single sign opens a word${before}: this one stands in most of the words that lack fewest.`
        : `It opens ${countInWords(gained, "running word")} of ${from}${before}; ${percent(share)} of them can be read then.`;
    return { kind: "teach", sign: sign.name, title: `Teach ${sign.name}`, reason };
  });
};

/** The passages that can be read best today, with what they lack; none of which no word can be read. */
export const listPassages = (ranked: readonly RankedPassage[]): readonly NextItem[] =>
  ranked
    .filter(({ share }) => share > 0)
    .slice(0, MOST_PASSAGES)
    .map(({ passage, words, share, lacking }) => {
      const lacks = lacking.map(({ name }) => name);
      const title = passage.title.trim() || "a passage without a title";
      return {
        kind: "read",
        passage: { title: passage.title, text: passage.text },
        title: `Read ${title}`,
        reason:
          lacks.length === 0
            ? `All of its ${countInWords(words, "word")} can be read.`
            : `${percent(share)} of its ${countInWords(words, "word")} can be read; it lacks ${nameSome(lacks)}.`,
      };
    });
