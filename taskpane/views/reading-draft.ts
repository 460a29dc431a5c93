import { MARK_KINDS, NO_NOTES } from "../../src/domain/probe/reading-marks";
import type { MarkKind, ReadingMark, ReadingNotes } from "../../src/domain/probe/reading-marks";
import { readTime } from "./probe-time";
import type { ProbeTime } from "./probe-time";

/** The longest text that a probe takes, in words: an hour's reading at common rates. */
export const LONGEST_TEXT = 3000;

/** What is asked of a pupil: settled before the clock starts. */
export interface ReadingTask {
  readonly pupil: string;
  readonly title: string;
  readonly text: string;
  /** contracted or uncontracted */
  readonly code: string;
  /** braille, print, display */
  readonly medium: string;
  /** seconds that a listener waits before telling a word */
  readonly wait: number;
}

/** A reading probe from its text to its row: what is kept so that a reload loses nothing. */
export interface ReadingDraft extends ProbeTime {
  readonly task: ReadingTask;
  readonly notes: ReadingNotes;
}

/** A probe about to be begun. */
export const newDraft = (task: ReadingTask): ReadingDraft => ({ task, notes: NO_NOTES });

/** A probe as it is kept. */
export const formatDraft = (draft: ReadingDraft): string => JSON.stringify(draft);

const isText = (value: unknown): value is string => typeof value === "string";
const isNumber = (value: unknown): value is number => typeof value === "number" && Number.isFinite(value);
const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;

const readMark = (value: unknown): ReadingMark | undefined => {
  if (!isObject(value) || !isNumber(value["word"])) return undefined;
  const kind = MARK_KINDS.find((each) => each === value["kind"]) as MarkKind | undefined;
  if (kind === undefined) return undefined;
  const { word, heard } = value;
  return isText(heard) ? { word, kind, heard } : { word, kind };
};

const readTask = (value: unknown): ReadingTask | undefined => {
  if (!isObject(value)) return undefined;
  const { pupil, title, text, code, medium, wait } = value;
  return isText(pupil) && isText(title) && isText(text) && isText(code) && isText(medium) && isNumber(wait)
    ? { pupil, title, text, code, medium, wait }
    : undefined;
};

/** A kept probe, or undefined where the text is none: another version's, or cut off. */
export function parseDraft(text: string | undefined): ReadingDraft | undefined {
  let value: unknown;
  try {
    value = JSON.parse(text ?? "null");
  } catch {
    return undefined;
  }
  if (!isObject(value) || !isObject(value["notes"])) return undefined;
  const task = readTask(value["task"]);
  const { marks, last } = value["notes"];
  if (task === undefined || !Array.isArray(marks)) return undefined;
  const read = marks.map(readMark);
  return {
    task,
    notes: {
      marks: read.filter((mark) => mark !== undefined),
      ...(isNumber(last) ? { last } : {}),
    },
    ...readTime(value),
  };
}
