/** What a column of a teacher's probe table can mean; the names that `check` and `log` use. */
export const COLUMN_KINDS = [
  "date",
  "pupil",
  "task",
  "sign",
  "material",
  "words",
  "errors",
  "correct",
  "opportunities",
  "seconds",
  "minutes",
  "rate",
  "accuracy",
  "score",
  "unit",
  "code",
  "medium",
  "support",
  "expected",
  "response",
  "phase",
  "note",
] as const;
export type ColumnKind = (typeof COLUMN_KINDS)[number];

/** What a column of a goals table can mean beside pupil, task, code, unit, support. */
export const GOAL_KINDS = [
  "text",
  "measure",
  "criterion",
  "startDate",
  "startScore",
  "goalDate",
  "goalScore",
] as const;
export type GoalKind = (typeof GOAL_KINDS)[number];

/** What a column of a list of taught signs can mean beside pupil and sign. */
export type TaughtKind = "introduced" | "reading" | "writing" | "checkAgain";

/** What a column of the other lists can mean beside the kinds that they share with probes. */
export type ListKind =
  | "teacher"
  | "cellsPerLine"
  | "minutesPlanned"
  | "held"
  | "workedOn"
  | "word"
  | "list"
  | "origin"
  | "title"
  | "passageText"
  | "braille";

/**
 * Columns that are known and are none of these: a birthday, a teacher, a time of day, a rate of errors. Comprehension is
 * read and written with a probe, and no measure of it.
 */
export type OtherKind = "other" | "position" | "error kind" | "comprehension";

export type AnyKind = ColumnKind | GoalKind | TaughtKind | ListKind | OtherKind;

/** Each meaning in words for a teacher, as the pane's lists and messages say it. */
export const KIND_NAMES: Readonly<Record<ColumnKind, string>> = {
  date: "date",
  pupil: "pupil",
  task: "task",
  sign: "sign",
  material: "material read",
  words: "words attempted",
  errors: "errors",
  correct: "number correct",
  opportunities: "opportunities (total)",
  seconds: "time in seconds or m:ss",
  minutes: "time in minutes",
  rate: "rate (correct a minute)",
  accuracy: "accuracy",
  score: "score",
  unit: "unit counted",
  code: "braille code",
  medium: "medium",
  support: "support given",
  expected: "text expected",
  response: "response",
  phase: "phase",
  note: "note",
};

/** Whether a word names one of the meanings. */
export const isColumnKind = (name: string): name is ColumnKind =>
  (COLUMN_KINDS as readonly string[]).includes(name);

/** Kinds that say how a probe went; a row without any of them is no probe. */
export const OUTCOME_KINDS: readonly ColumnKind[] = [
  "words",
  "errors",
  "correct",
  "rate",
  "accuracy",
  "score",
  "response",
];

/** Kinds that are numbers. */
export const NUMBER_KINDS: readonly ColumnKind[] = [
  "words",
  "errors",
  "correct",
  "opportunities",
  "seconds",
  "minutes",
  "rate",
  "accuracy",
  "score",
];
