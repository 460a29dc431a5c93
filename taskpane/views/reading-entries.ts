import type { ReadingScore } from "../../src/domain/probe/reading";
import { noteWait } from "../../src/domain/probe/word-wait";
import type { Day, Seconds } from "../../src/domain/units";
import type { NewEntries } from "../../src/records/new-entries";
import type { ReadingTask } from "./reading-draft";

/** A reading ready to be written. */
export interface FinishedReading {
  readonly task: ReadingTask;
  readonly score: ReadingScore;
  /** in the form of the Response column */
  readonly heard: string;
  readonly seconds: number;
  readonly support: string;
  readonly comprehension: string;
  readonly note: string;
}

const TASK = "read aloud";

/** A field only where there is something to say. */
const given = <K extends string>(name: K, text: string): Partial<Record<K, string>> =>
  text === "" ? {} : ({ [name]: text } as Record<K, string>);

/** A reading as one row of probes and one row a miscue. */
export function entriesOfReading(reading: FinishedReading, day: Day): NewEntries {
  const { task, score, heard, seconds, support, comprehension, note } = reading;
  const { pupil } = task;
  return {
    probes: [
      {
        pupil,
        day,
        task: TASK,
        unit: "words",
        code: task.code,
        medium: task.medium,
        words: score.words,
        errors: score.words - score.correct,
        correct: score.correct,
        seconds: seconds as Seconds,
        expected: task.text,
        response: heard,
        ...given("material", task.title),
        ...given("support", support),
        ...given("comprehension", comprehension),
        ...given("note", noteWait(note, task.wait as Seconds)),
      },
    ],
    miscues: score.miscues.map(({ position, expected, heard: response, kind }) => ({
      pupil,
      day,
      task: TASK,
      position,
      kind,
      expected,
      response,
    })),
  };
}
