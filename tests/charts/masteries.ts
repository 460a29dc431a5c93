import type { KnownOn, Mastery, SignCourse } from "../../src/charts/mastery-course";
import { normalDeviate, seededRandom } from "../../src/domain/seeded-random";
import type { Day } from "../../src/domain/units";
import { START } from "../domain/progress/probes";

const on = (week: number): Day => (START + 7 * week) as Day;

/** A share that grows week by week from the day introduced, with an interval that narrows. */
const growing = (from: number, to: number, start: number, seed: number): readonly KnownOn[] => {
  const random = seededRandom(seed);
  return Array.from({ length: to - from + 1 }, (_, i) => {
    const expected = Math.min(0.97, Math.max(0.05, start + (0.95 - start) * (1 - Math.exp(-i / 4)) + 0.03 * normalDeviate(random)));
    const half = 0.3 / Math.sqrt(1 + i);
    return { day: on(from + i), expected, low: Math.max(0, expected - half), high: Math.min(1, expected + 0.6 * half) };
  });
};

const course = (part: Partial<SignCourse>): SignCourse => ({
  sign: "ch",
  kind: "strong groupsign",
  way: "reading",
  met: [],
  lapses: [],
  known: [],
  ...part,
});

const SIGNS = ["ch", "sh", "th", "wh", "ou", "st", "ar", "ed", "er", "gh", "ow", "ing"];

/** Invented pupils whose pictures show each thing that mastery over time can show. */
export const MASTERIES: Readonly<Record<string, Mastery>> = {
  "one-sign": {
    pupil: "Plover",
    scope: "sign ch",
    courses: [
      course({ introduced: on(1), met: [on(8), on(16)], lapses: [on(13)], known: growing(1, 18, 0.3, 1) }),
    ],
  },
  "one-sign-both-ways": {
    pupil: "Plover",
    scope: "sign ch",
    courses: [
      course({ introduced: on(1), met: [on(8)], known: growing(1, 18, 0.3, 1) }),
      course({ way: "writing", introduced: on(4), met: [on(15)], known: growing(4, 18, 0.2, 2) }),
    ],
  },
  "a-kind": {
    pupil: "Plover",
    scope: "strong groupsigns",
    courses: SIGNS.flatMap((sign, i) => [
      course({ sign, introduced: on(1 + i), met: i < 8 ? [on(6 + i)] : [], lapses: i === 2 ? [on(15)] : [], known: growing(1 + i, 20, 0.3, i) }),
      course({ sign, way: "writing", introduced: on(3 + i), met: i < 4 ? [on(11 + 2 * i)] : [], known: growing(3 + i, 20, 0.2, 50 + i) }),
    ]),
  },
  "one-probe": { pupil: "Plover", scope: "sign ch", courses: [course({ known: growing(2, 2, 0.4, 3) })] },
  nothing: { pupil: "Plover", scope: "all signs", courses: [] },
};
