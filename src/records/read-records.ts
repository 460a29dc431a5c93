import type { TaughtSign } from "../domain/contraction/taught-sign";
import type { Probe } from "../domain/probe/probe";
import type { Goal } from "../domain/progress/goal";
import type { Sheet } from "../ports/sheet";
import type { ColumnChoices } from "./column-choices";
import type { FoundBlock, ListName, ListRecords } from "./found-block";
import { gridCells } from "./grid-cells";
import { giveTexts } from "./passage-texts";
import { findBlocks } from "./sheet-blocks";

/** Everything that a workbook holds for us: where it stands, and the records of all blocks not left out. */
export interface WorkbookRecords {
  /** in sheet order, each sheet from the top down; blocks left out by the teacher are among them */
  readonly blocks: readonly FoundBlock[];
  /** a text named only by its title is that of her passages */
  readonly probes: readonly Probe[];
  readonly goals: readonly Goal[];
  readonly taught: readonly TaughtSign[];
  readonly pupils: readonly ListRecords["pupils"][];
  readonly lessons: readonly ListRecords["lessons"][];
  readonly miscues: readonly ListRecords["miscues"][];
  readonly words: readonly ListRecords["words"][];
  readonly passages: readonly ListRecords["passages"][];
  readonly exceptions: readonly ListRecords["exceptions"][];
}

/** The records of a workbook that has none, or was not read yet. */
export const NO_RECORDS: WorkbookRecords = {
  blocks: [],
  probes: [],
  goals: [],
  taught: [],
  pupils: [],
  lessons: [],
  miscues: [],
  words: [],
  passages: [],
  exceptions: [],
};

/** The records of every list of one kind. */
const listed = <K extends ListName>(blocks: readonly FoundBlock[], kind: K): readonly ListRecords[K][] =>
  blocks.flatMap((block) => (block.kind === kind ? (block.records as readonly ListRecords[K][]) : []));

/**
 * Finds a teacher's tables in the open workbook and reads them: records and faults, hidden sheets included. Every
 * sheet is read once through the port.
 *
 * @param choices - the teacher's corrections and answers, as kept in the document
 * @throws {HostError} where the host cannot read
 */
export async function readRecords(sheet: Sheet, choices: ColumnChoices = {}): Promise<WorkbookRecords> {
  const blocks: FoundBlock[] = [];
  for (const outline of await sheet.outline()) {
    if (!outline.used) continue;
    const cells = gridCells(await sheet.read(outline.name, outline.used));
    blocks.push(...findBlocks(cells, outline, choices));
  }
  const used = blocks.filter((block) => !block.leftOut);
  const passages = listed(used, "passages");
  return {
    blocks,
    probes: giveTexts(
      used.flatMap((block) => (block.kind === "probes" ? block.records : [])),
      passages,
    ),
    goals: used.flatMap((block) => (block.kind === "goals" ? block.records : [])),
    taught: used.flatMap((block) => (block.kind === "taught" ? block.records : [])),
    pupils: listed(used, "pupils"),
    lessons: listed(used, "lessons"),
    miscues: listed(used, "miscues"),
    words: listed(used, "words"),
    passages,
    exceptions: listed(used, "exceptions"),
  };
}
