import type { Day, Seconds } from "../domain/units";
import type { NewEntries } from "./new-entries";

/** The invented pupil of the example; no pupil of anyone's. */
export const EXAMPLE_PUPIL = "Sandpiper";

const TITLE = "Example: The Crab and the Tide";
const TEXT =
  "A small crab sat by the sea and was cross with the tide. Every day the water came and took away the house that he had made in the sand. One day he went up to the grass and made a house there. The water came, but it did not reach him. I can not stop the sea, he said, but I can choose where I live.";

/** Words read and errors of each week, oldest first. */
const WEEKS: readonly (readonly [number, number])[] = [
  [31, 6],
  [33, 5],
  [32, 5],
  [36, 4],
  [38, 5],
  [39, 3],
  [43, 3],
  [42, 2],
];
const DAYS_A_WEEK = 7;

/**
 * Example records of one invented pupil for a workbook that was just set up: eight weekly probes with their lessons, a
 * goal, signs, words, a passage and an exception.
 *
 * @param asOf - the day that the example ends on
 */
export function exampleEntries(asOf: Day): NewEntries {
  const weekly = (week: number): Day => (asOf - DAYS_A_WEEK * (WEEKS.length - 1 - week)) as Day;
  const pupil = EXAMPLE_PUPIL;
  const task = "read aloud";
  const code = "contracted";
  return {
    pupils: [
      { pupil, code, teacher: "Tern", cellsPerLine: 32, minutesPlanned: 60, note: "Invented example" },
    ],
    probes: WEEKS.map(([words, errors], week) => ({
      pupil,
      day: weekly(week),
      task,
      code,
      medium: "braille",
      material: TITLE,
      unit: "words",
      words,
      errors,
      seconds: 60 as Seconds,
      note: "Invented example",
    })),
    goals: [
      {
        pupil,
        text: "Example: Sandpiper will read a new passage in contracted braille at 55 words correctly a minute.",
        task,
        measure: "rate",
        code,
        unit: "words",
        startDay: weekly(0),
        startScore: 25,
        goalDay: (asOf + 10 * DAYS_A_WEEK) as Day,
        goalScore: 55,
      },
    ],
    taught: ["the", "and", "ch", "sh", "ea"].map((sign, place) => ({
      pupil,
      sign,
      introduced: weekly(place),
      ...(place < 2 ? { checkAgain: (asOf - 1 + DAYS_A_WEEK * place) as Day } : {}),
    })),
    lessons: WEEKS.map((_, week) => ({
      pupil,
      day: weekly(week),
      minutes: week === 3 ? 0 : 60,
      held: week === 3 ? ("pupil absent" as const) : ("yes" as const),
      ...(week === 3 ? {} : { workedOn: "reading aloud, word cards" }),
      note: "Invented example",
    })),
    miscues: [
      { pupil, day: asOf, task, position: 9, expected: "was", response: "saw", kind: "misread" },
      { pupil, day: asOf, task, position: 16, expected: "Every", response: "", kind: "left out" },
    ],
    words: ["sea", "tide", "crab", "shell"].map((word) => ({ word, list: "example", pupil, origin: TITLE })),
    passages: [{ title: TITLE, text: TEXT }],
    exceptions: [{ word: "Sandpiper", braille: "⠠⠎⠯⠏⠊⠏⠻" }],
  };
}
