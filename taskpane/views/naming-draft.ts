import { parseSignItems } from "../../src/domain/contraction/taught";
import type { Sign } from "../../src/domain/contraction/sign";
import { SIGN_MARKS, type SignMark } from "../../src/domain/probe/marked-signs";
import { drawSignRow, mixSigns } from "../../src/domain/probe/sign-row";
import { seededRandom } from "../../src/domain/seeded-random";
import { readTime, secondsOf, stopClock } from "./probe-time";
import type { ProbeTime } from "./probe-time";

/** What the pupil does with the signs, in the words of the Task column. */
export const NAMING_TASKS = ["signs named", "copied"] as const;
export type NamingTaskName = (typeof NAMING_TASKS)[number];

/** What is asked of a pupil: settled before the clock starts. */
export interface NamingTask {
  readonly pupil: string;
  readonly task: NamingTaskName;
  /** braille, print, display; braillewriter, slate */
  readonly medium: string;
  /** the names of the signs, in the order of the row */
  readonly signs: readonly string[];
  /** the same number draws the same row */
  readonly seed: number;
  /** seconds after which the clock stops by itself; 0 where the row is done to its end */
  readonly limit: number;
}

/** A row of signs from its choice to its table row: what is kept so that a reload loses nothing. */
export interface NamingDraft extends ProbeTime {
  readonly task: NamingTask;
  /** of the signs of the row from its beginning; those after the last were not reached */
  readonly marks: readonly SignMark[];
}

/** A row about to be begun. */
export const newNaming = (task: NamingTask): NamingDraft => ({ task, marks: [] });

/** Sets the mark of a sign: one marked already, or the next of the row; nothing else changes anything. */
export const setMark = (draft: NamingDraft, place: number, mark: SignMark): NamingDraft => {
  if (place < 0 || place > draft.marks.length || place >= draft.task.signs.length) return draft;
  return { ...draft, marks: [...draft.marks.slice(0, place), mark, ...draft.marks.slice(place + 1)] };
};

/** Takes the last mark off. */
export const dropMark = (draft: NamingDraft): NamingDraft => ({ ...draft, marks: draft.marks.slice(0, -1) });

/** The signs of the row, in its order. */
export const signsOfRow = ({ signs }: NamingTask): readonly Sign[] => {
  const read = parseSignItems(signs);
  return read.ok ? read.value : [];
};

/** Whether the time that the clock was set to is over. */
export const isOver = (draft: NamingDraft, now: number): boolean =>
  draft.task.limit > 0 && secondsOf(draft, now) >= draft.task.limit;

/** Stops the clock. It is looked at once a second: what is over the time that it was set to is not counted. */
export const stopNaming = (draft: NamingDraft, now: number): NamingDraft => {
  const stopped = stopClock(draft, now);
  const { limit } = draft.task;
  return limit > 0 && (stopped.seconds ?? 0) > limit ? { ...stopped, seconds: limit } : stopped;
};

/** Signs of a row that can be told from one missed only by knowing it; fewer are mixed with the others of the row. */
const FEW = 3;

/** The next row after one: the signs missed in it, as many and in another order. */
export const askAgain = (task: NamingTask, missed: readonly string[]): NamingTask => {
  const signs = signsOfRow(task);
  const asked = [...new Set(signs.filter(({ name }) => missed.includes(name)))];
  const others = signs.filter(({ name }) => !missed.includes(name));
  const seed = task.seed + 1;
  const random = seededRandom(seed);
  const pool = asked.length < FEW ? mixSigns(asked, others, random) : asked;
  return { ...task, seed, signs: drawSignRow(pool, signs.length, random).map(({ name }) => name) };
};

/** A row as it is kept. */
export const formatNaming = (draft: NamingDraft): string => JSON.stringify(draft);

const isText = (value: unknown): value is string => typeof value === "string";
const isNumber = (value: unknown): value is number => typeof value === "number" && Number.isFinite(value);
const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;

const readTask = (value: unknown): NamingTask | undefined => {
  if (!isObject(value) || !Array.isArray(value["signs"])) return undefined;
  const { pupil, medium, seed, limit } = value;
  const task = NAMING_TASKS.find((each) => each === value["task"]);
  const signs = (value["signs"] as unknown[]).filter(isText);
  if (task === undefined || !isText(pupil) || !isText(medium) || !isNumber(seed) || !isNumber(limit))
    return undefined;
  const read = { pupil, task, medium, signs, seed, limit };
  // Names that this version has no signs for would shift the marks.
  return signs.length > 0 && signsOfRow(read).length === signs.length ? read : undefined;
};

/** A kept row, or undefined where the text is none: another version's, or cut off. */
export function parseNaming(text: string | undefined): NamingDraft | undefined {
  let value: unknown;
  try {
    value = JSON.parse(text ?? "null");
  } catch {
    return undefined;
  }
  if (!isObject(value) || !Array.isArray(value["marks"])) return undefined;
  const task = readTask(value["task"]);
  if (task === undefined) return undefined;
  const marks = (value["marks"] as unknown[]).map((mark) => SIGN_MARKS.find((each) => each === mark));
  const end = marks.indexOf(undefined);
  const known = marks.slice(0, end < 0 ? task.signs.length : end).filter((mark) => mark !== undefined);
  return { task, marks: known.slice(0, task.signs.length), ...readTime(value) };
}
