import type { NewColumn, NewTable } from "../ports/sheet";
import type { FoundBlock } from "./found-block";

const DAY = "yyyy-mm-dd";
/** A font that has every braille cell; programs without it show their own. */
const BRAILLE_FONT = "Noto Sans Symbols 2";
const CODES = ["contracted", "uncontracted"];
const TASKS = ["read aloud", "heard and brailled", "copied", "signs named"];
const SUPPORTS = ["none", "prompted", "finger guided", "told words"];

const day = (name: string): NewColumn => ({ name, format: DAY, takes: "days", width: 12 });
const choice = (name: string, choices: readonly string[], width = 16): NewColumn => ({
  name,
  takes: { choices },
  width,
});
const text = (name: string, width = 14): NewColumn => ({ name, width });
const number = (name: string, width = 10): NewColumn => ({ name, width });

const own = (column: string): string => `Probes[[#This Row],[${column}]]`;

/** Correct where it is given, else attempted without errors, over this; blank where neither is there. */
const perRow = (over: string, isMissing: string, factor = ""): string =>
  `=IF(${isMissing},"",IF(${own("Correct")}<>"",${factor}${own("Correct")}/${over},` +
  `IF(AND(${own("Attempted")}<>"",${own("Errors")}<>""),${factor}(${own("Attempted")}-${own("Errors")})/${over},"")))`;

const PROBES: readonly NewColumn[] = [
  day("Date"),
  text("Pupil", 10),
  choice("Task", TASKS, 20),
  choice("Code", CODES),
  choice("Medium", ["braille", "print", "braillewriter", "slate", "display"]),
  text("Sign", 8),
  text("Material", 24),
  choice("Unit", ["words", "signs", "cells"], 10),
  number("Attempted"),
  number("Errors"),
  number("Correct"),
  number("Seconds"),
  text("Expected", 24),
  text("Response", 24),
  choice("Support", SUPPORTS),
  text("Comprehension"),
  text("Hands"),
  text("Phase", 18),
  text("Note", 24),
  {
    name: "Rate",
    format: "0.0",
    width: 8,
    formula: perRow(own("Seconds"), `OR(${own("Seconds")}="",${own("Seconds")}=0)`, "60*"),
  },
  {
    name: "Accuracy",
    format: "0%",
    width: 10,
    formula: perRow(own("Attempted"), `OR(${own("Attempted")}="",${own("Attempted")}=0)`),
  },
];

/** The tables of a workbook that the tool sets up, each on a sheet of its name, by the kind of their records. */
export const TABLE_PLANS: Readonly<Record<FoundBlock["kind"], NewTable>> = {
  pupils: {
    name: "Pupils",
    sheet: "Pupils",
    columns: [
      text("Pupil", 10),
      choice("Code", CODES),
      text("Teacher"),
      number("Cells per line", 14),
      number("Minutes planned", 16),
      text("Note", 40),
    ],
  },
  probes: { name: "Probes", sheet: "Probes", columns: PROBES },
  goals: {
    name: "Goals",
    sheet: "Goals",
    columns: [
      text("Pupil", 10),
      text("Goal text", 50),
      choice("Task", TASKS, 20),
      choice("Measure", ["rate", "accuracy", "score", "cells a minute"]),
      choice("Code", CODES),
      choice("Unit", ["words", "signs", "cells"], 10),
      choice("Support", SUPPORTS),
      text("Criterion"),
      day("Start date"),
      number("Start score", 12),
      day("Goal date"),
      number("Goal score", 12),
    ],
  },
  taught: {
    name: "Taught",
    sheet: "Taught",
    columns: [
      text("Pupil", 10),
      text("Sign", 12),
      day("Introduced"),
      text("Reading", 18),
      text("Writing", 18),
      day("Check again"),
    ],
  },
  lessons: {
    name: "Lessons",
    sheet: "Lessons",
    columns: [
      day("Date"),
      text("Pupil", 10),
      number("Minutes"),
      choice("Held", ["yes", "pupil absent", "teacher absent", "school closed"]),
      text("Worked on", 30),
      text("Note", 30),
    ],
  },
  miscues: {
    name: "Miscues",
    sheet: "Miscues",
    columns: [
      day("Date"),
      text("Pupil", 10),
      choice("Task", TASKS, 20),
      number("Position"),
      text("Expected", 18),
      text("Response", 18),
      text("Kind", 24),
    ],
  },
  words: {
    name: "Words",
    sheet: "Words",
    columns: [text("Word", 20), text("List"), text("Pupil", 10), text("Source", 20)],
  },
  passages: { name: "Passages", sheet: "Passages", columns: [text("Title", 28), text("Text", 80)] },
  exceptions: {
    name: "Exceptions",
    sheet: "Exceptions",
    columns: [text("Word", 20), { name: "Braille", font: BRAILLE_FONT, width: 24 }],
  },
};

/** The kinds in the order in which their tables are set up. */
export const TABLE_ORDER = Object.keys(TABLE_PLANS) as readonly FoundBlock["kind"][];
