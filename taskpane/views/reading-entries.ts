import type { ReadingScore } from "../../src/domain/probe/reading";
import { chooseTable } from "../../src/records/entry-table";
import { makeEntryRow } from "../../src/records/entry-row";
import { gridCells } from "../../src/records/grid-cells";
import type { ColumnKind } from "../../src/records/column-kind";
import type { PaneContext } from "./pane-context";
import { HostError } from "../../src/ports/sheet";
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

/** Writes a reading as one row of probes. @returns what was done, in words, or undefined where the host refused */
export function writeReading(context: PaneContext, reading: FinishedReading): Promise<string | undefined> {
  const { task, score, heard, seconds, support, note } = reading;
  const texts = new Map<ColumnKind, string>(
    Object.entries({
      pupil: task.pupil,
      task: "read aloud",
      code: task.code,
      medium: task.medium,
      material: task.title,
      expected: task.text,
      response: heard,
      support,
      note,
    }).filter(([, value]) => value !== "") as [ColumnKind, string][],
  );
  const numbers = new Map<ColumnKind, number>([
    ["words", score.words],
    ["errors", score.words - score.correct],
    ["seconds", seconds],
  ]);
  return context.write(async (sheet) => {
    const entry = { day: context.today, numbers, texts, keys: [...numbers.keys()] };
    const block = chooseTable(context.records.blocks, await sheet.outline(), entry, undefined);
    if (!block.ok) throw new HostError(block.fault.message);
    const cells = gridCells(
      await sheet.read(block.value.sheet, { ...block.value.area, bottom: block.value.area.bottom + 1 }),
    );
    const row = makeEntryRow(block.value, cells, entry);
    if (!row.ok) throw new HostError(row.fault.message);
    await sheet.appendRows(
      block.value.table === undefined
        ? { sheet: block.value.sheet, area: block.value.area }
        : { table: block.value.table },
      [row.value],
    );
    return "The probe is written.";
  });
}
