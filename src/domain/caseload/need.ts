import { formatDay } from "../calendar";
import type { Goal } from "../progress/goal";
import type { Verdict } from "../progress/verdict";
import type { Day } from "../units";
import type { DueSign } from "./written-checks";
import type { Minutes } from "./minutes";

/**
 * What a pupil may need of the teacher, most pressing first: the order of the caseload.
 *
 * Source: our choice, no source.
 */
export const NEEDS = [
  "below aim",
  "no probe",
  "checks due",
  "goal met",
  "goal over",
  "no goal",
  "probe due",
  "unclear",
  "minutes short",
] as const;
export type NeedKind = (typeof NEEDS)[number];

/** One need with the sentence that states it. */
export interface Need {
  readonly kind: NeedKind;
  readonly sentence: string;
}

/** Days without a probe after which that is a need of its own: our choice, no source. */
export const DAYS_WITHOUT_PROBE = 14;
/** Share of the planned minutes of the period below which minutes are short: our choice, no source. */
const SHORT_BELOW = 0.8;
const SIGNS_NAMED = 5;

/** What needs are found from. */
export interface NeedFacts {
  readonly asOf: Day;
  readonly lastProbe: Day | undefined;
  readonly verdict: Verdict | undefined;
  readonly goal: Goal | undefined;
  readonly checksDue: readonly DueSign[];
  readonly probesDue: readonly Goal[];
  readonly period: Minutes;
}

const count = (number: number, one: string, many = `${one}s`): string =>
  `${number} ${number === 1 ? one : many}`;

const nameSigns = (signs: readonly DueSign[]): string => {
  const named = signs.slice(0, SIGNS_NAMED).map(({ sign }) => sign);
  const more = signs.length - named.length;
  return named.join(", ") + (more > 0 ? ` and ${more} more` : "");
};

const sayProbe = ({ lastProbe, asOf }: NeedFacts): string | undefined => {
  if (lastProbe === undefined) return "No probe is noted yet.";
  const days = asOf - lastProbe;
  return days >= DAYS_WITHOUT_PROBE
    ? `No probe for ${count(days, "day")}, since ${formatDay(lastProbe)}.`
    : undefined;
};

const say: Readonly<Record<NeedKind, (facts: NeedFacts) => string | undefined>> = {
  "below aim": ({ verdict }) =>
    verdict === "below aim" ? "Below the aim line: change something in the teaching." : undefined,
  "no probe": sayProbe,
  "checks due": ({ checksDue }) =>
    checksDue.length === 0
      ? undefined
      : `${count(checksDue.length, "sign")} due for a check: ${nameSigns(checksDue)}.`,
  "goal met": ({ verdict }) => (verdict === "goal met" ? "The goal is met: set the next one." : undefined),
  "goal over": ({ goal, verdict, asOf }) =>
    goal !== undefined && goal.goalDay < asOf && verdict !== "goal met"
      ? `The goal's date, ${formatDay(goal.goalDay)}, is past: set a new one.`
      : undefined,
  "no goal": ({ goal }) => (goal === undefined ? "No goal is noted for what is probed." : undefined),
  "probe due": ({ probesDue }) =>
    probesDue.length === 0
      ? undefined
      : `${count(probesDue.length, "probe")} due this week: ${probesDue.map(({ task, text }) => task ?? text ?? "the goal's").join(", ")}.`,
  unclear: ({ verdict }) =>
    verdict === "unclear" || verdict === "too few points"
      ? `The verdict is still open (${verdict}): more probes will settle it.`
      : undefined,
  "minutes short": ({ period }) =>
    period.planned !== undefined && period.given < SHORT_BELOW * period.planned
      ? `${period.given} of ${period.planned} planned minutes were given in the period.`
      : undefined,
};

/** Everything that a pupil needs, one sentence each, in the order of {@link NEEDS}. */
export const findNeeds = (facts: NeedFacts): readonly Need[] =>
  NEEDS.flatMap((kind) => {
    const sentence = say[kind](facts);
    return sentence === undefined ? [] : [{ kind, sentence }];
  });
