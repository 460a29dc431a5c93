import { difficultyOf } from "../contraction/difficulty";
import { findContraction } from "../contraction/inventory";
import { PLAIN_SIGNS, type Sign } from "../contraction/sign";
import type { Day } from "../units";
import { trackKnowledge } from "./knowledge";
import type { DirectEvidence, Evidence } from "./knowledge-evidence";
import { DEFAULT_CRITERION, findMastery, reachesShare, type MasteryCriterion } from "./mastery";
import type { SignEvidence } from "./sign-evidence";
import { WAYS, type Way } from "./way";

/** How well a sign is known on a day: the share expected right, with its interval; all 0 to 1. */
export interface KnownOn {
  readonly day: Day;
  readonly expected: number;
  readonly low: number;
  readonly high: number;
}

/** How one sign came to be known in one way. */
export interface SignCourse {
  /** in print form, as the inventory names it */
  readonly sign: string;
  readonly kind: string;
  readonly way: Way;
  readonly introduced?: Day;
  /** days on which the criterion was met: the first, and again after each lapse; oldest first */
  readonly met: readonly Day[];
  /** days on which a sign that had met the criterion fell under it; oldest first */
  readonly lapses: readonly Day[];
  /** oldest first */
  readonly known: readonly KnownOn[];
}

/** What a pupil's courses are made of. */
export interface CourseSource {
  readonly evidence: SignEvidence;
  /** signs by their names in the inventory, with the day introduced where it is noted */
  readonly taught: ReadonlyMap<string, Day | "earlier">;
}

/** On so many days at most knowledge is reckoned: a picture shows no more. */
const MOST_DAYS = 60;

const plainByName = new Map<string, Sign>(PLAIN_SIGNS.map((sign) => [sign.name, sign]));
const signNamed = (name: string): Sign | undefined => findContraction(name) ?? plainByName.get(name);

/**
 * The courses of all signs that were taught or tried, in order of first appearance: reading and writing apart.
 *
 * A lapse is the first occasion under the share after the criterion was met; to be mastered again the criterion must be
 * met by later occasions alone. Our choice, no source.
 *
 * @returns one course for each sign and each way with evidence; reading alone for signs only taught
 */
export const buildSignCourses = (
  source: CourseSource,
  criterion: MasteryCriterion = DEFAULT_CRITERION,
): readonly SignCourse[] => WAYS.flatMap((way) => coursesOfWay(source, way, criterion));

const coursesOfWay = (
  { evidence, taught }: CourseSource,
  way: Way,
  criterion: MasteryCriterion,
): readonly SignCourse[] => {
  const { direct, words, trials } = evidence[way];
  const seen = [...direct.map(({ sign }) => sign), ...words.flatMap(({ signs }) => signs)];
  const signs = [...new Set([...(way === "reading" ? taught.keys() : []), ...seen])];
  const knownBySign = trackSigns(signs, evidence[way], taught);
  return signs.map((sign): SignCourse => {
    const day = taught.get(sign);
    const rows = trials.filter((row) => row.sign === sign);
    return {
      sign,
      kind: signNamed(sign)?.kind ?? "other",
      way,
      ...(day !== undefined && day !== "earlier" && { introduced: day }),
      ...findSteps(rows, criterion),
      known: knownBySign.get(sign) ?? [],
    };
  });
};

/** The days on which the criterion was met and lost again. */
const findSteps = (
  rows: readonly DirectEvidence[],
  criterion: MasteryCriterion,
): Pick<SignCourse, "met" | "lapses"> => {
  const met: Day[] = [];
  const lapses: Day[] = [];
  let rest = rows;
  for (;;) {
    const found = findMastery(rest, criterion);
    if (!found.ok || found.value.masteredOn === undefined) return { met, lapses };
    const { masteredOn, occasions } = found.value;
    met.push(masteredOn);
    const lapse = occasions.find(
      (occasion) => occasion.day > masteredOn && !reachesShare(occasion, criterion.share),
    );
    if (lapse === undefined) return { met, lapses };
    lapses.push(lapse.day);
    rest = rest.filter(({ day }) => Math.floor(day) > lapse.day);
  }
};

/** What is expected of each sign on days with evidence, from the first on which it was seen. */
const trackSigns = (
  signs: readonly string[],
  evidence: Evidence,
  taughtOn: ReadonlyMap<string, Day | "earlier">,
): ReadonlyMap<string, readonly KnownOn[]> => {
  const backgrounds = signs.map((sign) => {
    const found = signNamed(sign);
    const taught = taughtOn.get(sign);
    return {
      sign,
      difficulty: found === undefined ? 0 : difficultyOf(found),
      ...(taught !== undefined && { taught }),
    };
  });
  const all = [...evidence.direct, ...evidence.words].map(({ day }) => Math.floor(day) as Day);
  const days = [...new Set(all)].sort((a, b) => a - b);
  const step = Math.max(1, (days.length - 1) / (MOST_DAYS - 1));
  const chosen = Array.from(
    { length: Math.min(days.length, MOST_DAYS) },
    (_, i) => days[Math.round(i * step)] ?? (NaN as Day),
  );
  const known = new Map<string, KnownOn[]>(signs.map((sign) => [sign, []]));
  trackKnowledge(evidence, backgrounds, chosen).forEach((onDay, i) => {
    const day = chosen[i];
    for (const { sign, expected, low, high, lastSeen } of onDay)
      if (day !== undefined && lastSeen !== undefined) known.get(sign)?.push({ day, expected, low, high });
  });
  return known;
};
