import { seededRandom } from "../domain/seeded-random";
import type { Day } from "../domain/units";
import { dateOf, dayOf } from "./calendar";

/** A list of the invented caseload: headings, and rows with days as dates. */
export interface ExampleList {
  readonly name: string;
  readonly headings: readonly string[];
  readonly widths: readonly number[];
  readonly rows: readonly (readonly (string | number | Date | null)[])[];
}

const MINUTES: Readonly<Record<string, number>> = { Heron: 120, Plover: 90, Dunlin: 90, Avocet: 60 };
const CODES: Readonly<Record<string, string>> = {
  Heron: "uncontracted",
  Plover: "uncontracted",
  Dunlin: "contracted",
  Avocet: "contracted",
};
const WORKED_ON: Readonly<Record<string, string>> = {
  Heron: "letter cards",
  Plover: "tracking lines, short words",
  Dunlin: "repeated reading",
  Avocet: "dictation, new passages",
};
const FIRST = dayOf(2026, 9, 7);
const LAST = dayOf(2026, 11, 25);
const HALF_TERM = dayOf(2026, 10, 26);

function lessonRows(): (string | number | Date | null)[][] {
  const random = seededRandom(20_260_907);
  const rows: (string | number | Date | null)[][] = [];
  for (let monday = FIRST as number; monday <= LAST; monday += 7) {
    Object.keys(MINUTES).forEach((pupil, place) => {
      const day = dateOf((monday + place) as Day);
      if (monday + place > LAST) return;
      const draw = random();
      if (monday === HALF_TERM) rows.push([day, pupil, 0, "school closed", null, "half term"]);
      else if (draw < 0.07) rows.push([day, pupil, 0, "pupil absent", null, null]);
      else if (draw < 0.1) rows.push([day, pupil, 0, "teacher absent", null, null]);
      else rows.push([day, pupil, MINUTES[pupil] ?? 60, "yes", WORKED_ON[pupil] ?? null, null]);
    });
  }
  return rows;
}

/** The lists beside the teacher's own sheets: who the pupils are, their lessons, some miscues, her exceptions. */
export const EXAMPLE_LISTS: readonly ExampleList[] = [
  {
    name: "Pupils",
    headings: ["Pupil", "Code", "Teacher", "Cells per line", "Minutes planned", "Note"],
    widths: [10, 14, 12, 14, 16, 30],
    rows: Object.keys(MINUTES).map((pupil) => [
      pupil,
      CODES[pupil] ?? null,
      "Tern",
      pupil === "Avocet" ? 40 : 32,
      MINUTES[pupil] ?? null,
      null,
    ]),
  },
  {
    name: "Lessons",
    headings: ["Date", "Pupil", "Minutes", "Held", "Worked on", "Note"],
    widths: [12, 10, 10, 16, 28, 20],
    rows: lessonRows(),
  },
  {
    name: "Miscues",
    headings: ["Date", "Pupil", "Task", "Position", "Expected", "Response", "Kind"],
    widths: [12, 10, 14, 10, 14, 14, 16],
    rows: [
      [dateOf(dayOf(2026, 11, 16)), "Dunlin", "read aloud", 5, "was", "saw", "misread"],
      [dateOf(dayOf(2026, 11, 16)), "Dunlin", "read aloud", 21, "them", "then", "misread"],
      [dateOf(dayOf(2026, 11, 17)), "Plover", "read aloud", 9, "with", "which", "misread"],
    ],
  },
  {
    name: "Exceptions",
    headings: ["Word", "Braille"],
    widths: [18, 20],
    rows: [["Shingle", "⠠⠎⠓⠊⠝⠛⠇⠑"]],
  },
];
