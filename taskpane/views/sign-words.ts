import { formatDay } from "../../src/domain/calendar";
import { isContraction } from "../../src/domain/contraction/sign";
import type { SignStanding, SignState, WayState } from "../../src/domain/progress/sign-states";
import type { Day } from "../../src/domain/units";

/** One sign in words: what it is, and how far it is in reading and in writing. */
export interface SignWords {
  readonly name: string;
  readonly cells: string;
  readonly dots: string;
  readonly taught: string;
  readonly reading: WayWords;
  readonly writing: WayWords;
}

/** How far a sign is in one way, in words. */
export interface WayWords {
  readonly state: SignState;
  /** `60 to 90 %`; "" where nothing was seen */
  readonly interval: string;
  /** `12 uses, last on 3 May 2026` */
  readonly evidence: string;
  /** `mastered on …`, `check on …`; "" where neither is known */
  readonly days: string;
  /** ends and middle of the interval, from 0 to 1; undefined where nothing was seen */
  readonly span: { readonly low: number; readonly high: number; readonly expected: number } | undefined;
}

/** What is looked for among the signs. */
export interface SignFilter {
  /** "" for every kind */
  readonly kind: string;
  /** "" for every state; a sign passes where it is in this state in either way */
  readonly state: string;
  /** a print form or dot numbers; "" for all */
  readonly search: string;
}

const percent = (share: number): number => Math.round(100 * share);

const describeWay = ({ state, knowledge, masteredOn, checkOn }: WayState): WayWords => {
  const { lastSeen, low, high, expected, words, opportunities } = knowledge;
  const uses = words + opportunities;
  const days = [
    ...(masteredOn === undefined ? [] : [`criterion met on ${formatDay(masteredOn)}`]),
    ...(checkOn === undefined ? [] : [`check on ${formatDay(checkOn)}`]),
  ];
  return {
    state,
    interval: lastSeen === undefined ? "" : `${percent(low)} to ${percent(high)} %`,
    evidence:
      lastSeen === undefined
        ? "not seen yet"
        : `${uses} ${uses === 1 ? "use" : "uses"}, last on ${formatDay(lastSeen)}`,
    days: days.join("; "),
    span: lastSeen === undefined ? undefined : { low, high, expected },
  };
};

/** Says a sign in words. */
export const describeSign = ({ sign, reading, writing, taught, isAssumed }: SignStanding): SignWords => ({
  name: sign.name,
  cells: sign.cells,
  dots: sign.dots,
  taught: isAssumed === true ? "counts as taught" : sayTaught(taught),
  reading: describeWay(reading),
  writing: describeWay(writing),
});

const sayTaught = (taught: SignStanding["taught"]): string =>
  taught === undefined ? "" : taught === "earlier" ? "taught earlier" : `taught ${formatDay(taught)}`;

const sayWay = (way: string, { state, interval, evidence, days }: WayWords): string =>
  `${way}: ${[state, interval, evidence, days].filter((part) => part !== "").join(", ")}.`;

/** The same as one sentence after another, to be heard. */
export const speakSign = ({ name, dots, taught, reading, writing }: SignWords): string => {
  const named = `${name}, dots ${dots}${taught === "" ? "" : `, ${taught}`}.`;
  return `${named} ${sayWay("Reading", reading)} ${sayWay("Writing", writing)}`;
};

const plain = (text: string): string => text.trim().toLowerCase();

/** Dot numbers however they are parted: `1-2`, `1 2`, `dots 12`, `16 1`. */
const dotsOf = (search: string): string | undefined => {
  const digits = search.replace(/^dots?\s*/, "");
  return /^[1-6][1-6\s-]*$/.test(digits) ? digits.trim().replace(/\s+/g, "-") : undefined;
};

/** Whether a sign is among those looked for. */
export const passesFilter = (
  { sign, reading, writing }: SignStanding,
  { kind, state, search }: SignFilter,
): boolean => {
  if (kind !== "" && sign.kind !== kind) return false;
  if (state !== "" && reading.state !== state && writing.state !== state) return false;
  const wanted = plain(search);
  if (wanted === "") return true;
  const dots = dotsOf(wanted);
  if (dots !== undefined)
    return sign.dots === dots || sign.dots.replaceAll("-", "") === dots.replaceAll("-", "");
  if (sign.cells === search.trim()) return true;
  const prints = isContraction(sign) ? [sign.print] : [...sign.prints, ...sign.aliases];
  return sign.name.includes(wanted) || prints.some((print) => print.includes(wanted));
};

/** The signs by their kinds, both in the order of the list. */
export const groupByKind = (
  standings: readonly SignStanding[],
): readonly { readonly kind: string; readonly standings: readonly SignStanding[] }[] => {
  const kinds = new Map<string, SignStanding[]>();
  for (const standing of standings) {
    const known = kinds.get(standing.sign.kind);
    if (known === undefined) kinds.set(standing.sign.kind, [standing]);
    else known.push(standing);
  }
  return [...kinds].map(([kind, ofKind]) => ({ kind, standings: ofKind }));
};

/** A kind as a heading: `Letters`, `Strong groupsigns`, `Punctuation`. */
export const nameKind = (kind: string): string => {
  const name = `${kind.charAt(0).toUpperCase()}${kind.slice(1)}`;
  return kind === "punctuation" ? name : `${name}s`;
};

/** How many signs are in each state, in one way: `12 mastered, 3 growing`; states without a sign are left out. */
export const countStates = (
  standings: readonly SignStanding[],
  way: "reading" | "writing",
  states: readonly SignState[],
): string =>
  states
    .map((state) => ({ state, count: standings.filter((each) => each[way].state === state).length }))
    .filter(({ count }) => count > 0)
    .map(({ state, count }) => `${count} ${state}`)
    .join(", ");

/** The day on which a sign is to be checked again, of either way the earlier. */
export const checkDayOf = ({ reading, writing }: SignStanding): Day | undefined => {
  const days = [reading.checkOn, writing.checkOn].filter((day) => day !== undefined);
  return days.length === 0 ? undefined : (Math.min(...days) as Day);
};
