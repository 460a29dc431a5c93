import { difficultyOf } from "../contraction/difficulty";
import { CONTRACTIONS } from "../contraction/inventory";
import { DIGITS, INDICATORS, isContraction, LETTERS, PUNCTUATION, type Sign } from "../contraction/sign";
import { parseSigns } from "../contraction/taught";
import type { TaughtSign } from "../contraction/taught-sign";
import type { Day } from "../units";
import { estimateKnowledge, type SignKnowledge } from "./knowledge";
import { PROBABLY_KNOWN_FROM } from "./knowledge-settings";
import { DEFAULT_CRITERION, findMastery, reachesShare, type MasteryCriterion } from "./mastery";
import { poolOccasions, type TrialCount } from "./mastery-occasions";
import { recallOf } from "./mastery-recall";
import type { SignEvidence, WayEvidence } from "./sign-evidence";
import { isTaughtBy, type SignBackground } from "./sign-prior";
import type { Way } from "./way";

/** How far a sign is. `mastered` is said from trials of the sign alone, `probably known` from whole words as well. */
export const SIGN_STATES = [
  "not taught",
  "taught",
  "growing",
  "probably known",
  "mastered",
  "check again",
] as const;
export type SignState = (typeof SIGN_STATES)[number];

/** How far a sign is in one way, and what says so. */
export interface WayState {
  readonly state: SignState;
  readonly knowledge: SignKnowledge;
  /** the day on which the criterion was first met */
  readonly masteredOn?: Day;
  /** the day on which trials say it should be checked again */
  readonly checkOn?: Day;
}

/** How far one sign is. */
export interface SignStanding extends Readonly<Record<Way, WayState>> {
  readonly sign: Sign;
  /** `earlier` where no day is noted */
  readonly taught?: Day | "earlier";
  /** it counts as taught only because no sign of its kind is noted as taught */
  readonly isAssumed?: boolean;
}

/** What is asked about a pupil's signs. */
export interface StandingQuestion {
  /** the pupil's taught signs; of letters, digits, punctuation and indicators all count unless one of the kind is there */
  readonly taught: readonly TaughtSign[];
  readonly evidence: SignEvidence;
  readonly asOf: Day;
  readonly criterion?: MasteryCriterion;
  /** as the port `Scheduler` has it */
  readonly nextCheck: (
    occasions: readonly { readonly day: Day; readonly recall: ReturnType<typeof recallOf> }[],
  ) => Day | undefined;
}

const LISTED_SIGNS: readonly Sign[] = [...LETTERS, ...CONTRACTIONS, ...DIGITS, ...PUNCTUATION, ...INDICATORS];

/**
 * How far every sign of the inventory is on one day, in reading and in writing.
 *
 * - `mastered`: its trials met the criterion
 * - `check again`: it was mastered, and the last occasion was under the share or its day to check has come; or it was
 *   probably known when last seen and forgetting leaves that open
 * - `probably known`: the chance that at least 80 % of its uses are recognised is 80 % or more
 * - `growing`: taught, seen, and none of these; `taught`: not seen yet; `not taught`: the rest
 *
 * Source: this project's rule; numbers are our choice, no source.
 *
 * @returns letters, contractions, digits, punctuation, indicators, each in the order of the inventory
 */
export const listSignStates = (question: StandingQuestion): readonly SignStanding[] => {
  const signs = LISTED_SIGNS;
  const taughtOn = readTaughtDays(question.taught);
  const noted = new Set(signs.filter(({ name }) => taughtOn.has(name)).map(({ kind }) => kind));
  const isAssumed = (sign: Sign): boolean => !isContraction(sign) && !noted.has(sign.kind);
  const backgrounds = signs.map((sign): SignBackground => {
    const taught = taughtOn.get(sign.name) ?? (isAssumed(sign) ? "earlier" : undefined);
    return { sign: sign.name, difficulty: difficultyOf(sign), ...(taught !== undefined && { taught }) };
  });
  const reading = judgeWay(question.evidence.reading, backgrounds, question);
  const writing = judgeWay(question.evidence.writing, backgrounds, question);
  return signs.flatMap((sign, place) => {
    const [read, written, background] = [reading[place], writing[place], backgrounds[place]];
    if (read === undefined || written === undefined || background === undefined) return [];
    const { taught } = background;
    return [
      {
        ...{ sign, reading: read, writing: written },
        ...(taught !== undefined && { taught }),
        ...(isAssumed(sign) && { isAssumed: true }),
      },
    ];
  });
};

/** The earliest day noted for each sign; signs that the inventory does not have are left out. */
export const readTaughtDays = (rows: readonly TaughtSign[]): ReadonlyMap<string, Day | "earlier"> => {
  const days = new Map<string, Day | "earlier">();
  for (const { sign, introduced } of rows) {
    const signs = parseSigns([sign]);
    if (!signs.ok) continue;
    for (const { name } of signs.value) {
      const known = days.get(name);
      if (introduced === undefined || known === "earlier") days.set(name, "earlier");
      else if (known === undefined || introduced < known) days.set(name, Math.floor(introduced) as Day);
    }
  }
  return days;
};

const judgeWay = (
  evidence: WayEvidence,
  backgrounds: readonly SignBackground[],
  { asOf, criterion = DEFAULT_CRITERION, nextCheck }: StandingQuestion,
): readonly WayState[] => {
  const trials = new Map<string, TrialCount[]>();
  for (const trial of evidence.trials) {
    if (Math.floor(trial.day) > asOf) continue;
    const known = trials.get(trial.sign);
    if (known === undefined) trials.set(trial.sign, [trial]);
    else known.push(trial);
  }
  const known = estimateKnowledge(evidence, backgrounds, asOf);
  return backgrounds.flatMap((background, place) => {
    const knowledge = known[place];
    if (knowledge === undefined) return [];
    const own = trials.get(background.sign) ?? [];
    const judged = judgeTrials(own, criterion, nextCheck);
    const { masteredOn, checkOn } = judged;
    const state = nameState(background, knowledge, judged, asOf);
    return [
      {
        state,
        knowledge,
        ...(masteredOn !== undefined && { masteredOn }),
        ...(checkOn !== undefined && { checkOn }),
      },
    ];
  });
};

interface JudgedTrials {
  readonly masteredOn?: Day | undefined;
  readonly checkOn?: Day | undefined;
  /** whether the last occasion was under the share */
  readonly isLapsed: boolean;
}

const judgeTrials = (
  trials: readonly TrialCount[],
  criterion: MasteryCriterion,
  nextCheck: StandingQuestion["nextCheck"],
): JudgedTrials => {
  const mastery = findMastery(trials, criterion);
  const days = poolOccasions(trials);
  if (!mastery.ok || !days.ok) return { isLapsed: false };
  const last = mastery.value.occasions.at(-1);
  return {
    masteredOn: mastery.value.masteredOn,
    checkOn: nextCheck(days.value.map((occasion) => ({ day: occasion.day, recall: recallOf(occasion) }))),
    isLapsed: last !== undefined && !reachesShare(last, criterion.share),
  };
};

const nameState = (
  background: SignBackground,
  { state, chanceKnown, chanceWhenSeen, lastSeen }: SignKnowledge,
  { masteredOn, checkOn, isLapsed }: JudgedTrials,
  asOf: Day,
): SignState => {
  if (masteredOn !== undefined)
    return isLapsed || (checkOn !== undefined && checkOn <= asOf) ? "check again" : "mastered";
  if (state === "probably known") return "probably known";
  const wasKnown = lastSeen !== undefined && chanceWhenSeen >= PROBABLY_KNOWN_FROM;
  if (wasKnown && chanceKnown < PROBABLY_KNOWN_FROM) return "check again";
  if (!isTaughtBy(background, asOf)) return "not taught";
  return lastSeen === undefined ? "taught" : "growing";
};
