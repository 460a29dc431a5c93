import { normalDeviate, seededRandom, type RandomSource } from "../domain/seeded-random";
import type { Day } from "../domain/units";
import { dayOf } from "./calendar";
import { FABLES } from "./fables";

/**
 * An invented caseload in an invented coastal district, made with a fixed seed. Nobody's data: pupils are called
 * after birds, growth and scatter are drawn from the numbers below.
 */

/** One row of the teacher's sheet; a blank is `undefined`. */
export interface ProgressRow {
  readonly day: Day;
  readonly pupil: string;
  readonly task: string;
  readonly code: string;
  readonly passage: string;
  readonly words?: number | string;
  readonly errors?: number;
  readonly seconds?: number;
  readonly correct?: number;
  readonly outOf?: number;
  readonly help?: string;
  readonly phase?: string;
  readonly heard?: string;
  readonly note?: string;
}

const SEED = 20_260_420;
const FIRST_MONDAY = dayOf(2026, 4, 20);
const WEEKS = 31;
/** half term, summer, autumn half term; counted from the first week */
const HOLIDAYS = new Set([5, 13, 14, 15, 16, 17, 18, 27]);
/** The first day of the autumn term: teaching changes for two of the pupils. */
const AUTUMN = dayOf(2026, 9, 7);

const weeks = Array.from({ length: WEEKS }, (_, week) => week).filter((week) => !HOLIDAYS.has(week));

/** A reader aloud: expected words correctly a minute by week, and how far single probes stray from it. */
interface Reader {
  readonly pupil: string;
  readonly code: string;
  readonly weekday: number;
  readonly expected: (week: number) => number;
  readonly scatter: number;
  readonly errorShare: number;
  readonly seconds: readonly number[];
  readonly phase: (day: Day) => string;
  readonly absent: ReadonlySet<number>;
  readonly helped: ReadonlySet<number>;
}

const READERS: readonly Reader[] = [
  {
    pupil: "Plover",
    code: "uncontracted",
    weekday: 1,
    // grows, stands still for the best part of a term, grows again more slowly than planned
    expected: (week) => (week < 8 ? 13 + 0.7 * week : week < 22 ? 18.6 : 18.6 + 0.3 * (week - 21)),
    scatter: 1.1,
    errorShare: 0.09,
    seconds: [60],
    phase: () => "tracking lines first",
    absent: new Set([3, 20]),
    helped: new Set([0, 9]),
  },
  {
    pupil: "Dunlin",
    code: "contracted",
    weekday: 0,
    expected: (week) => (week < 20 ? 37 + 0.15 * week : 40 + 1.35 * (week - 19)),
    scatter: 2.2,
    errorShare: 0.06,
    seconds: [60, 60, 55, 64],
    phase: (day) => (day < AUTUMN ? "baseline" : "repeated reading"),
    absent: new Set([10]),
    helped: new Set([6, 24]),
  },
  {
    pupil: "Avocet",
    code: "contracted",
    weekday: 2,
    expected: (week) => 84 + 0.62 * week,
    scatter: 4,
    errorShare: 0.02,
    seconds: [60],
    phase: () => "",
    absent: new Set([7, 22]),
    helped: new Set(),
  },
];

/** Words near a word, as a reader might say them: the kind of slip, not a claim about its cause. */
const SLIPS: Readonly<Record<string, string>> = {
  was: "saw",
  saw: "was",
  the: "them",
  them: "then",
  then: "them",
  with: "which",
  his: "was",
  were: "where",
  there: "their",
  under: "understood",
  for: "with",
  and: "for",
  through: "though",
  ever: "every",
  every: "ever",
};

/** What was heard: the first words of the passage with some misread, left out or told, ended by `]`. */
function heardOf(text: string, words: number, errors: number, random: RandomSource): string {
  const read = text.split(" ").slice(0, words);
  const places = new Set<number>();
  while (places.size < Math.min(errors, read.length)) places.add(Math.floor(random() * read.length));
  const said = read.flatMap((word, place) => {
    if (!places.has(place)) return [word];
    const bare = word.replace(/[.,]/g, "").toLowerCase();
    const slip = SLIPS[bare];
    if (slip !== undefined) return [slip];
    return random() < 0.5 ? [`${word} (told)`] : place === read.length - 1 ? [`${word} (told)`] : [];
  });
  return `${said.join(" ")} ]`;
}

function readingRows(reader: Reader, random: RandomSource): ProgressRow[] {
  return weeks.map((week, probe) => {
    const day = (FIRST_MONDAY + 7 * week + reader.weekday) as Day;
    const fable = FABLES[probe % FABLES.length] ?? FABLES[0];
    if (fable === undefined) throw new RangeError("no fables");
    const row = { day, pupil: reader.pupil, task: "read aloud", code: reader.code, passage: fable.title };
    if (reader.absent.has(week)) return { ...row, words: "absent" };
    const seconds = reader.seconds[probe % reader.seconds.length] ?? 60;
    const rate = Math.max(2, reader.expected(week) + reader.scatter * normalDeviate(random));
    const attempted = Math.round((rate * seconds) / 60 / (1 - reader.errorShare));
    const words = Math.min(attempted, fable.text.split(" ").length);
    const errors = Math.max(0, words - Math.round((rate * seconds) / 60));
    const phase = reader.phase(day);
    return {
      ...row,
      words,
      errors,
      seconds: words < attempted ? Math.round((seconds * words) / attempted) : seconds,
      heard: heardOf(fable.text, words, errors, random),
      ...(phase === "" ? {} : { phase }),
      ...(reader.helped.has(week) ? { help: "finger guided" } : {}),
    };
  });
}

const HERON_ABSENT = new Set([4, 21]);

/** Heron names letters from cards: 20 cards a probe, the share named grows from about a third. */
function letterRows(random: RandomSource): ProgressRow[] {
  return weeks.map((week) => {
    const day = (FIRST_MONDAY + 7 * week + 4) as Day;
    const row = { day, pupil: "Heron", task: "signs named", code: "uncontracted", passage: "letter cards" };
    if (HERON_ABSENT.has(week)) return { ...row, words: "absent" };
    const share = 0.3 + 0.019 * week + 0.05 * normalDeviate(random);
    const correct = Math.round(20 * Math.min(1, Math.max(0, share)));
    return { ...row, correct, outOf: 20, phase: "cards", ...(week < 2 ? { help: "prompted" } : {}) };
  });
}

/** Avocet writes from dictation every other week: cells right of cells expected. */
function dictationRows(random: RandomSource): ProgressRow[] {
  return weeks
    .filter((week) => week % 2 === 0)
    .map((week) => {
      const outOf = 60 + Math.floor(random() * 20);
      const share = Math.min(1, 0.86 + 0.004 * week + 0.02 * normalDeviate(random));
      return {
        day: (FIRST_MONDAY + 7 * week + 3) as Day,
        pupil: "Avocet",
        task: "heard and brailled",
        code: "contracted",
        passage: "dictation",
        correct: Math.round(outOf * share),
        outOf,
      };
    });
}

/** All rows of the progress sheet in order of day; two of them faulty, as happens. */
export function progressRows(): readonly ProgressRow[] {
  const random = seededRandom(SEED);
  const rows = [
    ...letterRows(random),
    ...READERS.flatMap((reader) => readingRows(reader, random)),
    ...dictationRows(random),
  ].sort((a, b) => a.day - b.day);
  const spoil = (pupil: string, day: Day, change: Partial<ProgressRow>): void => {
    const place = rows.findIndex(
      (row) => row.pupil === pupil && row.day >= day && typeof row.words === "number",
    );
    const row = rows[place];
    if (row === undefined) throw new RangeError(`no row to spoil for ${pupil}`);
    rows[place] = { ...row, ...change };
  };
  // more errors than words: a digit typed twice
  spoil("Avocet", dayOf(2026, 6, 15), { errors: 222 });
  // 7/10 typed for seven errors in ten lines: the sheet made a date of it
  spoil("Plover", dayOf(2026, 10, 5), { errors: dayOf(2026, 10, 7), note: "7 slips in 10 lines" });
  return rows;
}

/** A goal as the pupil's plan states it. */
export interface ExampleGoal {
  readonly pupil: string;
  readonly text: string;
  readonly task: string;
  readonly measure: string;
  readonly code: string;
  readonly start: Day;
  readonly startScore: number;
  readonly by: Day;
  readonly goal: number;
}

const BY = dayOf(2026, 12, 18);

export const GOALS: readonly ExampleGoal[] = [
  {
    pupil: "Heron",
    text: "Given 20 letter cards in braille, Heron will name 18 or more on three Fridays in a row.",
    task: "signs named",
    measure: "accuracy",
    code: "uncontracted",
    start: dayOf(2026, 4, 20),
    startScore: 0.3,
    by: BY,
    goal: 0.9,
  },
  {
    pupil: "Plover",
    text: "Plover will read a new passage in uncontracted braille at 28 words correctly a minute.",
    task: "read aloud",
    measure: "rate",
    code: "uncontracted",
    start: dayOf(2026, 4, 20),
    startScore: 13,
    by: BY,
    goal: 28,
  },
  {
    pupil: "Dunlin",
    text: "Dunlin will read a new passage in contracted braille at 60 words correctly a minute.",
    task: "read aloud",
    measure: "rate",
    code: "contracted",
    start: AUTUMN,
    startScore: 40,
    by: BY,
    goal: 60,
  },
  {
    pupil: "Avocet",
    text: "Avocet will read a new passage in contracted braille at 100 words correctly a minute.",
    task: "read aloud",
    measure: "rate",
    code: "contracted",
    start: dayOf(2026, 4, 20),
    startScore: 84,
    by: BY,
    goal: 100,
  },
];

const LETTERS = "abcdefghijklmnopqrstuvwxyz".split("");

/** The letters that Heron has been shown, in the order of the teacher's choice for this pupil. */
const HERON_LETTERS = ["h", "e", "r", "o", "n", "a", "l", "s", "t", "c"];

const DUNLIN_SIGNS = [
  ..."but can do every from go have just knowledge like more not people quite rather so that us very will it you as".split(
    " ",
  ),
  ..."and for of the with".split(" "),
  ..."ch gh sh th wh ed er ou ow st ar ing child shall this which out still".split(" "),
  ..."ea be con dis en in enough were his was".split(" "),
];

const AVOCET_SIGNS = [
  ...DUNLIN_SIGNS,
  ..."bb cc ff gg upon these those whose word there character through where ought day ever father here know lord mother name one part question right some time under work young cannot had many spirit their world".split(
    " ",
  ),
  ..."ound ance sion less ount ence ong ful tion ness ment ity".split(" "),
  ..."about above across after again also because before behind below between beyond could either first friend good great him himself its letter little much must necessary paid perhaps quick receive said should such today together tomorrow tonight would your".split(
    " ",
  ),
];

/** What each pupil has been taught: one row a sign, with the week in which it was introduced. */
export function taughtRows(): readonly { pupil: string; sign: string; introduced: Day }[] {
  const list = (pupil: string, signs: readonly string[], from: Day, aWeek: number) =>
    signs.map((sign, place) => ({ pupil, sign, introduced: (from + 7 * Math.floor(place / aWeek)) as Day }));
  return [
    ...list("Heron", HERON_LETTERS, dayOf(2026, 4, 20), 1),
    ...list("Plover", LETTERS, dayOf(2025, 9, 8), 2),
    ...list("Dunlin", [...LETTERS, ...DUNLIN_SIGNS], dayOf(2025, 9, 8), 3),
    ...list("Avocet", [...LETTERS, ...AVOCET_SIGNS], dayOf(2024, 9, 9), 4),
  ];
}

/** Heron's sheet of cards: a mark for each letter on each of the last Fridays. */
export function letterGrid(): {
  days: readonly Day[];
  rows: readonly { sign: string; marks: readonly string[] }[];
} {
  const random = seededRandom(SEED + 1);
  const days = weeks
    .slice(-8)
    .filter((week) => !HERON_ABSENT.has(week))
    .map((week) => (FIRST_MONDAY + 7 * week + 4) as Day);
  const rows = HERON_LETTERS.map((sign, place) => ({
    sign,
    marks: days.map((_, occasion) => {
      const chance = Math.min(0.97, 0.95 - 0.07 * place + 0.05 * occasion);
      const draw = random();
      if (draw < chance) return "+";
      return draw < chance + 0.05 ? "P" : draw < chance + 0.08 ? "NR" : "−";
    }),
  }));
  return { days, rows };
}

/** Words that the teacher keeps for drills, and for whom. */
export const WORDS: readonly { word: string; pupil: string }[] = [
  ..."hen roe hero one ear north shell clear".split(" ").map((word) => ({ word, pupil: "Heron" })),
  ..."sand tern shore water island feather sail wind".split(" ").map((word) => ({ word, pupil: "Plover" })),
  ..."the father child starting bread outside enough sheltered"
    .split(" ")
    .map((word) => ({ word, pupil: "Dunlin" })),
  ..."mother-in-law knowledgeable together's friendship necessary experience"
    .split(" ")
    .map((word) => ({ word, pupil: "Avocet" })),
];
