import { COLUMN_KINDS } from "./column-kind";
import type { FoundBlock, ProbeBlock, Question } from "./found-block";
import type { WorkbookRecords } from "./read-records";

/** One found table of probes, as `check --json` prints it. */
export interface TableReport {
  readonly sheet: string;
  readonly range: string;
  /** kind → column letters; in a grid what stands across is a span such as `B:H` */
  readonly columns: Readonly<Record<string, string>>;
  readonly records: number;
  readonly faults: readonly { readonly cell: string; readonly message: string }[];
}

/** Column letters by meaning, in the order of the meanings. */
export function lettersByKind(block: FoundBlock): Record<string, string> {
  const letters: Record<string, string> = {};
  for (const kind of COLUMN_KINDS) {
    const column = block.columns.find(({ kinds }) => kinds.includes(kind));
    if (column) letters[kind] = column.letters;
  }
  return letters;
}

/** Whether a block holds probes that were made, that wait for an answer, or that were refused for a fault. */
export const holdsProbes = (block: FoundBlock): block is ProbeBlock =>
  block.kind === "probes" && (block.records.length > 0 || block.waiting > 0 || block.faults.length > 0);

const compare = (a: { row: number; column: number }, b: { row: number; column: number }): number =>
  a.row - b.row || a.column - b.column;

/** The open questions and the faults of a block in the order of its cells; a question stands at its header. */
export const listFaults = (block: FoundBlock): readonly (Question | FoundBlock["faults"][number])[] =>
  [...block.questions, ...block.faults].sort(compare);

/**
 * The found tables of probes in sheet order: only blocks that hold probe records, hidden sheets included, blocks that
 * the teacher left out not. What the data cannot settle is a fault at the header.
 */
export function reportTables(records: WorkbookRecords): TableReport[] {
  return records.blocks
    .filter((block) => holdsProbes(block) && !block.leftOut)
    .map((block) => ({
      sheet: block.sheet,
      range: block.range,
      columns: lettersByKind(block),
      records: block.records.length,
      faults: listFaults(block).map(({ cell, message }) => ({ cell, message })),
    }));
}
